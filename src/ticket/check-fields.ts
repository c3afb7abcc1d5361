// Keys of the ticket's `checks`.
import { type Fields, maybeMillimetres, millimetres, pixelsPerInch } from './field.js';

/** The settings of the checks; each file of `check/` says what its own mean. */
export const CHECK_FIELDS: Fields = {
  materialWidthMm: maybeMillimetres('Width of the sheet that goes into the machine', 1, 100_000),
  materialHeightMm: maybeMillimetres('Height of the sheet that goes into the machine', 1, 100_000),
  gripperMm: maybeMillimetres('Strip along one edge that the machine holds the sheet by', 0, 1000),
  gripperSide: { type: 'word', doc: 'Edge that the gripper holds', words: ['top', 'bottom', 'left', 'right'] },
  sideMarginMm: millimetres('Strip along the other edges that no pass reaches', 0, 1000),
  artboardIs: {
    type: 'word',
    doc: 'Whether the artboard is what the machine reaches or the whole sheet, gripper and all',
    words: ['reach', 'sheet'],
  },
  artboardWidthMm: maybeMillimetres('Width that the drawing should have', 0.01, 100_000),
  artboardHeightMm: maybeMillimetres('Height that the drawing should have', 0.01, 100_000),
  smallestMm: millimetres('Least length of all that is drawn', 0, 100_000),
  largestMm: millimetres('Greatest length of all that is drawn', 0, 1_000_000),
  turnAxis: {
    type: 'word',
    doc: 'Axis that the sheet is turned over for the reverse side',
    words: ['not-said', 'vertical', 'horizontal'],
  },
  snapMm: millimetres('Ends of lines that miss a line by less lie on it', 0, 1),
  gapMm: millimetres('Openings in cut lines up to this are faults, wider ones are openings', 0, 10),
  overlapMm: millimetres('Lines that lie on each other over less are let be', 0, 100),
  creaseReachMm: millimetres('A crease that stops this short of a line folds up to it', 0, 20),
  markLayers: { type: 'texts', doc: "Layers that hold register marks of the designer's own", longest: 500 },
  bleedMm: millimetres('How far print must reach beyond the edge of the blank where it touches it', 0, 100),
  touchMm: millimetres('Print that ends nearer to the edge than this touches it', 0, 10),
  noBleed: { type: 'texts', doc: 'Passes and layers whose print may end at the edge', longest: 500 },
  safeMarginMm: millimetres('Clear distance of type and small art from cuts and creases', 0, 100),
  smallArtMm: millimetres('Art counts as small up to this size', 0, 1000),
  minimumPpi: pixelsPerInch('Pixels to the inch that a picture should have'),
  leastPpi: pixelsPerInch('Pixels to the inch that a picture must have'),
  mostPpi: pixelsPerInch('Pixels to the inch beyond which a picture gains nothing'),
  hairlineMm: millimetres('Thinnest line that print holds', 0, 10),
  knockoutMm: millimetres('How near to a die line a white line runs that is kept free for it', 0, 10),
  whiteChokeMm: maybeMillimetres('How far white stays inside the rim of the print it carries', 0, 10),
  whiteToleranceMm: millimetres('How far white may be off from its choke', 0, 10),
};
