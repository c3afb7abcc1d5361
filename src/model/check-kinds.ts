// What the checks can find: their part of the closed table of codes.

/** What a check looks at; findings are listed under it. */
export type CheckGroup = 'lines' | 'print' | 'sheet' | 'passes' | 'blank';

/** Codes of the checks, group by group. */
const CHECKS = {
  'check/lines-tangled': {
    severity: 'warning',
    group: 'lines',
    doc: 'Tool lines are too many or too tangled for the checks of lines.',
  },
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
  'check/line-doubled': {
    severity: 'warning',
    group: 'lines',
    doc: 'Lines of a pass lie on each other: the tool runs twice.',
  },
  'check/line-on-line': {
    severity: 'warning',
    group: 'lines',
    doc: 'A line lies on a line of another tool pass, such as a crease on a cut.',
  },
  'check/crease-short': {
    severity: 'warning',
    group: 'lines',
    doc: 'A crease or perforation stops short of the line it runs to.',
  },
  'check/crease-over-cut': {
    severity: 'warning',
    group: 'lines',
    doc: 'A crease or perforation runs over the cut, off the blank.',
  },
  'check/crease-idle': {
    severity: 'warning',
    group: 'blank',
    doc: 'A crease or perforation ends within a panel and folds nothing.',
  },
  'check/crease-near-cut': {
    severity: 'warning',
    group: 'lines',
    doc: 'A crease or perforation runs beside a cut, too near to it.',
  },
  'check/crease-pair-narrow': {
    severity: 'warning',
    group: 'lines',
    doc: 'Two creases run side by side, too near for the thickness of the board.',
  },
  'check/crease-grain': {
    severity: 'note',
    group: 'lines',
    doc: 'How much of the creases runs with the grain, and how much across it.',
  },
  'check/no-line': {
    severity: 'error',
    asks: true,
    group: 'lines',
    doc: 'A picture, live text or foreign object in a tool pass.',
  },
  'check/line-painted': {
    severity: 'warning',
    group: 'lines',
    doc: 'A shape of a tool pass is filled, under an effect or see-through.',
  },
  'check/line-under-art': {
    severity: 'warning',
    group: 'lines',
    doc: 'A line of a tool pass lies under art.',
  },
  'check/outline-crosses-itself': {
    severity: 'warning',
    group: 'lines',
    doc: 'A cut outline crosses itself.',
  },
  'check/segment-short': {
    severity: 'warning',
    group: 'lines',
    doc: 'A segment is shorter than a step of the machine.',
  },
  'check/turn-sharp': {
    severity: 'warning',
    group: 'lines',
    doc: 'A segment between two sharp turns is shorter than the offset of the knife.',
  },
  'check/points-needless': {
    severity: 'note',
    group: 'lines',
    doc: 'A line has many more points than it needs.',
  },
  'check/ties-few': { severity: 'warning', group: 'lines', doc: 'A tied outline has no tie, or too few.' },
  'check/tie-at-corner': { severity: 'warning', group: 'lines', doc: 'A tie lies on a corner of the outline.' },
  'check/cut-order': {
    severity: 'warning',
    group: 'lines',
    doc: 'A hole or slit comes after the outline of its blank.',
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
  'check/marks-in-blank': { severity: 'warning', group: 'passes', doc: 'Marks stand within a blank.' },
  'check/marks-covered': { severity: 'warning', group: 'passes', doc: 'Marks lie under a copy that is drawn later.' },
  'check/bleed-short': {
    severity: 'warning',
    group: 'print',
    doc: 'Print touches the edge of the blank and does not reach far enough beyond it.',
  },
  'check/bleed-unchecked': {
    severity: 'warning',
    group: 'print',
    doc: 'Print along the edge of the blank is too much or too tangled for its bleed to be looked at.',
  },
  'check/white-unchecked': {
    severity: 'warning',
    group: 'print',
    doc: 'White, or the print above it, is too much or too tangled for their fit to be looked at.',
  },
  'check/near-edge': {
    severity: 'warning',
    group: 'print',
    doc: 'Type or small art stands nearer to a cut or crease than the safe margin.',
  },
  'check/picture-coarse': {
    severity: 'warning',
    group: 'print',
    doc: 'A picture has fewer pixels to the inch than asked for.',
  },
  'check/picture-too-coarse': {
    severity: 'error',
    asks: true,
    group: 'print',
    doc: 'A picture has so few pixels to the inch that they will show.',
  },
  'check/picture-oversized': {
    severity: 'note',
    group: 'print',
    doc: 'A picture has far more pixels to the inch than print can show.',
  },
  'check/picture-unread': { severity: 'note', group: 'print', doc: 'The pixels of a picture cannot be counted.' },
  'check/live-text': {
    severity: 'warning',
    group: 'print',
    doc: 'Live type in a pass that covers areas: the machine needs its fonts.',
  },
  'check/hairline': { severity: 'warning', group: 'print', doc: 'A printed line is thinner than print can hold.' },
  'check/paint-unresolved': {
    severity: 'warning',
    group: 'print',
    doc: 'A gradient or pattern is missing or gives no paint.',
  },
  'check/off-artboard': { severity: 'warning', group: 'print', doc: 'Shapes of a pass lie off the artboard.' },
  'check/die-knockout': {
    severity: 'warning',
    group: 'print',
    doc: 'A white line in the print keeps the art away from a die line.',
  },
  'check/white-bare': { severity: 'warning', group: 'print', doc: 'White is printed where no print covers it.' },
  'check/white-wide': {
    severity: 'warning',
    group: 'print',
    doc: 'White reaches nearer to the rim of the print it carries than the choke allows.',
  },
  'check/white-narrow': {
    severity: 'warning',
    group: 'print',
    doc: 'White ends farther inside the print it carries than the choke asks for.',
  },
} as const;

/** Severity, group and manual line of the codes that checks give. */
export const CHECK_KINDS: typeof CHECKS = CHECKS;
