// The lines of the tools: in which order they are run, where ties stay, and what came of both.
import { isToolpath, type Pass } from '../model/pass.js';
import type { SequenceReport, SequenceRequest } from '../model/sequence.js';
import type { TieReport, TieRequest } from '../model/ties.js';
import { showsPictures } from './board-pictures.js';
import {
  beginTies,
  findLineOrder,
  findTies,
  isOrdered,
  type LineOrder,
  setLineOrder,
  setOrdered,
  setOrigin,
  setTies,
} from './edit-lines.js';
import { drawChoiceField, drawNumberField, drawTick } from './job-fields.js';
import type { PartProps } from './page-state.js';
import { MOST_RINGS } from './paint-order.js';
import { drawNumber } from './pass-mark.js';
import { fixed, type Say, type TextKey } from './texts.js';
import { h, type VNode } from './view-library.js';

const CORNERS = ['top-left', 'top-right', 'bottom-left', 'bottom-right'] as const;

type TieNumber = {
  [K in keyof TieRequest]: TieRequest[K] extends number ? K : never;
}[keyof TieRequest];

/** The numbers of each kind of ties, in the order in which they are thought of. */
const TIE_NUMBERS: Readonly<Record<TieRequest['mode'], readonly TieNumber[]>> = {
  pattern: ['cutMm', 'tieMm', 'cornerClearMm', 'creaseEndClearMm', 'leastRadiusMm'],
  hold: [
    'tieMm',
    'leastPerPiece',
    'freeMm',
    'smallHoleMm',
    'smallHoleTies',
    'cornerClearMm',
    'creaseEndClearMm',
    'leastRadiusMm',
  ],
};

/** What is asked of the order of all tool passes. */
function drawOrder({ state, say, acts }: PartProps): readonly (VNode | null)[] {
  const ticket = state.history.present;
  const order = findLineOrder(ticket);
  const choice = drawChoiceField(say, {
    id: 'lines-order',
    label: 'lines.order',
    value: order,
    words: (['drawn', 'short', 'restarted'] as const).map((word) => [word, `lines.order.${word}`]),
    onValue: (value) => acts.changeTicket((before) => setLineOrder(before, value as LineOrder)),
  });
  if (ticket.sequence === undefined) return [choice];
  const origin = drawChoiceField(say, {
    id: 'lines-origin',
    label: 'lines.origin',
    value: ticket.sequence.origin,
    words: CORNERS.map((corner) => [corner, `corner.${corner}`]),
    onValue: (value) => acts.changeTicket((before) => setOrigin(before, value as SequenceRequest['origin'])),
  });
  return [choice, origin];
}

function drawTieEnds(say: Say, id: string, request: TieRequest, put: (next: TieRequest) => void): readonly VNode[] {
  return (['startsWith', 'endsWith'] as const).map((key) =>
    drawChoiceField(say, {
      id: `${id}-${key}`,
      label: `ties.${key}`,
      value: request[key],
      words: [
        ['cut', 'ties.cut'],
        ['tie', 'ties.tie'],
      ],
      onValue: (value) => put({ ...request, [key]: value as 'cut' | 'tie' }),
    }),
  );
}

/** The ties of a pass, and their numbers. */
function drawTies({ state, say, acts }: PartProps, pass: Pass): readonly (VNode | null)[] {
  const id = `ties-${pass.name}`;
  const passes = state.job!.passes;
  const request = findTies(state.history.present, pass);
  const put = (next: TieRequest | null): void =>
    acts.changeTicket((ticket) => setTies(ticket, passes, { pass, request: next }));
  const choice = drawChoiceField(say, {
    id,
    label: 'ties.mode',
    value: request?.mode ?? '',
    words: [
      ['', 'ties.none'],
      ['pattern', 'ties.pattern'],
      ['hold', 'ties.hold'],
    ],
    onValue: (value) => put(value === '' ? null : beginTies(pass, value as TieRequest['mode'])),
  });
  if (request === null) return [choice];
  const usual = beginTies(pass, request.mode);
  const numbers = TIE_NUMBERS[request.mode].map((key) =>
    drawNumberField(say, {
      id: `${id}-${key}`,
      label: `ties.${key}` as TextKey,
      value: request[key],
      unit: key.endsWith('Mm') ? 'mm' : '',
      onValue: (value) => put({ ...request, [key]: value ?? usual[key] }),
    }),
  );
  const alone = drawTick({ id: `${id}-alone`, label: say('ties.tiesPass') }, request.tiesPass, (tiesPass) =>
    put({ ...request, tiesPass }),
  );
  return [choice, ...numbers, ...(request.mode === 'pattern' ? drawTieEnds(say, id, request, put) : []), alone];
}

