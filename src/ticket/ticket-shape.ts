// What a ticket may hold: one description that the reader and the JSON Schema both follow.
import { FINDING_KINDS } from '../model/finding.js';
import { ROLES } from '../model/pass.js';
import { CHECK_FIELDS } from './check-fields.js';
import { type Field, type Fields, millimetres, text } from './field.js';
import { SHEET_FIELDS } from './sheet-fields.js';

const PASS_FIELDS: Fields = {
  name: text('Name of the pass; the file is named after it'),
  role: { type: 'word', doc: 'What the pass does, in the words of ISO 19593-1, plus print and ignore', words: ROLES },
  registersTo: text('What the machine finds the sheet by: "edge", "pins", "printed-marks", or the name of a pass'),
  side: { type: 'word', doc: 'Side of the sheet that faces the tool', words: ['front', 'reverse'] },
  turn: {
    type: 'word',
    doc: 'How the sheet is turned over for the pass: keeping the edge that the machine holds, or taking the one across',
    words: ['work-and-turn', 'work-and-tumble'],
  },
  axisMm: millimetres('Where the axis of the turn lies, from the left or the top', 0, 100_000),
  widthMm: millimetres('Width of the sheet that the pass is set up for', 1, 100_000),
  heightMm: millimetres('Height of the sheet that the pass is set up for', 1, 100_000),
};

/** Kinds of element that a rule can ask for. */
export const ELEMENT_WORDS: readonly string[] = [
  'path',
  'rect',
  'circle',
  'ellipse',
  'line',
  'polyline',
  'polygon',
  'text',
  'image',
];

const RULE_FIELDS: Fields = {
  pass: text('Name of the pass that takes the shapes, or a role'),
  layer: text(
    'Name or path of a layer around the shape; * stands for anything, case and accents do not matter. With / before it: the whole path to the letter; / alone: in no layer',
  ),
  stroke: text('Colour of the stroke, in any CSS spelling'),
  fill: text('Colour of the fill, "none" or "any"'),
  widthMm: millimetres('Width of the stroke on the artboard', 0, 1000),
  dashed: { type: 'flag', doc: 'Whether the stroke is dashed' },
  class: text('A class of the shape'),
  id: text('The id of the shape'),
  element: {
    type: 'word',
    doc: 'Kind of element',
    words: ELEMENT_WORDS,
  },
  colourTolerance: {
    type: 'number',
    doc: 'Greatest difference per channel at which colours are equal',
    least: 0,
    most: 255,
  },
  rest: { type: 'flag', doc: 'Takes what no other rule takes' },
};

const MARK_FIELDS: Fields = {
  wanted: { type: 'flag', doc: 'Whether there are marks at all' },
  discDiameterMm: millimetres('Diameter of the discs', 1, 50),
  crossSizeMm: millimetres('Length of the lines of a cross', 1, 50),
  lineWidthMm: millimetres('Width of the lines', 0.01, 5),
  offsetMm: millimetres('Clear distance from what is drawn', 0, 100),
  cornerLengthMm: millimetres('Length of the lines of a corner mark', 1, 100),
  passes: { type: 'texts', doc: 'Passes that carry register marks; empty for all', longest: 500 },
  label: { type: 'flag', doc: 'Whether surface passes carry their name and order' },
};

const SEQUENCE_FIELDS: Fields = {
  passes: {
    type: 'texts',
    doc: 'Passes that are put in order; empty for all that run a tool along lines',
    longest: 500,
  },
  origin: {
    type: 'word',
    doc: 'Corner of the artboard that the head starts from',
    words: ['top-left', 'top-right', 'bottom-left', 'bottom-right'],
  },
  restartContours: { type: 'flag', doc: 'Whether lines may be written from another start point, or backwards' },
};

