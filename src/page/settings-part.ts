// What the job asks for beside its passes: marks, margin, material, bleed, and how open questions are answered.
import type { CheckSettings } from '../model/check-settings.js';
import type { Ticket } from '../model/ticket.js';
import { printTicket } from '../road/pack-job.js';
import { drawAlongFields } from './along-settings.js';
import { toNames } from './edit-lines.js';
import { drawChoiceField, drawNumberField, drawTick, takeFile } from './job-fields.js';
import { drawLineFields } from './line-settings.js';
import type { PartProps } from './page-state.js';
import { drawSheetFields } from './sheet-settings.js';
import type { TextKey } from './texts.js';
import { h, type VNode } from './view-library.js';

type NumberKey = {
  [K in keyof CheckSettings]: CheckSettings[K] extends number | null ? K : never;
}[keyof CheckSettings];

const MATERIAL: readonly NumberKey[] = [
  'materialWidthMm',
  'materialHeightMm',
  'caliperMm',
  'gripperMm',
  'sideMarginMm',
];
const PRINT: readonly NumberKey[] = ['bleedMm', 'safeMarginMm'];

function listNumbers({ state, say, acts }: PartProps, keys: readonly NumberKey[]): readonly VNode[] {
  const { checks } = state.history.present;
  const { checks: usual } = state.usual;
  return keys.map((key) =>
    drawNumberField(say, {
      id: `job-${key}`,
      label: `job.${key}` as TextKey,
      value: checks[key],
      unit: 'mm',
      onValue: (value) =>
        acts.changeTicket((ticket) => ({ ...ticket, checks: { ...ticket.checks, [key]: value ?? usual[key] } })),
    }),
  );
}

function drawAnswers({ state, say, acts }: PartProps): readonly VNode[] {
  const { hidden, linkedPictures, partPaint } = state.history.present;
  const put = (change: Partial<Ticket>): void => acts.changeTicket((ticket) => ({ ...ticket, ...change }));
  return [
    drawChoiceField(say, {
      id: 'job-hidden',
      label: 'job.hidden',
      value: hidden,
      words: [
        ['ask', 'job.ask'],
        ['skip', 'job.skip'],
        ['include', 'job.include'],
        ['stop', 'job.stop'],
      ],
      onValue: (value) => put({ hidden: value as Ticket['hidden'] }),
    }),
    drawChoiceField(say, {
      id: 'job-pictures',
      label: 'job.pictures',
      value: linkedPictures,
      words: [
        ['ask', 'job.ask'],
        ['embed', 'job.embed'],
        ['leave-out', 'job.skip'],
      ],
      onValue: (value) => put({ linkedPictures: value as Ticket['linkedPictures'] }),
    }),
    drawTick({ id: 'job-part-paint', label: say('job.partPaint') }, partPaint, (value) => put({ partPaint: value })),
  ];
}

function drawMarks({ state, say, acts }: PartProps): readonly VNode[] {
  const { marks, marginMm } = state.history.present;
  return [
    drawTick({ id: 'job-marks', label: say('job.marks') }, marks.wanted, (wanted) =>
      acts.changeTicket((ticket) => ({ ...ticket, marks: { ...ticket.marks, wanted } })),
    ),
    drawNumberField(say, {
      id: 'job-margin',
      label: 'job.margin',
      value: marginMm,
      unit: 'mm',
      onValue: (value) => acts.changeTicket((ticket) => ({ ...ticket, marginMm: value ?? 0 })),
    }),
  ];
}

function drawHeldEdge({ state, say, acts }: PartProps): VNode {
  return drawChoiceField(say, {
    id: 'job-gripperSide',
    label: 'job.gripperSide',
    value: state.history.present.checks.gripperSide,
    words: (['top', 'bottom', 'left', 'right'] as const).map((side) => [side, `side.${side}`]),
    onValue: (value) =>
      acts.changeTicket((ticket) => ({
        ...ticket,
        checks: { ...ticket.checks, gripperSide: value as CheckSettings['gripperSide'] },
      })),
  });
}

