// The ticket of somebody who asked for nothing in particular.
import type { CheckSettings } from '../model/check-settings.js';
import { GRIPPER_SIDE, type SheetRequest } from '../model/layout.js';
import type { SequenceRequest } from '../model/sequence.js';
import type { Ticket } from '../model/ticket.js';
import type { TieDefaults, TieRequest } from '../model/ties.js';

/** Numbers of the checks where the ticket says none. Distances of lines are common practice, no source. */
const DEFAULT_CHECKS: CheckSettings = {
  materialWidthMm: null,
  materialHeightMm: null,
  gripperMm: null,
  gripperSide: GRIPPER_SIDE,
  sideMarginMm: 0,
  artboardIs: 'reach',
  artboardWidthMm: null,
  artboardHeightMm: null,
  smallestMm: 10,
  largestMm: 3000,
  turnAxis: 'not-said',
  snapMm: 0.05,
  gapMm: 1,
  creaseReachMm: 2,
  overlapMm: 0.5,
  machineStepMm: 0.01,
  knifeOffsetMm: null,
  sharpTurnDegrees: 30,
  simplifyMm: 0.02,
  needlessPoints: 50,
  tieMm: null,
  leastTies: 2,
  cutOrder: 'drawn',
  creaseShortMm: 0.5,
  creaseOverMm: 0.5,
  creaseToCutMm: 2,
  caliperMm: null,
  creaseRuleMm: 0.7,
  grain: 'not-said',
  markLayers: ['Marks', 'Register marks', 'Registration marks'],
  bleedMm: 3,
  touchMm: 0.5,
  noBleed: [],
  safeMarginMm: 3,
  smallArtMm: 20,
  minimumPpi: 200,
  leastPpi: 100,
  mostPpi: 600,
  hairlineMm: 0.088,
  knockoutMm: 0.2,
  whiteChokeMm: null,
  whiteToleranceMm: 0.05,
};

/** Every default. Mark sizes are common practice, no source. */
export const DEFAULT_TICKET: Ticket = {
  passes: [],
  rules: [],
  hidden: 'ask',
  partPaint: false,
  linkedPictures: 'ask',
  marks: {
    wanted: true,
    discDiameterMm: 6,
    crossSizeMm: 6,
    lineWidthMm: 0.25,
    offsetMm: 3,
    cornerLengthMm: 5,
    passes: [],
    label: true,
  },
  marginMm: 0,
  userUnitsPerInch: null,
  compact: false,
  witness: 'auto',
  checks: DEFAULT_CHECKS,
  severities: {},
};

/** What putting in order means where the ticket says no more than that it is wanted. */
export const DEFAULT_SEQUENCE: SequenceRequest = { passes: [], origin: 'top-left', restartContours: false };

/** What a sheet of copies is where the ticket does not say; a strip for the gripper and margins are never guessed. */
export const DEFAULT_SHEET: Omit<SheetRequest, 'widthMm' | 'heightMm'> = {
  gripperMm: 0,
  gripperSide: GRIPPER_SIDE,
  marginsMm: 0,
  gutterMm: 0,
  ups: 'max',
  place: 'centre',
  copyMark: false,
  copies: 'written',
  scale: 1,
};

/** Starting values of our own, from no source and tried on no machine: run a test strip first. */
const TIE_START: TieDefaults = {
  cutMm: 6,
  tieMm: 1,
  startsWith: 'cut',
  endsWith: 'cut',
  leastPerPiece: 3,
  freeMm: 120,
  smallHoleMm: 20,
  smallHoleTies: 1,
  cornerClearMm: 3,
  creaseEndClearMm: 3,
  leastRadiusMm: 2.5,
  tiesPass: false,
};

/** Numbers of ties where the ticket says none. Starting values of our own. */
export const DEFAULT_TIES: Readonly<Record<TieRequest['mode'], TieDefaults>> = {
  pattern: TIE_START,
  hold: { ...TIE_START, tieMm: 0.5 },
};
