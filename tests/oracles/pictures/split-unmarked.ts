// Splits a drawing without marks.
import { type JobResult, joinPieces, PinbarError, readTicket, split } from '../../../src/index.js';
import { type Drawing, readText } from './picture-sets.js';

/** What came of a split. */
export type Unmarked =
  | { readonly refused: string }
  | {
      readonly job: JobResult;
      /** Texts of the sheets, in the order of the passes. */
      readonly sheets: readonly string[];
      /** Codes about the order of painting that pinbar gives. */
      readonly told: readonly string[];
    };

/** Splits a drawing without marks, checks and the second judge. */
export async function splitUnmarked({ name, bytes, ticket }: Drawing): Promise<Unmarked> {
  try {
    const job = await split(bytes, readTicket(ticket), { fileName: name, skipChecks: true });
    const error = job.findings.find((item) => item.severity === 'error');
    if (error !== undefined) return { refused: error.code };
    if (job.files.length === 0) return { refused: 'draws nothing' };
    const codes = job.findings.map((item) => item.code).filter((code) => code.startsWith('order/'));
    return {
      job,
      sheets: job.files.map((file) => readText(joinPieces(file.pieces))),
      told: [...new Set(codes)].sort(),
    };
  } catch (error) {
    if (error instanceof PinbarError) return { refused: error.code };
    throw error;
  }
}
