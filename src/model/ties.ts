// Ties: what is asked for, and what came of it.
import { isToolpath, type Pass, type Role } from './pass.js';

/** Ties of one pass. Lengths in mm. */
export interface TieRequest {
  /** Name or role of the pass. */
  readonly pass: string;
  /** `pattern`: cut and tie by turns along whole lines; `hold`: few ties that hold each piece in the board. */
  readonly mode: 'pattern' | 'hold';
  /** Length of a cut stretch of the pattern. */
  readonly cutMm: number;
  readonly tieMm: number;
  /** What a line of the pattern starts and ends with. */
  readonly startsWith: 'cut' | 'tie';
  readonly endsWith: 'cut' | 'tie';
  /** Fewest ties that hold a piece, and the longest stretch that may be free between two. */
  readonly leastPerPiece: number;
  readonly freeMm: number;
  /** An outline no larger than this either way is that of a small hole, and has fewer ties. */
  readonly smallHoleMm: number;
  readonly smallHoleTies: number;
  /** Clear distance of ties from corners, along the line, and from the ends of creases. */
  readonly cornerClearMm: number;
  readonly creaseEndClearMm: number;
  /** Ties stand only where the line bends less than a circle of this radius. */
  readonly leastRadiusMm: number;
  /** Whether the ties are written as a pass of their own, for scoring them at lower pressure. */
  readonly tiesPass: boolean;
}

/** Numbers of a request that the ticket may leave out. */
export type TieDefaults = Omit<TieRequest, 'pass' | 'mode'>;

/** What the ties of a pass came to. Lengths in mm. */
export interface TieReport {
  readonly pass: string;
  readonly role: Role;
  readonly mode: TieRequest['mode'];
  readonly file: string;
  /** The pass of the ties alone; null where it was not asked for. */
  readonly tiesFile: string | null;
  /** Lines with ties, and lines that were looked at. */
  readonly tiedLines: number;
  readonly lines: number;
  readonly ties: number;
  /** Length of all lines, and of the ties among it; the rest is cut. */
  readonly lineMm: number;
  readonly tiesMm: number;
  /** The longest stretch between two ties, or between a tie and the end of a line. */
  readonly longestFreeMm: number;
  /** The greatest share by which the pattern was stretched (above 0) or pressed together (below 0). */
  readonly stretch: number;
  /** The middle of each tie on the artboard of the pass: x, y pairs, mm. */
  readonly placesMm: readonly number[];
}

/** The ties that a pass gets: those asked for under its name, else under its role; only where a tool runs along its lines. */
export function findTieRequest(requests: readonly TieRequest[], pass: Pass): TieRequest | undefined {
  if (!isToolpath(pass.role)) return undefined;
  return (
    requests.find((request) => request.pass === pass.name) ?? requests.find(({ pass: asked }) => asked === pass.role)
  );
}
