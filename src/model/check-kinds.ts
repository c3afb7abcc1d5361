// What the checks can find: their part of the closed table of codes.

/** What a check looks at; findings are listed under it. */
export type CheckGroup = 'lines' | 'print' | 'sheet' | 'passes' | 'blank';

/** Codes of the checks, group by group. */
const CHECKS = {
  'check/outline-open': {
    severity: 'warning',
    group: 'lines',
    doc: 'A cut outline does not close: an opening between two ends.',
  },
  'check/outline-not-cut': {
    severity: 'warning',
    group: 'lines',
    doc: 'A crease or perforation bounds the board where the outline should be cut.',
  },
  'check/loose-piece': {
    severity: 'note',
    group: 'blank',
    doc: 'Pieces that are cut loose and are no blank: windows, holes, offcuts.',
  },
  'check/artboard-too-large': {
    severity: 'error',
    asks: true,
    group: 'sheet',
    doc: 'The artboard is larger than the material without gripper and side margins.',
  },
  'check/blank-off-sheet': {
    severity: 'error',
    group: 'sheet',
    doc: 'A tool line reaches over the edge of the sheet.',
  },
  'check/size-suspicious': {
    severity: 'warning',
    group: 'sheet',
    doc: 'The size looks as if units were mixed up: 72 for 96 to the inch, a factor of 10, inches for millimetres.',
  },
  'check/art-in-gripper': {
    severity: 'warning',
    group: 'sheet',
    doc: 'Something is drawn where the machine holds the sheet or does not reach.',
  },
  'check/pass-size-differs': {
    severity: 'error',
    asks: true,
    group: 'passes',
    doc: 'A pass is set up for a sheet of another size.',
  },
  'check/marks-not-there': {
    severity: 'error',
    asks: true,
    group: 'passes',
    doc: 'A pass registers to marks that are not on the sheet when it runs.',
  },
  'check/tool-on-print': {
    severity: 'note',
    group: 'passes',
    doc: 'A tool presses on a face that is printed already.',
  },
  'check/turn-axis-unsaid': {
    severity: 'warning',
    group: 'passes',
    doc: 'A pass runs on the reverse side, and nothing says how the sheet is turned.',
  },
  'check/marks-in-gripper': {
    severity: 'warning',
    group: 'passes',
    doc: 'Marks stand where the machine holds the sheet or does not reach.',
  },
  'check/marks-covered': { severity: 'warning', group: 'passes', doc: 'Marks lie under a copy that is drawn later.' },
} as const;

/** Severity, group and manual line of the codes that checks give. */
export const CHECK_KINDS: typeof CHECKS = CHECKS;
