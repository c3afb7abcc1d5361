// What was found, as a list that leads to its places on the board; and why a job could not go on.
import type { Finding, FindingCode } from '../model/finding.js';
import { sayInGerman } from './german-findings.js';
import { sayRemedy } from './page-remedies.js';
import type { PartProps } from './page-state.js';
import type { NumberedPlace } from './protocol.js';
import type { Language, Say } from './texts.js';
import { h, type VNode } from './view-library.js';

/** Where on the page a question is answered. */
const ANSWERS: Readonly<Partial<Record<FindingCode, string>>> = {
  'layer/hidden-asked': 'job-hidden',
  'split/picture-linked': 'job-pictures',
  'classify/fill-and-stroke': 'job-part-paint',
  'mark/no-room': 'job-margin',
  'resolve/size-unsure': 'job-inch',
  'classify/unclaimed': 'drawn-title',
  'classify/claimed-twice': 'drawn-title',
  'classify/name-against-paint': 'drawn-title',
  'classify/name-unsure': 'drawn-title',
};

function drawAnswer(code: FindingCode, say: Say): VNode | null {
  const id = ANSWERS[code];
  if (id === undefined) return null;
  const go = (event: Event): void => {
    event.preventDefault();
    const place = document.getElementById(id);
    place?.scrollIntoView({ block: 'center' });
    place?.focus();
  };
  return h('p', {}, h('a', { href: `#${id}`, onClick: go }, say('answerHere')));
}

/** What it says; in German by its code, with its own words beneath. */
function drawWords(
  language: Language,
  say: Say,
  { finding, details, isOpen = false }: Pick<NumberedPlace, 'finding' | 'details'> & { readonly isOpen?: boolean },
): readonly (VNode | null)[] {
  const { message, remedy } = finding;
  // Lines of the file that a message shows stand below it, with their neighbours.
  const own = { what: message.split('\n', 1)[0]!, details, todo: sayRemedy(finding) };
  const words = language === 'de' ? sayInGerman(finding) : own;
  const line = (text: string, look: string, mark = ''): VNode | null =>
    text === '' ? null : h('p', { key: look, class: look }, `${mark}${text}`);
  const lines = [
    line(words.what, 'finding-what'),
    line(words.details, 'finding-details quiet'),
    line(words.todo, 'remedy', '→ '),
  ];
  if (language === 'en') return lines;
  const wording = h(
    'details',
    { class: 'wording', key: 'wording', open: isOpen },
    h('summary', {}, say('wording')),
    h('p', { class: 'quiet', lang: 'en' }, `${message} ${remedy}`.trim()),
  );
  return [...lines, wording];
}

function drawFinding({ state, say, acts }: PartProps, item: NumberedPlace): VNode {
  const { number, finding, details, spots } = item;
  const isChosen = state.chosenFinding === number;
  return h(
    'li',
    {
      key: number,
      id: `found-${number}`,
      class: `finding finding-${finding.severity}${isChosen ? ' finding-chosen' : ''}`,
    },
    h(
      'button',
      {
        type: 'button',
        class: `badge badge-${finding.severity}`,
        disabled: spots.length === 0,
        'aria-label': say('goThere', number),
        onClick: () => {
          acts.chooseFinding(number);
          // On a narrow window the board is above the list.
          document.querySelector('.board-frame')?.scrollIntoView({ block: 'nearest' });
        },
      },
      number,
    ),
    h(
      'div',
      {},
      h(
        'p',
        { class: 'finding-head' },
        h('span', { class: 'weight' }, say(`severity.${finding.severity}`)),
        h('code', {}, finding.code),
      ),
      drawWords(state.language, say, { finding, details }),
      drawAnswer(finding.code, say),
    ),
  );
}

/** The findings, worst first. */
export function FoundPart(props: PartProps): VNode | null {
  const { state, say } = props;
  if (state.job === null) return null;
  const { findings } = state.job;
  return h(
    'section',
    { id: 'found', 'aria-labelledby': 'found-title' },
    h(
      'h2',
      { id: 'found-title', tabIndex: -1 },
      `${say('found')}${findings.length === 0 ? '' : ` (${findings.length})`}`,
    ),
    findings.length === 0
      ? h('p', { class: 'quiet' }, say('foundNothing'))
      : h(
          'ol',
          { class: 'findings' },
          findings.map((item) => drawFinding(props, item)),
        ),
  );
}

function drawLast(finding: Finding, language: Language, say: Say): VNode {
  return h(
    'div',
    { class: 'fault-message' },
    drawWords(language, say, { finding, details: '', isOpen: true }),
    h('code', {}, finding.code),
  );
}

/** A fault is shown where it stands, however far down the hand was. */
function showFault(part: HTMLElement | null): void {
  part?.scrollIntoView({ block: 'nearest' });
}

/** Why it could not go on, with the lines of the file around the place. */
export function FaultPart({ state, say, acts }: PartProps): VNode | null {
  const { fault, language } = state;
  if (fault === null) return null;
  const last = fault.findings.at(-1);
  const lines = fault.excerpt.map(({ number, text, column }) =>
    h(
      'li',
      { key: number, class: column < 0 ? '' : 'excerpt-at', value: number },
      h(
        'code',
        {},
        column < 0
          ? text
          : [text.slice(0, column), h('mark', {}, text.slice(column, column + 1) || ' '), text.slice(column + 1)],
      ),
    ),
  );
  return h(
    'section',
    { class: 'fault', role: 'alert', ref: showFault },
    h('h2', { id: 'fault-title', tabIndex: -1 }, say('outcome.failed')),
    last === undefined ? null : drawLast(last, language, say),
    lines.length === 0 ? null : h('ol', { class: 'excerpt', lang: '' }, lines),
    fault.canGoOn
      ? h(
          'p',
          { class: 'fault-acts' },
          h('button', { type: 'button', onClick: () => acts.set({ fault: null }) }, say('goOnWithout')),
        )
      : null,
  );
}
