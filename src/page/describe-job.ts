// A finished job as the page shows it.
import { type Matrix, multiply } from '../geometry/matrix.js';
import type { Finding, Json } from '../model/finding.js';
import type { Inspection } from '../model/inspection.js';
import type { JobResult } from '../model/job.js';
import { sha256Hex } from '../model/platform.js';
import { countBytes, type OutputFile } from '../model/sheet.js';
import { describeFinding } from '../report/describe-finding.js';
import { groupFindings } from '../report/group-findings.js';
import { listJobFiles, type PackedFile, packTicket, printTicket, zipJob } from '../road/pack-job.js';
import { placeShapes } from '../road/place-findings.js';
import type { JobReport, MadeFile, NumberedPlace, Shares, SheetOfCopies } from './protocol.js';
import type { SortedShapes } from './sorted-shapes.js';

/** Places drawn for one finding. */
const MOST_SPOTS = 12;

/** Places of a finding in mm: its own first, then those it lists. */
function listSpots({ place, data }: Finding): readonly (readonly [number, number])[] {
  const listed = Array.isArray(data.places)
    ? (data.places as readonly { readonly xMm?: number; readonly yMm?: number }[])
    : [];
  return [place, ...listed]
    .flatMap(({ xMm, yMm }) => (xMm === undefined || yMm === undefined ? [] : [[xMm, yMm] as const]))
    .filter(([x, y], i, all) => all.findIndex((other) => other[0] === x && other[1] === y) === i)
    .slice(0, MOST_SPOTS);
}

function numberFindings(findings: readonly Finding[], artwork: JobResult['artwork']): readonly NumberedPlace[] {
  return groupFindings(placeShapes(findings, artwork)).flatMap(({ heading, items }) =>
    items.map(({ number, finding }) => ({
      number,
      heading,
      finding,
      details: describeFinding(finding),
      spots: listSpots(finding),
    })),
  );
}

function sortShapes({ artwork, assignment }: JobResult): {
  readonly sorted: SortedShapes;
  readonly reasons: readonly string[];
} {
  const count = artwork.shapes.length;
  const passes = new Int16Array(count).fill(-2);
  const fillPasses = new Int16Array(count).fill(-3);
  const reasons = new Int32Array(count).fill(-1);
  const texts = new Map<string, number>();
  for (const { shape, cause } of assignment.exclusions) passes[shape] = cause === 'open' ? -1 : -2;
  for (const { shape, pass, part, reason } of assignment.placements) {
    if (part === 'fill') fillPasses[shape] = pass;
    else passes[shape] = pass;
    if (!texts.has(reason.text)) texts.set(reason.text, texts.size);
    reasons[shape] = texts.get(reason.text)!;
  }
  return { sorted: { passes, fillPasses, reasons }, reasons: [...texts.keys()] };
}

function add(tally: Map<number, number>, pass: number): void {
  tally.set(pass, (tally.get(pass) ?? 0) + 1);
}

function listShares(tally: ReadonlyMap<number, number> | undefined): Shares {
  return [...(tally ?? [])].sort(([a], [b]) => a - b);
}

/** Where the shapes of each layer and stroke went. */
function shareOut(
  { artwork }: JobResult,
  sorted: SortedShapes,
): Pick<JobReport, 'layerShares' | 'strokeShares' | 'restShares'> {
  const layers = new Map<number, Map<number, number>>();
  const strokes = new Map<string, Map<number, number>>();
  const tallyOf = <K>(tallies: Map<K, Map<number, number>>, key: K): Map<number, number> => {
    const known = tallies.get(key) ?? new Map<number, number>();
    tallies.set(key, known);
    return known;
  };
  for (const shape of artwork.shapes) {
    if (!shape.draws) continue;
    const pass = sorted.passes[shape.index]!;
    const fill = sorted.fillPasses[shape.index]!;
    const taken = pass === -2 && fill >= 0 ? [fill] : fill >= 0 ? [pass, fill] : [pass];
    for (const one of taken) add(tallyOf(layers, shape.layer), one);
    if (shape.paint.stroke.kind === 'colour') add(tallyOf(strokes, shape.paint.stroke.colour.key), pass);
  }
  return {
    layerShares: artwork.layers.map(({ index }) => listShares(layers.get(index))),
    strokeShares: Object.fromEntries([...strokes].map(([key, tally]) => [key, listShares(tally)])),
    restShares: listShares(layers.get(-1)),
  };
}

function toBlob(pieces: readonly Uint8Array[], type: string): Blob {
  return new Blob(pieces as readonly Uint8Array<ArrayBuffer>[] as Uint8Array<ArrayBuffer>[], { type });
}

async function listFiles(job: JobResult, pages: readonly OutputFile[]): Promise<readonly MadeFile[]> {
  if (job.files.length === 0) return [];
  const made = listJobFiles(job, pages).map((file, index) => ({
    name: file.name,
    byteLength: file.byteLength,
    sha256: file.sha256,
    blob: toBlob(file.pieces, file.mediaType),
    pass: index < job.files.length ? index : -1,
  }));
  const ticket = packTicket(job.ticket, job.stem);
  return [
    ...made,
    {
      name: ticket.name,
      byteLength: countBytes(ticket.pieces),
      sha256: await sha256Hex(ticket.pieces),
      blob: toBlob(ticket.pieces, 'application/json'),
      pass: -1,
    },
  ];
}

function describeSheet({ layout, ticket }: JobResult): SheetOfCopies | null {
  if (layout === null) return null;
  const { widthMm, heightMm, matricesMm, yieldShare } = layout;
  const shift: Matrix = [1, 0, 0, 1, ticket.marginMm, ticket.marginMm];
  return { widthMm, heightMm, copies: matricesMm.map((matrix) => multiply(matrix, shift)), yieldShare };
}

/** What the page shows of a job; everything in it can be handed to another thread. */
export async function describeJob(
  job: JobResult,
  survey: Inspection,
  along: { readonly pages: readonly OutputFile[]; readonly profile: PackedFile | null },
): Promise<JobReport> {
  const { sorted, reasons } = sortShapes(job);
  const { assignment, proof } = job;
  const counts = assignment.passes.map(() => 0);
  for (const { pass } of assignment.placements) counts[pass]! += 1;
  const all = [
    ...survey.findings.filter(({ code }) => job.findings.every((item) => item.code !== code)),
    ...job.findings,
  ];
  return {
    outcome: job.outcome,
    stem: job.stem,
    ticket: JSON.parse(printTicket(job.ticket)) as Json,
    passes: assignment.passes,
    shapesPerPass: counts,
    sorted,
    reasons,
    ...shareOut(job, sorted),
    findings: numberFindings(all, job.artwork),
    proof,
    sequence: job.sequence,
    ties: job.ties,
    files: await listFiles(job, along.pages),
    zip:
      job.files.length === 0
        ? null
        : toBlob(zipJob(job, along.pages, along.profile === null ? [] : [along.profile]), 'application/zip'),
    marginMm: job.ticket.marginMm,
    sheet: describeSheet(job),
  };
}
