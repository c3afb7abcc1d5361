// A run sheet: what somebody at the machine needs for one job, every figure with where it came from.
import type { Role } from './pass.js';
import type { FigureSource, Hazard } from './profile.js';
import type { CorrectedPass } from './register.js';
import type { Corner } from './sequence.js';

/** A figure as it is shown. Null in its place: nobody entered one. */
export interface Figure<T = number> {
  readonly value: T;
  readonly from: FigureSource;
  readonly on: string;
  readonly by: string;
  readonly batch: string | null;
  /** A starting point that nobody tried. */
  readonly untested: boolean;
  /** Found on another batch than the one at the machine. */
  readonly oldNews: boolean;
}

/** Settings of a pass. A force also in newtons. */
export interface RunSettings {
  readonly speedCmS: Figure | null;
  readonly pressureGf: Figure | null;
  readonly pressureN: number | null;
  readonly strokes: Figure | null;
  readonly offsetMm: Figure | null;
  readonly cutMm: Figure | null;
  readonly tieMm: Figure | null;
  readonly tiePressureGf: Figure | null;
  readonly tiePressureN: number | null;
  readonly secondsPerSheet: Figure | null;
}

/** What the lines of a pass come to, once over each. Null counts where nothing was measured. */
export interface RunLines {
  readonly lines: number;
  readonly lengthMm: number;
  readonly stretches: number;
  readonly lifts: number;
  readonly travelMm: number;
  readonly ties: number;
  readonly tieLengthMm: number;
  /** Whether the ties are gaps in the file, so that the machine must not make any more. */
  readonly tiesAreDrawn: boolean;
  /** How much the tie pattern gives way at most, as a share. */
  readonly greatestStretch: number;
  /** For the timing record of the shop profile, lengths rounded. */
  readonly record: {
    readonly stretches: readonly { readonly lengthMm: number; readonly count: number }[];
    readonly travels: readonly { readonly lengthMm: number; readonly count: number }[];
  };
}

/** Times of a pass, s; null where a figure for it is missing. */
export interface RunTime {
  /** Length over speed alone, for comparison. */
  readonly lengthOverSpeedS: number | null;
  /** The tool's way with stops, lifts and travel, all strokes. */
  readonly motionS: number | null;
  /** How many times longer that is. */
  readonly factor: number | null;
  readonly startS: number | null;
  readonly marksS: number | null;
  readonly loadS: number | null;
  readonly perSheetS: number | null;
  /** All sheets and one mounting of the tool. */
  readonly perRunS: number | null;
}

/** How a sheet is turned over. */
export interface SheetTurn {
  /** `vertical`: left and right change places; `horizontal`: top and bottom do. */
  readonly axis: 'vertical' | 'horizontal';
  /** Where the axis lies on the file, mm from its left or its top. */
  readonly axisMm: number;
  /** `work-and-turn` keeps the edge that the machine holds, `work-and-tumble` takes the one across; null where only the axis is said. */
  readonly way: 'work-and-turn' | 'work-and-tumble' | null;
}

/** The file of a pass on the reverse, mirrored about the axis of the turn; how far any shape came out from its mirror image is measured. */
export interface TurnedPass extends CorrectedPass {
  /** Name of the file that it mirrors. */
  readonly of: string;
  readonly turn: SheetTurn;
}

/** What a pass finds the sheet by; `pass` names another pass whose marks it looks at. */
export interface RunRegister {
  readonly to: string | null;
  /** `ticket`: the job says so; `order`: the shop's order does; `nobody`. */
  readonly saidBy: 'ticket' | 'order' | 'nobody';
  readonly side: 'front' | 'reverse';
  /** How the sheet is turned before the pass; null where it need not be. */
  readonly turn: SheetTurn | 'not-said' | null;
}

