// Passes of a job moved to where the marks were measured.
import type { CorrectedPass, RegisterFit } from './register.js';
import type { TurnedPass } from './run-sheet.js';
import type { OutputFile } from './sheet.js';

/** Passes moved by one and the same fit. */
export interface Correction {
  readonly fit: RegisterFit;
  readonly files: readonly CorrectedPass[];
  /** Those of them that lie on the reverse, mirrored for the machine. */
  readonly turnedFiles: readonly TurnedPass[];
  /** The record: fit, readings, files with their hashes, findings. */
  readonly manifest: OutputFile;
}
