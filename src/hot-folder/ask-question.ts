// The one question of a parked job in plain words, with an answer that can be copied and loses nothing of the job.
import {
  FINDING_KINDS,
  type Finding,
  type FindingCode,
  type Inspection,
  ROLES,
  type Ticket,
  writeTicket,
} from '../index.js';

/** An answer as a ticket says it, and what it does. */
interface Answer {
  readonly ticket: Readonly<Record<string, unknown>>;
  readonly words: string;
}

const ANSWERS: Readonly<Partial<Record<FindingCode, Answer>>> = {
  'layer/hidden-asked': {
    ticket: { hidden: 'include' },
    words: 'It takes hidden layers along; "skip" in place of "include" leaves them out.',
  },
  'classify/fill-and-stroke': {
    ticket: { partPaint: true },
    words: 'It sends the fill of such shapes to print and their stroke to its pass.',
  },
  'split/picture-linked': {
    ticket: { linkedPictures: 'embed' },
    words: 'It puts the pictures in; "leave-out" in place of "embed" leaves them out.',
  },
};

/** Warnings that a strict ticket turns into errors, and that an answer settles. */
const ASKS_WHEN_STRICT = new Set<FindingCode>(['resolve/size-unsure', 'resolve/size-missing']);

/** Questions that rules answer. */
const ASKS_FOR_RULES = new Set<FindingCode>([
  'classify/unclaimed',
  'classify/name-unsure',
  'classify/claimed-twice',
  'classify/name-against-paint',
]);

/** Of these, those where rules clash: one more that says no more than they do would be one more in the clash. */
const CLASHES = new Set<FindingCode>(['classify/claimed-twice', 'classify/name-against-paint']);

/** Stands for a pass in an example: a ticket that still says so is refused, so that nobody sends lines to the wrong pass by copying. */
const WHICH = 'WHICH-PASS';

/** What the question is about. */
export interface AskedAbout {
  readonly ticket: Ticket;
  readonly inspection: Inspection;
}

/** Whether an answer in a ticket settles it. */
export function isQuestion(item: Finding): boolean {
  return FINDING_KINDS[item.code].asks === true || ASKS_WHEN_STRICT.has(item.code);
}

/** The rules as they are: those of the ticket, else what the names of the layers say, which rules take the place of. */
function listRules({ ticket, inspection }: AskedAbout): readonly object[] {
  const written = writeTicket(ticket) as { readonly rules?: readonly object[] };
  if (written.rules !== undefined && written.rules.length > 0) return written.rules;
  return inspection.layers.flatMap(({ path, suggestion }) =>
    suggestion?.sure === true ? [{ pass: suggestion.role, layer: path }] : [],
  );
}

/** A rule for a layer and each colour of its lines, which goes before all that look at one of the two; none where the layer has no lines. */
function outrank({ inspection }: AskedAbout, layer: string | null): readonly object[] {
  const strokes = inspection.strokes.filter(({ layers }) => layer !== null && layers.includes(layer));
  return strokes.map(({ colour }) => ({ pass: WHICH, layer, stroke: colour }));
}

/** Whether rules say the same but for their pass. */
function isAlike(one: object, other: object): boolean {
  return JSON.stringify({ ...one, pass: '' }) === JSON.stringify({ ...other, pass: '' });
}

/** All rules, and one for each layer that is asked about; null where no such rule would settle it. */
function answerByRules(about: AskedAbout, errors: readonly Finding[]): Answer | null {
  const paths = [...new Set(errors.map(({ place }) => place?.layerPath ?? null))];
  const clashes = CLASHES.has(errors[0]!.code);
  const closer = paths.map((layer) => outrank(about, layer));
  const known = listRules(about);
  if (
    clashes &&
    closer.some((rules) => rules.length === 0 || rules.some((rule) => known.some((it) => isAlike(it, rule))))
  ) {
    return null;
  }
  const asked = clashes
    ? closer.flat()
    : paths.map((layer) => (layer === null ? { pass: WHICH, rest: true } : { pass: WHICH, layer }));
  const roles = `${ROLES.filter((role) => role !== 'ignore').join(', ')}, or ignore to leave it out`;
  return {
    ticket: { rules: [...known, ...asked] },
    words: `Write in place of each ${WHICH} what that layer is for: ${roles}.\nRules take the place of layer names, so all passes must stand in them; one may look at a colour too: {"pass": "cutting", "layer": "Box", "stroke": "#e5007d"}.`,
  };
}

