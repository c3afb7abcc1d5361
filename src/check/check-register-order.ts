// Is there anything for a pass to register to when it runs?
import { type Finding, finding } from '../model/finding.js';
import type { CheckFacts } from './check-facts.js';
import { isVisible, listSetups, type PassSetup } from './pass-setup.js';

/** Why a pass cannot find what it registers to, and what to do; null where it can. */
interface Lack {
  readonly why: string;
  readonly remedy: string;
}

const REORDER = 'Put the pass behind the one it looks for in the passes of the ticket, or let it register to "edge".';

/** Against printed marks of whatever pass. */
function judgePrinted(own: PassSetup, before: readonly PassSetup[], later: readonly PassSetup[]): Lack | null {
  const visible = (list: readonly PassSetup[]): readonly PassSetup[] => list.filter(({ pass }) => isVisible(pass.role));
  const printed = visible(before);
  if (printed.some(({ side, marked }) => side === own.side && marked)) return null;
  if (printed.some(({ marked }) => marked)) {
    return {
      why: 'they are on the other side of the sheet',
      remedy: 'Let it register to "edge", or print marks on its own side too.',
    };
  }
  if (printed.length > 0) {
    return {
      why: `${printed.map(({ pass }) => pass.name).join(', ')} runs before it, but carries no register marks`,
      remedy: 'Let that pass carry marks: name it under marks.passes in the ticket.',
    };
  }
  const next = visible(later)[0];
  return {
    why: next === undefined ? 'no pass prints any' : `the first pass that prints any, ${next.pass.name}, runs after it`,
    remedy: REORDER,
  };
}

/** Against the marks of a named pass. */
function judgeNamed(own: PassSetup, name: string, all: readonly PassSetup[]): Lack | null {
  const target = all.find(({ pass }) => pass.name === name || pass.role === name);
  if (target === undefined) return { why: `there is no pass ${name} in this job`, remedy: REORDER };
  if (target.index === own.index) return { why: 'that is the pass itself', remedy: REORDER };
  if (target.pass.order > own.pass.order) return { why: `${name} runs after it`, remedy: REORDER };
  if (!target.marked) {
    return {
      why: `${name} carries no register marks`,
      remedy: `Let ${name} carry marks: name it under marks.passes in the ticket.`,
    };
  }
  return target.side === own.side
    ? null
    : { why: `those of ${name} are on the other side of the sheet`, remedy: 'Let it register to "edge".' };
}

/** Each pass whose ticket says `registersTo`, against the passes that run before it. */
export function checkRegisterOrder(facts: CheckFacts): readonly Finding[] {
  const setups = listSetups(facts);
  return setups.flatMap((own, at) => {
    const to = own.request?.registersTo ?? 'edge';
    if (to === 'edge' || to === 'pins') return [];
    const lack =
      to === 'printed-marks'
        ? judgePrinted(own, setups.slice(0, at), setups.slice(at + 1))
        : judgeNamed(own, to, setups);
    if (lack === null) return [];
    const what = to === 'printed-marks' ? 'printed marks' : `the marks of ${to}`;
    return [
      finding('check/marks-not-there', {
        message: `Pass ${own.pass.order}, ${own.pass.name}, registers to ${what}, but ${lack.why}.`,
        remedy: lack.remedy,
        data: { pass: own.pass.name, order: own.pass.order, registersTo: to },
      }),
    ];
  });
}
