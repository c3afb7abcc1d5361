// The run sheet of a split job: pass files read again, figures of the shop, pages for people and machines.
import type { JobResult, RoadOptions } from '../model/job.js';
import { decodeUtf8 } from '../model/platform.js';
import type { ShopProfile } from '../model/profile.js';
import type { ExtentMm } from '../model/proof.js';
import type { RunSheet } from '../model/run-sheet.js';
import { joinPieces, type OutputFile } from '../model/sheet.js';
import { PinbarError } from '../model/trouble.js';
import { planRun } from '../run/plan-run.js';
import { printRunSheet } from '../run/print-run-sheet.js';
import { printXjdf } from '../run/print-xjdf.js';
import type { RunFacts } from '../run/run-facts.js';
import { nearestWord } from '../ticket/nearest-word.js';
import { finishText } from '../write/finish-files.js';
import { stemOf } from '../write/name-files.js';
import type { PassFile } from './correct-pass.js';
import { listPassFacts } from './list-pass-facts.js';
import { type ManifestParts, readManifest } from './read-manifest.js';
import { roundMm } from './turn-passes.js';

/** What a run sheet is asked for. */
export interface RunRequest {
  /** Of `readProfile`. */
  readonly profile: ShopProfile;
  /** Name of the machine; may be left out where the profile has one. */
  readonly machine?: string;
  readonly material?: string;
  /** How many sheets are run; 250 where left out. */
  readonly sheets?: number;
}

/** A run sheet as data and as files: a page to print, a JSON document, an XJDF ticket. */
export interface MadeRunSheet {
  readonly sheet: RunSheet;
  readonly files: readonly OutputFile[];
}

const USUAL_SHEETS = 250;

function choose<T extends { readonly name: string }>(items: readonly T[], name: string | undefined, what: string): T {
  const names = items.map((item) => item.name);
  const found = name === undefined && items.length === 1 ? items[0] : items.find((item) => item.name === name);
  if (found !== undefined) return found;
  const near = name === undefined ? null : nearestWord(name, names);
  throw new PinbarError('use/wrong', {
    message:
      name === undefined
        ? `The profile has ${names.length} of them: which ${what}?`
        : `The profile has no ${what} "${name}".`,
    remedy:
      near !== null ? `Did you mean "${near}"?` : `Say --${what}; the profile has: ${names.join(', ') || 'none'}.`,
  });
}

/** How far all passes together reach across and down, mm; null where the proof does not tell. */
function measureDrawn({ passes }: ManifestParts): RunFacts['drawnMm'] {
  const extents = passes.map(({ drawnExtentMm }) => drawnExtentMm ?? null);
  if (extents.length === 0 || extents.includes(null)) return null;
  const known = extents as readonly ExtentMm[];
  const [x0, y0] = [Math.min(...known.map(({ x }) => x)), Math.min(...known.map(({ y }) => y))];
  return {
    width: roundMm(Math.max(...known.map(({ x, width }) => x + width)) - x0),
    height: roundMm(Math.max(...known.map(({ y, height }) => y + height)) - y0),
  };
}

function gatherFacts(
  manifest: ManifestParts,
  files: readonly PassFile[],
  request: RunRequest,
  options: RoadOptions,
): RunFacts {
  const { profile } = request;
  const machine = choose(profile.machines, request.machine, 'machine');
  const material = choose(profile.materials, request.material, 'material');
  const { passes, mmPerPx, size } = listPassFacts(manifest, files, options);
  const { widthMm, heightMm } = size;
  const { checks } = manifest.ticket ?? {};
  return {
    job: {
      name: stemOf(manifest.input.name),
      sha256: manifest.input.sha256,
      widthMm,
      heightMm,
      marks: manifest.marks ?? [],
    },
    mmPerPx,
    passes,
    drawnMm: measureDrawn(manifest),
    sheetWidthMm: manifest.sheet?.widthMm ?? checks?.materialWidthMm ?? widthMm,
    sheetHeightMm: manifest.sheet?.heightMm ?? checks?.materialHeightMm ?? heightMm,
    copiesPerSheet: manifest.sheet?.copies ?? 1,
    profile,
    machine,
    material,
    sheets: request.sheets ?? USUAL_SHEETS,
  };
}

/**
 * Makes the run sheet of a split job.
 *
 * @param manifest - The job's manifest, parsed.
 * @param files - Every pass file that the manifest names, and every file of ties, the very bytes.
 * @throws PinbarError `use/wrong` where the manifest is none, or the profile has no such machine or material.
 */
export async function makeRunSheet(
  manifest: unknown,
  files: readonly PassFile[],
  request: RunRequest,
  options: RoadOptions = {},
): Promise<MadeRunSheet> {
  const parts = readManifest(manifest);
  if (parts === null || parts.passes.length === 0) {
    throw new PinbarError('use/wrong', {
      message: 'The manifest is not that of a split.',
      remedy: 'Hand over manifest.json of a folder that pinbar split wrote.',
    });
  }
  const facts = gatherFacts(parts, files, request, options);
  const sheet = planRun(facts);
  const html = printRunSheet(sheet, { passes: facts.passes, mmPerPx: facts.mmPerPx, files });
  const json = `${JSON.stringify({ pinbar: 1, document: 'run-sheet', ...sheet }, null, 2)}\n`;
  const xjdf = printXjdf(
    sheet,
    facts.passes.map(({ lines }) => lines),
    facts.mmPerPx,
  );
  return {
    sheet,
    files: [
      await finishText('run-sheet.html', 'text/html', html),
      await finishText('run-sheet.json', 'application/json', json),
      await finishText('run-sheet.xjdf', 'application/vnd.cip4-xjdf+xml', xjdf),
    ],
  };
}

/**
 * Makes the run sheet of a job that was just split.
 *
 * @param job - With files; a job without any has nothing to run.
 * @throws PinbarError as `makeRunSheet` does.
 */
export async function makeJobRunSheet(
  job: JobResult,
  request: RunRequest,
  options: RoadOptions = {},
): Promise<MadeRunSheet> {
  const manifest: unknown = job.manifest === null ? null : JSON.parse(decodeUtf8(joinPieces(job.manifest.pieces)));
  const files = [...job.files, ...job.tieFiles].map(({ name, pieces }) => ({ name, bytes: joinPieces(pieces) }));
  return makeRunSheet(manifest, files, request, options);
}
