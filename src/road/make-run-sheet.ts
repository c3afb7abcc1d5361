// The run sheet of a split job: pass files read again, figures of the shop, pages for people and machines.
import { outlineLength } from '../geometry/outline.js';
import type { Artwork, Shape } from '../model/artwork.js';
import type { JobResult, RoadOptions } from '../model/job.js';
import { isToolpath } from '../model/pass.js';
import { decodeUtf8 } from '../model/platform.js';
import type { ShopProfile } from '../model/profile.js';
import type { ExtentMm } from '../model/proof.js';
import type { RunSheet, SheetTurn } from '../model/run-sheet.js';
import { joinPieces, type OutputFile } from '../model/sheet.js';
import { invariant, PinbarError } from '../model/trouble.js';
import { shapeLength } from '../resolve/resolve.js';
import { shapeOutline } from '../resolve/shape-outline.js';
import type { RunLine } from '../run/measure-lines.js';
import { planRun } from '../run/plan-run.js';
import { printRunSheet } from '../run/print-run-sheet.js';
import { printXjdf } from '../run/print-xjdf.js';
import type { PassFacts, RunFacts } from '../run/run-facts.js';
import type { Source } from '../source/source.js';
import { nearestWord } from '../ticket/nearest-word.js';
import { finishText } from '../write/finish-files.js';
import { stemOf } from '../write/name-files.js';
import type { PassFile } from './correct-passes.js';
import { resolveSource, scanBytes } from './read-artwork.js';
import { type ManifestParts, readManifest } from './read-manifest.js';
import { turnPass } from './turn-pass.js';

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

/** A run sheet as data and as files: a page to print, a JSON document, an XJDF ticket, and mirrored files of passes on the reverse. */
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

/** The lines of a shape with their exact lengths: points come short of curves by a little, alike on all of a shape. */
function listLines(source: Source, artwork: Artwork, shape: Shape): readonly RunLine[] {
  const { mmPerPx } = artwork.artboard;
  const outlines = shapeOutline(source, artwork, shape);
  const rough = outlines.map(outlineLength);
  const sum = rough.reduce((all, length) => all + length, 0);
  if (!(sum > 0)) return [];
  const scale = (shapeLength(source, artwork, shape) * mmPerPx) / sum;
  return outlines.map((outline, i) => ({ outline, lengthMm: rough[i]! * scale }));
}

interface ReadPass {
  readonly artwork: Artwork;
  readonly lines: readonly RunLine[];
}

function readPass(file: PassFile, options: RoadOptions): ReadPass {
  const source = scanBytes(file.bytes, options);
  const artwork = resolveSource(source, options, null);
  const shapes = artwork.shapes.filter((shape) => shape.draws && !shape.hidden && shape.kind !== 'image');
  return { artwork, lines: shapes.flatMap((shape) => listLines(source, artwork, shape)) };
}

function describePass(pass: ManifestParts['passes'][number], manifest: ManifestParts, read: ReadPass): PassFacts {
  const asked = manifest.ticket?.passes?.find(({ name }) => name === pass.name);
  const { order, name, role, file, bytes, sha256 } = pass;
  const side = asked?.side ?? (role.startsWith('reverse-') ? 'reverse' : 'front');
  return {
    order,
    name,
    role,
    file: { name: file, bytes, sha256 },
    registersTo: asked?.registersTo ?? null,
    side,
    turn: side === 'reverse' ? findTurn(pass, manifest, read.artwork) : null,
    turnedFile: null,
    lines: isToolpath(role) ? read.lines : null,
    ties: findTies(pass, manifest),
  };
}

/** How the sheet is turned for a pass: as the pass says, else as the checks of the ticket do; null where nobody says. */
function findTurn({ name }: { readonly name: string }, { ticket }: ManifestParts, artwork: Artwork): SheetTurn | null {
  const asked = ticket?.passes?.find((pass) => pass.name === name);
  const said = ticket?.checks?.turnAxis ?? 'not-said';
  const way = asked?.turn ?? null;
  // The edge that the machine holds stays where it is when the sheet is turned, and changes places when it is tumbled.
  const gripper = ticket?.sheet?.gripperSide ?? ticket?.checks?.gripperSide ?? 'top';
  const upright = (gripper === 'top' || gripper === 'bottom') === (way === 'work-and-turn');
  const axis = way !== null ? (upright ? 'vertical' : 'horizontal') : said === 'not-said' ? null : said;
  if (axis === null) return null;
  const { width, height, mmPerPx } = artwork.artboard;
  const middle = roundMm(((axis === 'vertical' ? width : height) * mmPerPx) / 2);
  return { axis, axisMm: asked?.axisMm ?? middle, way };
}

/** Mirrored files of the passes on the reverse, each beside its pass. */
async function turnPasses(
  facts: RunFacts,
  files: readonly PassFile[],
  options: RoadOptions,
): Promise<{ readonly facts: RunFacts; readonly turned: readonly OutputFile[] }> {
  const turned: OutputFile[] = [];
  const passes: PassFacts[] = [];
  for (const pass of facts.passes) {
    const file = files.find(({ name }) => name === pass.file.name)!;
    const made = pass.turn === null ? null : await turnPass(file, pass.turn, options);
    if (made !== null) turned.push(made);
    passes.push(
      made === null
        ? pass
        : {
            ...pass,
            turnedFile: {
              name: made.name,
              bytes: made.byteLength,
              sha256: made.sha256,
              deviationMm: made.deviationMm,
            },
          },
    );
  }
  return { facts: { ...facts, passes }, turned };
}

/** Ties that the file of a pass holds already. */
function findTies(pass: ManifestParts['passes'][number], manifest: ManifestParts): PassFacts['ties'] {
  const found = manifest.ties?.find((report) => report.pass === pass.name);
  if (found === undefined) return null;
  const { ties, tiesMm, stretch, tiesFile, tiesBytes, tiesSha256 } = found;
  const copies = manifest.sheet?.copies ?? 1;
  const file =
    typeof tiesFile === 'string' && tiesBytes !== undefined && tiesSha256 !== undefined
      ? { name: tiesFile, bytes: tiesBytes, sha256: tiesSha256 }
      : null;
  return { ties: ties * copies, tieLengthMm: tiesMm * copies, stretch, file };
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

/** A size as the manifest says it: 240 mm are not 240.00000000000003. */
function roundMm(value: number): number {
  return Math.round(value * 1e6) / 1e6;
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
  const reads = manifest.passes.map((pass) => {
    const file = files.find(({ name }) => name === pass.file);
    invariant(file !== undefined, `the file of pass ${pass.name} was not handed over`);
    return readPass(file, options);
  });
  const { artboard } = reads[0]!.artwork;
  const widthMm = roundMm(artboard.width * artboard.mmPerPx);
  const heightMm = roundMm(artboard.height * artboard.mmPerPx);
  const { checks } = manifest.ticket ?? {};
  return {
    job: {
      name: stemOf(manifest.input.name),
      sha256: manifest.input.sha256,
      widthMm,
      heightMm,
      marks: manifest.marks ?? [],
    },
    mmPerPx: artboard.mmPerPx,
    passes: manifest.passes.map((pass, i) => describePass(pass, manifest, reads[i]!)),
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
 * @param files - Every pass file that the manifest names, the very bytes.
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
  const { facts, turned } = await turnPasses(gatherFacts(parts, files, request, options), files, options);
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
      ...turned,
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
  const files = job.files.map(({ name, pieces }) => ({ name, bytes: joinPieces(pieces) }));
  return makeRunSheet(manifest, files, request, options);
}
