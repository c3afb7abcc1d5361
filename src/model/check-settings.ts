// What the checks hold the artwork against: the numbers of the job, each a setting with a default.
import type { SheetSide } from './layout.js';

/** Numbers of the checks. A null was not said: its check stays silent, or says in a note what it could not judge. */
export interface CheckSettings {
  /** Width and height of the sheet that goes into the machine, mm. */
  readonly materialWidthMm: number | null;
  readonly materialHeightMm: number | null;
  /** Strip along one edge that the machine holds the sheet by, mm. */
  readonly gripperMm: number | null;
  readonly gripperSide: SheetSide;
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
  /** How far print must reach beyond the edge of the blank where it touches it, mm. */
  readonly bleedMm: number;
  /** Print that ends nearer to the edge than this touches it, mm. */
  readonly touchMm: number;
  /** Names of passes and paths of layers whose print may end at the edge. */
  readonly noBleed: readonly string[];
  /** Clear distance of type and small art from cuts and creases, mm. */
  readonly safeMarginMm: number;
  /** Art counts as small up to this size, mm. */
  readonly smallArtMm: number;
  /** Pixels to the inch that a picture should have, must have, and has no use for. */
  readonly minimumPpi: number;
  readonly leastPpi: number;
  readonly mostPpi: number;
  /** Thinnest line that print holds, mm. */
  readonly hairlineMm: number;
  /** How near to a die line a white line must run to count as kept free for it, mm. */
  readonly knockoutMm: number;
  /** How far white stays inside the rim of the print it carries, mm; null: not judged, but it must not stick out. */
  readonly whiteChokeMm: number | null;
  /** How far white may be off from its choke, mm. */
  readonly whiteToleranceMm: number;
  /** Lines that lie on each other over less are let be, mm. */
  readonly overlapMm: number;
  /** Shortest step that the machine can make, mm. */
  readonly machineStepMm: number;
  /** How far the knife trails behind its axis, mm, and from which turn on that matters, degrees. */
  readonly knifeOffsetMm: number | null;
  readonly sharpTurnDegrees: number;
  /** How far a simplified line may leave the drawn one, mm, and how many needless points a line may have. */
  readonly simplifyMm: number;
  readonly needlessPoints: number;
  /** Width of ties that are drawn as openings of a cut outline, mm. */
  readonly tieMm: number | null;
  /** Fewest ties of a tied outline. */
  readonly leastTies: number;
  /** Whether the machine cuts in the order of the drawing, or sorts the cuts itself. */
  readonly cutOrder: 'drawn' | 'sorted';
  /** A crease may stop this short of the line it runs to, and may run over a cut by as much, mm. */
  readonly creaseShortMm: number;
  readonly creaseOverMm: number;
  /** Least distance of a crease or perforation from a cut beside it, mm. */
  readonly creaseToCutMm: number;
  /** Thickness of the board, and of the rule that creases it, mm. */
  readonly caliperMm: number | null;
  readonly creaseRuleMm: number;
  /** Direction of the grain on the artboard. */
  readonly grain: 'not-said' | 'vertical' | 'horizontal';
}