function drawFiles({ state, say, acts }: PartProps): readonly VNode[] {
  const { compact, witness } = state.history.present;
  return [
    drawChoiceField(say, {
      id: 'job-witness',
      label: 'job.witness',
      value: witness,
      words: (['auto', 'always', 'never'] as const).map((word) => [word, `job.witness.${word}`]),
      onValue: (value) => acts.changeTicket((ticket) => ({ ...ticket, witness: value as Ticket['witness'] })),
    }),
    drawTick({ id: 'job-compact', label: say('job.compact') }, compact, (wanted) =>
      acts.changeTicket((ticket) => ({ ...ticket, compact: wanted })),
    ),
  ];
}

function drawSize({ state, say, acts }: PartProps): VNode | null {
  const sizes = state.inspection?.artboard.atPerInch;
  if (sizes === null || sizes === undefined) return null;
  const { userUnitsPerInch } = state.history.present;
  return drawChoiceField(say, {
    id: 'job-inch',
    label: 'job.perInch',
    value: String(userUnitsPerInch ?? ''),
    words: [
      ['', 'notSaid'],
      ['96', 'job.at96'],
      ['72', 'job.at72'],
    ],
    onValue: (value) =>
      acts.changeTicket((ticket) => ({ ...ticket, userUnitsPerInch: value === '' ? null : Number(value) })),
  });
}

/** Saves a text as a file of the person's own. */
function saveText(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  const link = Object.assign(document.createElement('a'), { href: address, download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

function drawTicket({ state, say, acts }: PartProps): VNode {
  const stem = state.job?.stem ?? 'art';
  const { present, past } = state.history;
  return h(
    'div',
    { class: 'ticket-acts' },
    h(
      'button',
      { type: 'button', onClick: () => saveText(`${stem}.ticket.json`, printTicket(present)) },
      say('saveTicket'),
    ),
    h(
      'label',
      { class: 'button' },
      say('loadTicket'),
      h('input', {
        type: 'file',
        class: 'unseen',
        accept: '.json',
        onChange: (event: Event) => {
          const file = takeFile(event);
          if (file !== undefined) acts.loadTicket(file.name, file);
        },
      }),
    ),
    state.kept === null || past.length > 0
      ? null
      : h('button', { type: 'button', onClick: acts.loadKept }, say('lastTicket', state.kept.name)),
    present.rules.length === 0
      ? null
      : h('button', { type: 'button', onClick: () => acts.changeTicket(toNames) }, say('byNames')),
  );
}

/** The settings of the job. */
export function SettingsPart(props: PartProps): VNode | null {
  const { state, say } = props;
  if (state.inspection === null) return null;
  return h(
    'section',
    { id: 'job', 'aria-labelledby': 'job-title' },
    h('h2', { id: 'job-title', tabIndex: -1 }, say('settings')),
    drawTicket(props),
    h('h3', {}, say('job.marksHeading')),
    h('div', { class: 'fields' }, drawSize(props), drawMarks(props)),
    h('h3', {}, say('job.sheetHeading')),
    h('div', { class: 'fields' }, drawSheetFields(props)),
    h('h3', {}, say('lines.heading')),
    h('div', { class: 'fields' }, drawLineFields(props)),
    h('h3', {}, say('along.heading')),
    h('div', { class: 'fields' }, drawAlongFields(props)),
    h('h3', {}, say('job.material')),
    h('div', { class: 'fields' }, listNumbers(props, MATERIAL), drawHeldEdge(props)),
    h('h3', {}, say('job.print')),
    h('div', { class: 'fields' }, listNumbers(props, PRINT)),
    h('h3', {}, say('job.answers')),
    h('div', { class: 'fields' }, drawAnswers(props)),
    h('h3', {}, say('job.filesHeading')),
    h('div', { class: 'fields' }, drawFiles(props)),
  );
}