const TIE_FIELDS: Fields = {
  pass: text('Name or role of the pass'),
  mode: {
    type: 'word',
    doc: 'pattern: cut and tie by turns along whole lines; hold: few ties that hold each piece',
    words: ['pattern', 'hold'],
  },
  cutMm: millimetres('Length of a cut stretch of the pattern', 0.05, 1000),
  tieMm: millimetres('Length of a tie', 0.05, 100),
  startsWith: { type: 'word', doc: 'What a line of the pattern starts with', words: ['cut', 'tie'] },
  endsWith: { type: 'word', doc: 'What a line of the pattern ends with', words: ['cut', 'tie'] },
  leastPerPiece: { type: 'number', doc: 'Fewest ties that hold a piece', least: 0, most: 1000 },
  freeMm: millimetres('Longest stretch that may be free between two ties that hold', 1, 100_000),
  smallHoleMm: millimetres('An outline no larger than this either way is that of a small hole', 0, 1000),
  smallHoleTies: { type: 'number', doc: 'Ties of a small hole', least: 0, most: 100 },
  cornerClearMm: millimetres('Clear distance of ties from corners', 0, 1000),
  creaseEndClearMm: millimetres('Clear distance of ties from the ends of creases', 0, 1000),
  leastRadiusMm: millimetres('Ties stand only where the line bends less than a circle of this radius', 0, 10_000),
  tiesPass: { type: 'flag', doc: 'Whether the ties are also written as a pass of their own' },
};

/** Codes whose severity a ticket may change. */
export const CHANGEABLE_CODES: readonly string[] = Object.entries(FINDING_KINDS)
  .filter(([, kind]) => kind.severity !== 'error')
  .map(([code]) => code);

/** Whether a word is a code that always stays an error. */
export function isErrorCode(word: string): boolean {
  return Object.hasOwn(FINDING_KINDS, word) && !CHANGEABLE_CODES.includes(word);
}

function describeSeverities(): Fields {
  const words = ['error', 'warning', 'note'];
  return Object.fromEntries(
    CHANGEABLE_CODES.map((code) => [code, { type: 'word', doc: `Severity of ${code}`, words } satisfies Field]),
  );
}

/** The keys of a ticket, version 1. */
export const TICKET_FIELDS: Fields = {
  pinbar: { type: 'number', doc: 'Version of the ticket', least: 1, most: 1 },
  $schema: text('Address of the schema, for editors'),
  passes: {
    type: 'objects',
    doc: 'The passes in the order of the runs',
    fields: PASS_FIELDS,
    required: ['name', 'role'],
  },
  rules: { type: 'objects', doc: 'Which shapes go where', fields: RULE_FIELDS, required: ['pass'] },
  hidden: { type: 'word', doc: 'What becomes of hidden layers', words: ['ask', 'skip', 'include', 'stop'] },
  partPaint: { type: 'flag', doc: 'Put the fill of a shape into print and its stroke into the die pass' },
  linkedPictures: { type: 'word', doc: 'What becomes of linked pictures', words: ['ask', 'embed', 'leave-out'] },
  marks: { type: 'object', doc: 'Register and corner marks', fields: MARK_FIELDS, required: [] },
  sheet: { type: 'object', doc: 'Copies on a sheet', fields: SHEET_FIELDS, required: ['widthMm', 'heightMm'] },
  marginMm: millimetres('How much the artboard grows on every side', 0, 1000),
  userUnitsPerInch: {
    type: 'number',
    doc: 'User units to the inch for a root whose size is not sure',
    least: 1,
    most: 100_000,
    orNull: true,
  },
  compact: { type: 'flag', doc: 'Make the files smaller where nothing moves by it' },
  witness: { type: 'word', doc: 'When the second judge looks', words: ['auto', 'always', 'never'] },
  sequence: {
    type: 'object',
    doc: 'Order of the lines in tool passes: creases before cuts, inner outlines before outer ones, a short way',
    fields: SEQUENCE_FIELDS,
    required: [],
  },
  ties: {
    type: 'objects',
    doc: 'Passes that get ties, once each',
    fields: TIE_FIELDS,
    required: ['pass', 'mode'],
  },
  checks: { type: 'object', doc: 'What the checks hold the artwork against', fields: CHECK_FIELDS, required: [] },
  severities: {
    type: 'object',
    doc: 'New severities for warnings and notes',
    fields: describeSeverities(),
    required: [],
  },
};
