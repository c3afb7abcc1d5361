// What the checks hold the artwork against: the numbers of the job, each a setting with a default.

/** Numbers of the checks. A null was not said: its check stays silent, or says in a note what it could not judge. */
export interface CheckSettings {
  /** Width and height of the sheet that goes into the machine, mm. */
  readonly materialWidthMm: number | null;
  readonly materialHeightMm: number | null;
  /** Strip along one edge that the machine holds the sheet by, mm. */
  readonly gripperMm: number | null;
  readonly gripperSide: 'top' | 'bottom' | 'left' | 'right';
  /** Strip along the other edges that no pass reaches, mm. */
  readonly sideMarginMm: number;
  /** Whether the artboard is what the machine can reach, or the whole sheet, gripper and all. */
  readonly artboardIs: 'reach' | 'sheet';
  /** Size that the drawing should have, mm. */
  readonly artboardWidthMm: number | null;
  readonly artboardHeightMm: number | null;
  /** What is drawn is expected to be at least and at most this long, mm. */
  readonly smallestMm: number;
  readonly largestMm: number;
  /** The axis that the sheet is turned over for the reverse side. */
  readonly turnAxis: 'not-said' | 'vertical' | 'horizontal';
  /** Names of layers that hold register marks of the designer's own. */
  readonly markLayers: readonly string[];
  /** Ends of lines that miss a line by less lie on it, mm. */
  readonly snapMm: number;
  /** Openings in cut lines up to this are faults, wider ones are openings, mm. */
  readonly gapMm: number;
  /** A crease that stops this short of the line it runs to folds all the same, mm. */
  readonly creaseReachMm: number;
}
