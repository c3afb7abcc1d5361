// What a run sheet is made from: a split job, a shop profile, and how many sheets of what on which machine.
import type { Role } from '../model/pass.js';
import type { Machine, Material, ShopProfile } from '../model/profile.js';
import type { RunPass, RunSheet, SheetTurn } from '../model/run-sheet.js';
import type { RunLine } from './measure-lines.js';

/** Ties that are in a pass file already, as the manifest tells. */
export interface WrittenTies {
  readonly ties: number;
  readonly tieLengthMm: number;
  /** Greatest change of the pattern, as a share. */
  readonly stretch: number;
  /** The file that holds the ties alone; null where they are only left standing. */
  readonly file: RunPass['file'] | null;
}

/** A pass of the job, or the ties of one behind it. */
export interface PassFacts {
  readonly order: number;
  readonly name: string;
  /** Name of the pass that these are the ties of, in a file of their own; null for a pass. */
  readonly tiesOf: string | null;
  readonly role: Role;
  readonly file: { readonly name: string; readonly bytes: number; readonly sha256: string };
  /** What the ticket says. */
  readonly registersTo: string | null;
  readonly side: 'front' | 'reverse';
  /** How the sheet lies turned for a pass on the reverse; null on the front, or where nobody said. */
  readonly turn: SheetTurn | null;
  /** The mirrored file of such a pass. */
  readonly turnedFile: RunPass['turnedFile'];
  /** Null for passes that cover areas. */
  readonly lines: readonly RunLine[] | null;
  /** Null where the file holds none. */
  readonly ties: WrittenTies | null;
}

/** All of it. */
export interface RunFacts {
  readonly job: RunSheet['job'];
  readonly mmPerPx: number;
  readonly passes: readonly PassFacts[];
  /** How far all passes together reach across and down, mm. */
  readonly drawnMm: { readonly width: number; readonly height: number } | null;
  /** The sheet of the material, mm. */
  readonly sheetWidthMm: number;
  readonly sheetHeightMm: number;
  readonly copiesPerSheet: number;
  readonly profile: ShopProfile;
  readonly machine: Machine;
  readonly material: Material;
  readonly sheets: number;
}