/** The usual numbers of units to the inch, and what size each makes of the drawing. */
function answerSize({ inspection }: AskedAbout): Answer | null {
  const sizes = Object.entries(inspection.artboard.atPerInch ?? {}).reverse();
  if (sizes.length === 0) return null;
  const said = sizes.map(
    ([units, { widthMm, heightMm }]) => `${units} makes it ${roundMm(widthMm)} x ${roundMm(heightMm)} mm`,
  );
  return {
    ticket: { userUnitsPerInch: Number(sizes[0]![0]) },
    words: `It says how many units of the drawing make an inch: ${said.join(', ')}.`,
  };
}

function roundMm(mm: number): number {
  return Number(mm.toFixed(2));
}

function findAnswer(about: AskedAbout, first: Finding, alike: readonly Finding[]): Answer | null {
  if (ASKS_FOR_RULES.has(first.code)) return answerByRules(about, alike);
  if (ASKS_WHEN_STRICT.has(first.code)) return answerSize(about);
  if (first.code !== 'mark/no-room') return ANSWERS[first.code] ?? null;
  return {
    ticket: { marginMm: Number(first.data?.marginMm ?? 15) },
    words: 'It grows the sheet by so many mm on every side.',
  };
}

/** The first error as a question. Those of the same kind that the same rules settle are asked with it. */
export function askQuestion(about: AskedAbout, findings: readonly Finding[]): string {
  const errors = findings.filter((item) => item.severity === 'error');
  const first = errors[0]!;
  const alike = ASKS_FOR_RULES.has(first.code) ? errors.filter((item) => item.code === first.code) : [first];
  const rest = errors.length - alike.length;
  const answer = findAnswer(about, first, alike);
  const how = 'Save the answer beside this file as ticket.json. Its keys are laid over the ticket of the job.';
  return [
    ...alike.map(({ message }) => message),
    '',
    ...(answer === null ? [first.remedy, '', how] : [`${how} For instance:`, '', sayTicket(answer), '', answer.words]),
    ...(rest === 0 ? [] : ['', `${rest} more to be settled after that: see report/report.txt.`]),
  ].join('\n');
}

function sayTicket({ ticket }: Answer): string {
  return `    ${JSON.stringify({ pinbar: 1, ...ticket })}`;
}

/** All answers that the errors ask for, as a ticket says them: the report itself speaks of the options of the command line. */
export function listAnswers(about: AskedAbout, findings: readonly Finding[]): string {
  const errors = findings.filter((item) => item.severity === 'error');
  const codes = [...new Set(errors.map(({ code }) => code))];
  const lines = codes.flatMap((code) => {
    const alike = errors.filter((item) => item.code === code);
    const answer = findAnswer(about, alike[0]!, alike);
    return answer === null ? [] : ['', `  ${code}`, sayTicket(answer), ...indent(answer.words)];
  });
  if (lines.length === 0) return '';
  const how = '  Save them beside the file as ticket.json; several go into one, key by key.';
  return ['', 'Answers in a ticket', '', how, ...lines, ''].join('\n');
}

function indent(words: string): readonly string[] {
  return words.split('\n').map((line) => `    ${line}`);
}

/** What is wrong with a job that no answer settles. */
export function sayFault(findings: readonly Finding[]): string {
  const first = findings.find((item) => item.severity === 'error');
  return first === undefined
    ? 'The files could not be proved to overlay.'
    : [first.message, first.remedy].join('\n').trim();
}

/** A ticket that cannot be understood is put right as a whole: an answer laid over it would leave in it what is wrong. */
export function askForTicket(findings: readonly Finding[], artName: string): string {
  const name = `${artName.replace(/\.svgz?$/i, '')}.ticket.json`;
  return [
    'The ticket of this job cannot be followed:',
    ...findings.map(({ message, remedy }) => `${message} ${remedy}`.trim()),
    '',
    `Mend the ticket that lies beside this file. Where none does, save the whole ticket, put right, as ${name} beside it: it takes the place of the one that was used.`,
  ].join('\n');
}
