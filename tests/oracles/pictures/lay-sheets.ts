// Splits drawings, has their sheets laid over each other, and counts what came of it.
import { type Finding, type JobResult, joinPieces, PinbarError, readTicket, split } from '../../../src/index.js';
import type { Renderer, RenderResult } from './ask-renderer.js';
import { type Drawing, readText } from './choose-files.js';

/** What came of one drawing. */
export interface Laid {
  readonly name: string;
  readonly passes: number;
  /** Codes about the order of painting that pinbar itself gives. */
  readonly told: readonly string[];
  readonly refused: string | null;
  readonly results: readonly RenderResult[];
}

/** 96 and 300 pixels to the inch. */
export const ZOOMS: readonly number[] = [1, 3.125];

async function trySplit({ name, bytes, ticket }: Drawing): Promise<JobResult | string> {
  try {
    const job = await split(bytes, readTicket(ticket), { fileName: name, skipChecks: true });
    const error = job.findings.find((item) => item.severity === 'error');
    return error === undefined ? job : error.code;
  } catch (error) {
    if (error instanceof PinbarError) return error.code;
    throw error;
  }
}

function isAboutOrder({ code }: Finding): boolean {
  return code.startsWith('order/');
}

/** Splits a drawing without marks and compares its sheets with it. */
export async function laySheets(drawing: Drawing, renderer: Renderer, mostPixels: number): Promise<Laid> {
  const job = await trySplit(drawing);
  const none = { name: drawing.name, passes: 0, told: [], results: [] };
  if (typeof job === 'string') return { ...none, refused: job };
  const told = [...new Set(job.findings.filter(isAboutOrder).map((item) => item.code))].sort();
  const sheets = job.files.map((file) => readText(joinPieces(file.pieces)));
  const laid = { ...none, passes: sheets.length, told };
  if (sheets.length === 0) return { ...laid, refused: 'draws nothing' };
  const answer = await renderer.ask({
    source: readText(drawing.bytes),
    sheets,
    zooms: ZOOMS,
    mostPixels,
    tolerance: 2,
  });
  if ('refused' in answer) return { ...laid, refused: `renderer: ${answer.refused}` };
  return { ...laid, refused: null, results: answer.results };
}
