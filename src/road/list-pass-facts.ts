// What the run sheet is told of each pass of a written job: its files read again, its ties as a step of their own.
import { outlineLength } from '../geometry/outline.js';
import type { Artwork, Shape } from '../model/artwork.js';
import type { RoadOptions } from '../model/job.js';
import { isToolpath, sideOf } from '../model/pass.js';
import type { RunPass } from '../model/run-sheet.js';
import { invariant } from '../model/trouble.js';
import { shapeLength } from '../resolve/resolve.js';
import { shapeOutline } from '../resolve/shape-outline.js';
import type { RunLine } from '../run/measure-lines.js';
import type { PassFacts } from '../run/run-facts.js';
import type { Source } from '../source/source.js';
import type { PassFile } from './correct-pass.js';
import type { SizeMm } from './measure-files.js';
import { resolveSource, scanBytes } from './read-artwork.js';
import type { ManifestParts, TurnedFile } from './read-manifest.js';
import { findTurn, roundMm } from './turn-passes.js';

type WrittenPass = ManifestParts['passes'][number];
type TieSection = NonNullable<ManifestParts['ties']>[number];

/** All passes as the run sheet is told of them, and the size of their files. */
export interface ListedPasses {
  readonly passes: readonly PassFacts[];
  readonly mmPerPx: number;
  readonly size: SizeMm;
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

function readFile(name: string, files: readonly PassFile[], options: RoadOptions): ReadPass {
  const file = files.find((one) => one.name === name);
  invariant(file !== undefined, `the file ${name} of the job was not handed over`);
  const source = scanBytes(file.bytes, options);
  const artwork = resolveSource(source, options, null);
  const shapes = artwork.shapes.filter((shape) => shape.draws && !shape.hidden && shape.kind !== 'image');
  return { artwork, lines: shapes.flatMap((shape) => listLines(source, artwork, shape)) };
}

function describeTurned(turned: TurnedFile | undefined): RunPass['turnedFile'] {
  if (turned === undefined) return null;
  const { file, bytes, sha256, deviationMm } = turned;
  return { name: file, bytes, sha256, deviationMm };
}

function describePass(pass: WrittenPass, lines: readonly RunLine[], manifest: ManifestParts, size: SizeMm): PassFacts {
  const asked = manifest.ticket?.passes?.find(({ name }) => name === pass.name);
  const { order, name, role, file, bytes, sha256, turned } = pass;
  return {
    order,
    name,
    tiesOf: null,
    role,
    file: { name: file, bytes, sha256 },
    registersTo: asked?.registersTo ?? null,
    side: sideOf(role, asked?.side),
    turn: findTurn(pass, manifest.ticket ?? {}, size),
    turnedFile: describeTurned(turned),
    lines: isToolpath(role) ? lines : null,
    ties: findTies(pass, manifest),
  };
}

function findTies(pass: WrittenPass, manifest: ManifestParts): PassFacts['ties'] {
  const found = manifest.ties?.find((report) => report.pass === pass.name);
  if (found === undefined) return null;
  const { ties, tiesMm, stretch } = found;
  const copies = manifest.sheet?.copies ?? 1;
  return { ties: ties * copies, tieLengthMm: tiesMm * copies, stretch, file: tieFileOf(found) };
}

function tieFileOf({ tiesFile, tiesBytes, tiesSha256 }: TieSection): RunPass['file'] | null {
  return typeof tiesFile === 'string' && tiesBytes !== undefined && tiesSha256 !== undefined
    ? { name: tiesFile, bytes: tiesBytes, sha256: tiesSha256 }
    : null;
}

/** The ties of a pass that stand in a file of their own, as a step behind it. */
function describeTies(pass: PassFacts, manifest: ManifestParts, lines: readonly RunLine[]): PassFacts {
  const own = manifest.ties!.find((report) => report.pass === pass.name)!;
  return {
    ...pass,
    name: `${pass.name} ties`,
    tiesOf: pass.name,
    file: pass.ties!.file!,
    turnedFile: describeTurned(own.tiesTurned),
    lines,
    ties: null,
  };
}

/**
 * What a run sheet is told of the passes of a job.
 *
 * @param files - Every pass file that the manifest names, and every file of ties.
 */
export function listPassFacts(manifest: ManifestParts, files: readonly PassFile[], options: RoadOptions): ListedPasses {
  const reads = manifest.passes.map(({ file }) => readFile(file, files, options));
  const { width, height, mmPerPx } = reads[0]!.artwork.artboard;
  const size = { widthMm: roundMm(width * mmPerPx), heightMm: roundMm(height * mmPerPx) };
  const passes = manifest.passes.flatMap((pass, i) => {
    const facts = describePass(pass, reads[i]!.lines, manifest, size);
    const tieFile = facts.ties?.file ?? null;
    return tieFile === null
      ? [facts]
      : [facts, describeTies(facts, manifest, readFile(tieFile.name, files, options).lines)];
  });
  return { passes, mmPerPx, size };
}
