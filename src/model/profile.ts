// What a shop has: machines, materials, and the figures somebody found for them.
import type { Role } from './pass.js';
import type { Corner } from './sequence.js';

/** Where a figure came from: read off a test strip, typed in, or fitted to timed runs. */
export type FigureSource = 'strip' | 'typed' | 'fitted';

/** A figure somebody entered, and how it got there. */
export interface Entered<T = number> {
  readonly value: T;
  readonly from: FigureSource;
  /** Day, YYYY-MM-DD. */
  readonly on: string;
  readonly by: string;
  /** Batch of the material it was found on. */
  readonly batch?: string;
  readonly state?: 'tested' | 'untested starting point';
}

/** What a tool can do to the one who handles it. */
export type Hazard = 'blade' | 'ultraviolet' | 'hot';

/** A tool of a machine. */
export interface ProfileTool {
  readonly name: string;
  /** What it can do, in roles of passes. */
  readonly roles: readonly Role[];
  readonly hazards?: readonly Hazard[];
  /** What to look to when it is mounted or taken off. */
  readonly mount?: string;
  readonly takeOff?: string;
}

/** How far off things come out on a machine, mm, one standard deviation each. */
export interface RegisterFigures {
  /** Sheet laid against edge or pins. */
  readonly layMm?: Entered;
  /** Printed marks as the machine reads them. */
  readonly marksMm?: Entered;
  /** Head coming back to a place. */
  readonly headMm?: Entered;
}

/** How long things take on a machine. */
export interface MachineTimes {
  readonly loadS?: Entered;
  readonly marksS?: Entered;
  readonly toolChangeS?: Entered;
  /** From start to the first line, and from the last line to rest. */
  readonly startS?: Entered;
  /** Raising and lowering the tool once. */
  readonly liftS?: Entered;
  readonly travelCmS?: Entered;
  readonly accelerationCmS2?: Entered;
  /** A turn sharper than this brings the tool to a stop. */
  readonly stopDegrees?: Entered;
}

/** Stretches of like length. */
export interface LikeStretches {
  readonly lengthMm: number;
  readonly count: number;
}

/** What a pass asks of a machine, as the run sheet says it, and how long it took. */
export interface TimedRun {
  readonly name: string;
  readonly on: string;
  readonly by: string;
  readonly speedCmS: number;
  readonly lifts: number;
  readonly stretches: readonly LikeStretches[];
  readonly travels: readonly LikeStretches[];
  /** From start to rest, loading and mark reading left out. */
  readonly seconds: number;
}

/** A machine. A figure nobody entered is left out. */
export interface Machine {
  readonly name: string;
  readonly widthMm?: Entered;
  readonly heightMm?: Entered;
  readonly margins?: {
    readonly topMm?: Entered;
    readonly rightMm?: Entered;
    readonly bottomMm?: Entered;
    readonly leftMm?: Entered;
  };
  readonly origin?: Entered<Corner>;
  readonly tools: readonly ProfileTool[];
  readonly register?: RegisterFigures;
  readonly times?: MachineTimes;
  readonly timedRuns?: readonly TimedRun[];
}

/** Settings of a tool on a material. */
export interface ToolSettings {
  readonly tool: string;
  /** Where two machines have a tool of that name. */
  readonly machine?: string;
  readonly speedCmS?: Entered;
  readonly pressureGf?: Entered;
  /** How often the tool runs over the same line. */
  readonly strokes?: Entered;
  readonly offsetMm?: Entered;
  /** Length of the stretches between ties. */
  readonly cutMm?: Entered;
  readonly tieMm?: Entered;
  /** Left out: the tool is lifted over the ties. */
  readonly tiePressureGf?: Entered;
  /** For tools that cover areas. */
  readonly secondsPerSheet?: Entered;
}

/** A material. */
export interface Material {
  readonly name: string;
  /** What lies at the machine now; figures found on another batch are old news. */
  readonly batch?: string;
  readonly caliperMm?: Entered;
  readonly grammageGsm?: Entered;
  readonly grain?: Entered<'along-width' | 'along-height'>;
  /** Sheets that setting up one pass takes. */
  readonly spareSheets?: Entered;
  readonly settings: readonly ToolSettings[];
}

/** What a pass finds the sheet by. */
export type RegisterMeans = 'pins' | 'edge' | 'printed-marks';

/** An order of passes that a shop runs, and why. */
export interface ShopOrder {
  readonly name: string;
  readonly reason: string;
  readonly passes: readonly {
    readonly role: Role;
    readonly registersTo?: RegisterMeans;
    readonly reason?: string;
  }[];
}

/** A shop profile. */
export interface ShopProfile {
  readonly shop: string;
  readonly machines: readonly Machine[];
  readonly materials: readonly Material[];
  readonly orders: readonly ShopOrder[];
}
