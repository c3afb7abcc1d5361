// The choice of a pass for a layer or a line, and the words for where it goes now.
import { namePass, ROLES, type Role } from '../model/pass.js';
import type { Moved } from './edit-ticket.js';
import type { PartProps } from './page-state.js';
import type { Shares } from './protocol.js';
import { type Language, sayRole } from './texts.js';
import { h, type VNode } from './view-library.js';

/** Where most of something goes: a pass, -1 open, -2 left out; null where it draws nothing, -9 where it goes several ways. */
export function sumUp(shares: Shares): number | null {
  if (shares.length === 0) return null;
  return shares.length === 1 ? shares[0]![0] : -9;
}

/** Shares of several, together. */
export function addShares(list: readonly Shares[]): Shares {
  const tally = new Map<number, number>();
  for (const [pass, shapes] of list.flat()) tally.set(pass, (tally.get(pass) ?? 0) + shapes);
  return [...tally].sort(([a], [b]) => a - b);
}

/** The name that its pass will have, and in other languages what it does. */
function nameRole(language: Language, role: Role): string {
  return language === 'en' ? namePass(role) : `${namePass(role)} (${sayRole(language, role)})`;
}

function listOptions({ state, say }: PartProps, now: number | null): readonly VNode[] {
  const passes = state.job?.passes ?? [];
  const others = ROLES.filter((role) => role !== 'ignore' && passes.every((pass) => pass.role !== role));
  const first =
    now === null || now >= 0 || now === -2
      ? []
      : [h('option', { value: '', disabled: true }, now === -1 ? `? ${say('choose')}` : say('mixed'))];
  return [
    ...first,
    ...passes.map((pass, index) => h('option', { value: `${pass.name}\n${pass.role}` }, `${index + 1} ${pass.name}`)),
    h('option', { value: 'role:ignore' }, `– ${say('leftOut')}`),
    h(
      'optgroup',
      { label: say('newPass') },
      others.map((role) => h('option', { value: `role:${role}` }, nameRole(state.language, role))),
    ),
  ];
}

function spellTarget({ state }: PartProps, now: number | null): string {
  if (now === null || now === -1 || now === -9) return '';
  if (now === -2) return 'role:ignore';
  const pass = state.job?.passes[now];
  return pass === undefined ? '' : `${pass.name}\n${pass.role}`;
}

/** A list of the passes, with the one it goes to now. */
export function ChoosePass(
  props: PartProps & { readonly moved: Moved; readonly name: string; readonly shares: Shares },
): VNode {
  const { state, say, acts, moved, name, shares } = props;
  const now = sumUp(shares);
  return h(
    'select',
    {
      class: now === -1 ? 'choose choose-open' : 'choose',
      'aria-label': say('goesTo', name),
      disabled: state.job === null,
      value: spellTarget(props, now),
      onChange: (event: Event) => acts.move(moved, (event.currentTarget as HTMLSelectElement).value),
    },
    now === null ? h('option', { value: '', disabled: true }, '') : null,
    listOptions(props, now),
  );
}
