// The passes in the order of the runs: which are shown, which is looked at, which runs before which.
import { isToolpath, namePass, type Pass } from '../model/pass.js';
import { listShown, type PartProps } from './page-state.js';
import { drawNumber, drawSample } from './pass-mark.js';
import { type Language, sayRole, type TextKey } from './texts.js';
import { h, type VNode } from './view-library.js';

function toggle({ state, acts }: PartProps, index: number): void {
  const shown = listShown(state);
  const passes = shown.flatMap((strength, i) => ((i === index ? strength !== 1 : strength === 1) ? [i] : []));
  acts.set({ looked: passes.length === shown.length ? { kind: 'all' } : { kind: 'some', passes } });
}

/** Takes what is dragged from the lists. */
function dropHandlers({ acts }: PartProps, target: string): Record<string, unknown> {
  return {
    onDragOver: (event: DragEvent) => {
      if (event.dataTransfer?.types.includes('application/x-pinbar') === true) event.preventDefault();
    },
    onDrop: (event: DragEvent) => {
      const moved = event.dataTransfer?.getData('application/x-pinbar') ?? '';
      if (moved === '') return;
      event.preventDefault();
      acts.move(JSON.parse(moved), target);
    },
  };
}

function drawActs(props: PartProps, pass: Pass, index: number): VNode {
  const { state, say, acts } = props;
  const shown = listShown(state);
  const isAlone = shown[index] === 1 && shown.filter((one) => one > 0).length === 1;
  const last = shown.length - 1;
  const small = (words: string, label: TextKey, more: Record<string, unknown>): VNode =>
    h('button', { type: 'button', class: 'small', 'aria-label': say(label, pass.name), ...more }, words);
  return h(
    'div',
    { class: 'sheet-acts' },
    h(
      'label',
      { class: 'tick' },
      h('input', {
        type: 'checkbox',
        checked: shown[index] === 1,
        onChange: () => toggle(props, index),
        'aria-label': say('show', pass.name),
      }),
    ),
    small(say('alone'), 'only', {
      'aria-pressed': isAlone,
      onClick: () => acts.set({ looked: isAlone ? { kind: 'all' } : { kind: 'some', passes: [index] } }),
    }),
    small('←', 'earlier', { disabled: index === 0, onClick: () => acts.moveRun(index, -1) }),
    small('→', 'later', { disabled: index === last, onClick: () => acts.moveRun(index, 1) }),
  );
}

/** What the pass does, where its name does not say so in the language of the page. */
function drawRole(language: Language, { name, role }: Pass): VNode | null {
  const words = sayRole(language, role);
  return words === name || (language === 'en' && namePass(role) === name) ? null : h('span', { class: 'quiet' }, words);
}

function drawSheet(props: PartProps, pass: Pass, index: number): VNode {
  const { state, say } = props;
  const job = state.job!;
  const isOff = listShown(state)[index] === 0;
  const isNow = state.looked.kind === 'step' && state.looked.pass === index;
  const count = job.shapesPerPass[index]!;
  return h(
    'li',
    {
      class: `sheet${isOff ? ' sheet-off' : ''}${isNow ? ' sheet-now' : ''}`,
      ...dropHandlers(props, `${pass.name}\n${pass.role}`),
    },
    h('div', { class: 'sheet-head' }, drawNumber(index), h('strong', {}, pass.name), drawRole(state.language, pass)),
    drawSample(index, isToolpath(pass.role)),
    h('span', { class: 'quiet' }, count === 1 ? say('shape') : say('shapes', count)),
    drawActs(props, pass, index),
  );
}

function step({ state, acts }: PartProps, by: -1 | 1): void {
  const { looked } = state;
  const last = state.job!.passes.length - 1;
  const at = looked.kind === 'step' ? looked.pass + by : by > 0 ? 0 : last;
  acts.set({ looked: at < 0 || at > last ? { kind: 'all' } : { kind: 'step', pass: at } });
}

/** The passes as sheets in a row. */
export function RunStrip(props: PartProps): VNode {
  const { state, say, acts } = props;
  const passes = state.job?.passes ?? [];
  const list =
    passes.length === 0
      ? h('p', { class: 'quiet' }, say('runNothing'))
      : h(
          'ol',
          { class: 'sheets', 'aria-labelledby': 'runs-title' },
          passes.map((pass, index) => drawSheet(props, pass, index)),
        );
  const steps =
    passes.length < 2
      ? null
      : h(
          'div',
          { class: 'steps' },
          h('button', { type: 'button', onClick: () => step(props, -1) }, say('stepBack')),
          h('button', { type: 'button', onClick: () => step(props, 1) }, say('stepOn')),
          h(
            'button',
            {
              type: 'button',
              'aria-pressed': state.looked.kind === 'all',
              onClick: () => acts.set({ looked: { kind: 'all' } }),
            },
            say('all'),
          ),
        );
  return h(
    'section',
    { class: 'runs', 'aria-labelledby': 'runs-title' },
    h('div', { class: 'runs-head' }, h('h2', { id: 'runs-title' }, say('runs')), steps),
    list,
  );
}