/** One pass of a run sheet, or the ties of one in a file of their own, which is run behind it while the sheet still lies. */
export interface RunPass {
  /** Of the pass, also for its ties. */
  readonly order: number;
  readonly name: string;
  /** Name of the pass that these are the ties of; null for a pass. */
  readonly tiesOf: string | null;
  readonly role: Role;
  /** Why it stands here, in the shop's words; null where nobody entered a reason. */
  readonly reason: string | null;
  readonly register: RunRegister;
  /** Null where the machine has no tool for it. */
  readonly tool: {
    readonly name: string;
    readonly mount: string | null;
    readonly takeOff: string | null;
    readonly hazards: readonly Hazard[];
  } | null;
  readonly settings: RunSettings;
  readonly file: { readonly name: string; readonly bytes: number; readonly sha256: string };
  /** For a pass on the reverse: its file mirrored about the axis of the turn, and how far any shape came out from there. */
  readonly turnedFile: {
    readonly name: string;
    readonly bytes: number;
    readonly sha256: string;
    readonly deviationMm: number;
  } | null;
  /** The ties of the pass in a file of their own, told as a step of its own behind it; null where there is none. */
  readonly tieFile: { readonly name: string; readonly bytes: number; readonly sha256: string } | null;
  /** Null for passes that cover areas. */
  readonly lines: RunLines | null;
  readonly time: RunTime;
}

/** How far passes may come out from each other, mm. */
export interface RunBudget {
  readonly pair: string;
  readonly way: 'lay' | 'marks';
  readonly formula: string;
  readonly totalMm: number | null;
}

/** A caution: what is dangerous, what it does, how to avoid it. */
export interface Caution {
  readonly level: 'WARNING' | 'NOTICE';
  /** ISO 7010 code of the sign; null for a notice of ours. */
  readonly sign: 'W022' | 'W027' | 'W017' | 'M002';
  readonly text: string;
}

/** A run sheet. */
export interface RunSheet {
  readonly job: {
    readonly name: string;
    readonly sha256: string;
    /** Size of every pass file. */
    readonly widthMm: number;
    readonly heightMm: number;
    readonly marks: readonly {
      readonly name: string;
      readonly shape: string;
      readonly xMm: number;
      readonly yMm: number;
    }[];
  };
  readonly shop: string;
  readonly machine: {
    readonly name: string;
    readonly origin: Figure<Corner> | null;
    readonly widthMm: Figure | null;
    readonly heightMm: Figure | null;
    /** Whether the files fit what the machine reaches inside its margins; null where that is not known. */
    readonly fits: boolean | null;
  };
  readonly material: {
    readonly name: string;
    readonly batch: string | null;
    readonly caliperMm: Figure | null;
    readonly grammageGsm: Figure | null;
    readonly grain: Figure<'along-width' | 'along-height'> | null;
  };
  readonly order: { readonly name: string | null; readonly reason: string | null };
  readonly passes: readonly RunPass[];
  readonly budgets: readonly RunBudget[];
  readonly figures: { readonly layMm: Figure | null; readonly marksMm: Figure | null; readonly headMm: Figure | null };
  /** Acceleration, lift and start as used, and whether they were fitted. */
  readonly motion: {
    readonly fitted: boolean;
    readonly runs: number;
    readonly residualS: number | null;
    readonly accelerationCmS2: number | null;
    readonly liftS: number | null;
    readonly startS: number | null;
    readonly travelCmS: number | null;
    readonly stopDegrees: number | null;
  };
  readonly totals: {
    readonly sheets: number;
    /** Passes on this machine that have a time. */
    readonly timed: readonly string[];
    readonly untimed: readonly string[];
    /** All sheets through one pass, then all through the next. */
    readonly passByPassS: number | null;
    /** Each sheet through all tools of a stretch of passes before the next sheet is laid. */
    readonly toolChangesPerSheetS: number | null;
  };
  readonly need: {
    readonly copiesPerSheet: number;
    readonly copies: number;
    readonly sheets: number;
    readonly spareSheets: number | null;
    readonly sheetWidthMm: number;
    readonly sheetHeightMm: number;
    readonly areaM2: number;
    readonly massKg: number | null;
  };
  readonly cautions: readonly Caution[];
  /** Figures that nobody entered, that nobody tried, that were found on another batch; in words. */
  readonly missing: readonly string[];
  readonly untested: readonly string[];
  readonly oldNews: readonly string[];
  readonly notes: readonly string[];
}

/** The number of a step of the run: that of the pass, and `b` behind it for its ties. */
export function stepNumber({ order, tiesOf }: Pick<RunPass, 'order' | 'tiesOf'>): string {
  return tiesOf === null ? `${order}` : `${order}b`;
}
