// Keys of the ticket's `sheet`.
import { type Fields, millimetres } from './field.js';

const UPS = '^(?:max|[1-9][0-9]{0,3}x[1-9][0-9]{0,3})$';

/** Copies on a sheet. */
export const SHEET_FIELDS: Fields = {
  widthMm: millimetres('Width of the sheet', 1, 100_000),
  heightMm: millimetres('Height of the sheet', 1, 100_000),
  gripperMm: millimetres('Strip that the machine holds the sheet by', 0, 1000),
  gripperSide: { type: 'word', doc: 'Edge that the gripper holds', words: ['top', 'bottom', 'left', 'right'] },
  marginsMm: millimetres('Strip along the other edges that stays free', 0, 1000),
  gutterMm: millimetres('Clear distance between blanks', 0, 1000),
  gutterXMm: millimetres('Clear distance between blanks beside each other, where it differs', 0, 1000),
  gutterYMm: millimetres('Clear distance between blanks above each other, where it differs', 0, 1000),
  ups: {
    type: 'either',
    doc: 'How many copies: max, a number, or columns by rows',
    one: { type: 'text', doc: '', longest: 9, pattern: { source: UPS, says: 'max or columns by rows such as 3x2' } },
    other: { type: 'number', doc: '', least: 1, most: 10_000, whole: true },
  },
  turn: {
    type: 'word',
    doc: 'Turn of the copies clockwise, degrees, or every other row upside down; left out with max: whatever is best',
    words: [0, 90, 180, 270, 'head-to-tail'],
  },
  place: {
    type: 'word',
    doc: 'Copies in the middle of what is free, or from its top left',
    words: ['centre', 'origin'],
  },
  copyMark: { type: 'flag', doc: 'Whether each copy gets a small cross of its own, beside the marks of the sheet' },
  copies: {
    type: 'word',
    doc: 'Each copy written out, or the pass once and a reference for each copy: smaller, but not every reader of a machine follows it',
    words: ['written', 'referenced'],
  },
  scale: { type: 'number', doc: 'Size of a copy against the drawing', least: 0.001, most: 1000 },
};
