// What goes along with the passes: the proof as a page, and a run sheet by a profile of the shop.
import { drawNumberField, drawTick, takeFile } from './job-fields.js';
import type { PartProps } from './page-state.js';
import { h, type VNode } from './view-library.js';

interface Names {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly names: readonly string[];
  readonly onValue: (value: string) => void;
}

function drawNames({ id, label, value, names, onValue }: Names): VNode | null {
  if (names.length === 0) return null;
  const onChange = (event: Event): void => onValue((event.currentTarget as HTMLSelectElement).value);
  return h(
    'div',
    { class: 'field', key: id },
    h('label', { for: id }, label),
    h(
      'select',
      { id, value, onChange },
      names.map((name) => h('option', { value: name, key: name }, name)),
    ),
  );
}

function drawLoad({ say, acts }: PartProps): VNode {
  return h(
    'label',
    { class: 'button', key: 'load' },
    say('along.load'),
    h('input', {
      type: 'file',
      class: 'unseen',
      id: 'along-profile',
      accept: '.json',
      onChange: (event: Event) => {
        const file = takeFile(event);
        if (file !== undefined) acts.loadProfile(file.name, file);
      },
    }),
  );
}

/** The fields of what goes along. */
export function drawAlongFields(props: PartProps): readonly (VNode | null)[] {
  const { state, say, acts } = props;
  const { proofPage, profile, machine, material, sheets } = state.along;
  const tick = drawTick({ id: 'along-proof', label: say('along.proof') }, proofPage, (value) =>
    acts.setAlong({ proofPage: value }),
  );
  if (profile === null) return [tick, h('div', { class: 'ticket-acts', key: 'acts' }, drawLoad(props))];
  const drop = h(
    'button',
    { type: 'button', key: 'drop', onClick: () => acts.setAlong({ profile: null }) },
    say('along.without'),
  );
  return [
    tick,
    h('p', { key: 'name' }, say('along.by', profile.name)),
    h('div', { class: 'ticket-acts', key: 'acts' }, drawLoad(props), drop),
    drawNames({
      id: 'along-machine',
      label: say('along.machine'),
      value: machine,
      names: profile.machines,
      onValue: (value) => acts.setAlong({ machine: value }),
    }),
    drawNames({
      id: 'along-material',
      label: say('along.material'),
      value: material,
      names: profile.materials,
      onValue: (value) => acts.setAlong({ material: value }),
    }),
    drawNumberField(say, {
      id: 'along-sheets',
      label: 'along.sheets',
      value: sheets,
      unit: '',
      onValue: (value) => acts.setAlong({ sheets: Math.max(1, Math.round(value ?? 250)) }),
    }),
  ];
}