function sayTies(say: Say, report: TieReport): readonly string[] {
  const { ties, tiedLines, lines, tiesMm, lineMm, longestFreeMm, stretch, mode } = report;
  const percent = 100 * Math.abs(stretch);
  return [
    say(mode === 'hold' ? 'ties.outlines' : 'ties.found', ties, tiedLines, lines),
    say('ties.lengths', fixed(tiesMm, 1), fixed(lineMm, 1), fixed(longestFreeMm, 1)),
    ...(mode === 'pattern' && percent >= 0.05
      ? [say(stretch > 0 ? 'ties.stretched' : 'ties.pressed', fixed(percent, 1))]
      : []),
  ];
}

function saySequence(say: Say, report: SequenceReport): readonly string[] {
  const { travelBeforeMm, travelAfterMm, liftsBefore, liftsAfter, moved, restarted, stayed } = report;
  const count = stayed.reduce((sum, one) => sum + one.count, 0);
  return [
    say('lines.travel', fixed(travelBeforeMm, 1), fixed(travelAfterMm, 1)),
    say('lines.lifts', liftsBefore, liftsAfter),
    say('lines.moved', moved, restarted),
    ...(count === 0 ? [] : [say('lines.stayed', count)]),
  ];
}

/** Where ties are seen on the board. */
function sayWhereSeen(props: PartProps, { ties }: TieReport): readonly string[] {
  if (ties === 0) return [];
  if (ties <= MOST_RINGS) return [props.say('ties.seen')];
  return showsPictures(props) ? [props.say('ties.seenDrawn')] : [];
}

/** What came of it, in numbers. */
function drawEffect(props: PartProps, pass: Pass): VNode | null {
  const { state, say } = props;
  const { sequence, ties, files } = state.job!;
  if (files.length === 0) return null;
  const ordered = sequence.find((report) => report.pass === pass.name);
  const tied = ties.find((report) => report.pass === pass.name);
  const words = [
    ...(ordered === undefined ? [] : saySequence(say, ordered)),
    ...(tied === undefined ? [] : sayTies(say, tied)),
    ...(tied === undefined ? [] : sayWhereSeen(props, tied)),
  ];
  if (words.length === 0) return null;
  return h(
    'ul',
    { class: 'effect', key: 'effect', id: `effect-${pass.name}` },
    words.map((line) => h('li', { key: line }, line)),
  );
}

function drawPass(props: PartProps, pass: Pass, index: number): VNode {
  const { state, say, acts } = props;
  const ticket = state.history.present;
  const passes = state.job!.passes;
  const tick =
    ticket.sequence === undefined
      ? null
      : drawTick({ id: `order-${pass.name}`, label: say('lines.ordered') }, isOrdered(ticket, pass), (wanted) =>
          acts.changeTicket((before) => setOrdered(before, passes, pass, wanted)),
        );
  return h(
    'fieldset',
    { class: 'tool', key: pass.name },
    h('legend', {}, drawNumber(index), ` ${pass.name}`),
    h('div', { class: 'fields' }, tick, drawTies(props, pass), drawEffect(props, pass)),
  );
}

/** The fields of the tool passes. */
export function drawLineFields(props: PartProps): readonly (VNode | null)[] {
  const { state, say } = props;
  const passes = state.job?.passes ?? [];
  const tools = passes.flatMap((pass, index) => (isToolpath(pass.role) ? [drawPass(props, pass, index)] : []));
  if (tools.length === 0) return [h('p', { class: 'quiet', key: 'none' }, say('lines.noTool'))];
  return [...drawOrder(props), ...tools];
}
