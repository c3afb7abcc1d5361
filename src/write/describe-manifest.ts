// The manifest: what was made of what, by which ticket, and what was found.
import type { Artwork } from '../model/artwork.js';
import type { Finding, Json } from '../model/finding.js';
import type { Layout } from '../model/layout.js';
import { type MarkPlan, nameMarks } from '../model/marks.js';
import type { Assignment, Reason } from '../model/pass.js';
import type { Proof } from '../model/proof.js';
import type { TurnedPass } from '../model/run-sheet.js';
import type { SequenceReport } from '../model/sequence.js';
import type { OutputFile } from '../model/sheet.js';
import type { Solid } from '../model/solid.js';
import type { TieReport } from '../model/ties.js';
import { PINBAR_VERSION } from '../model/version.js';

/** All that a manifest tells. */
export interface ManifestFacts {
  readonly input: { readonly name: string; readonly bytes: number; readonly sha256: string };
  readonly ticket: Json;
  readonly artwork: Artwork;
  readonly assignment: Assignment;
  readonly files: readonly OutputFile[];
  readonly proof: Proof;
  readonly solid: Solid | null;
  /** Copies on a sheet; null where there are none. */
  readonly layout: Layout | null;
  /** Null where the sheets carry no marks. */
  readonly marks: MarkPlan | null;
  readonly findings: readonly Finding[];
  /** Passes that were put in order. */
  readonly sequence: readonly SequenceReport[];
  /** Passes that got ties, and the passes of the ties alone. */
  readonly ties: readonly TieReport[];
  readonly tieFiles: readonly OutputFile[];
  /** Mirrored files of passes on the reverse and of their ties. */
  readonly turnedFiles: readonly TurnedPass[];
  /** Whether the checks were left out, and how much they found. */
  readonly checks: { readonly skipped: boolean; readonly findings: number };
}

/** A stretch of shapes in paint order that share pass, part and reason. */
interface Run {
  readonly from: number;
  to: number;
  readonly pass: string;
  readonly part: string;
  readonly reason: number;
  readonly ids: string[];
}

/** Placements as runs, so that 100,000 shapes do not make 100,000 lines. */
function listRuns(
  artwork: Artwork,
  assignment: Assignment,
): { readonly runs: readonly Run[]; readonly reasons: readonly Reason[] } {
  const reasons: Reason[] = [];
  const numbers = new Map<Reason, number>();
  const open = new Map<string, Run>();
  const runs: Run[] = [];
  for (const placement of assignment.placements) {
    let reason = numbers.get(placement.reason);
    if (reason === undefined) {
      reason = reasons.length;
      numbers.set(placement.reason, reason);
      reasons.push(placement.reason);
    }
    const key = `${placement.pass} ${placement.part} ${reason}`;
    let run = open.get(key);
    if (run === undefined || run.to !== placement.shape - 1) {
      const pass = assignment.passes[placement.pass]!.name;
      run = { from: placement.shape, to: placement.shape, pass, part: placement.part, reason, ids: [] };
      open.set(key, run);
      runs.push(run);
    }
    run.to = placement.shape;
    const { id } = artwork.shapes[placement.shape]!;
    if (id !== '') run.ids.push(id);
  }
  return { runs, reasons };
}

/** Indices as `[first, last]` stretches. */
function listStretches(indices: readonly number[]): readonly (readonly [number, number])[] {
  const stretches: [number, number][] = [];
  for (const index of indices) {
    const last = stretches.at(-1);
    if (last !== undefined && last[1] === index - 1) last[1] = index;
    else stretches.push([index, index]);
  }
  return stretches;
}

function listExclusions(assignment: Assignment): { readonly [cause: string]: Json } {
  const causes = [...new Set(assignment.exclusions.map((exclusion) => exclusion.cause))].sort();
  return Object.fromEntries(
    causes.map((cause) => [
      cause,
      listStretches(assignment.exclusions.filter((exclusion) => exclusion.cause === cause).map(({ shape }) => shape)),
    ]),
  );
}

/** Panels that a manifest lists at most. */
const MOST_PANELS = 1000;

/** The blank without its outlines, which are in the drawing. */
function describeBlank(solid: Solid | null): Json {
  if (solid === null) return null;
  const { extentMm, areaMm2, wasteShare, loosePieces, blanks, panels } = solid;
  return {
    blanks: blanks.length,
    panelCount: panels.length,
    loosePieces,
    extentMm,
    areaMm2,
    wasteShare,
    panels: panels.slice(0, MOST_PANELS).map(({ outlineMm: _, hinge, ...panel }) => ({
      ...panel,
      hinge: hinge === null ? null : { kind: hinge.kind, lengthMm: hinge.lengthMm },
    })),
  };
}

function describeSequence(report: SequenceReport): Json {
  const { lineMm, travelBeforeMm, travelAfterMm, stayed, ...rest } = report;
  return {
    ...rest,
    lineMm: round(lineMm),
    travelBeforeMm: round(travelBeforeMm),
    travelAfterMm: round(travelAfterMm),
    stayed: stayed.map((item) => ({ ...item })),
  };
}

/** The sheet: one list of matrices, from mm on the artboard of a pass to mm on the sheet, and how full it is. */
function describeLayout(layout: Layout): Json {
  const { widthMm, heightMm, method, columns, rows, copies, scale, yieldShare, rectangle } = layout;
  return {
    widthMm,
    heightMm,
    method,
    columns,
    rows,
    copies,
    scale,
    sheetAreaMm2: round(layout.sheetAreaMm2),
    blankAreaMm2: round(layout.blankAreaMm2),
    yieldShare: round(yieldShare),
    rectangle: { copies: rectangle.copies, yieldShare: round(rectangle.yieldShare) },
    matrices: layout.matricesMm.map((matrix) => [...matrix]),
  };
}

/** The mirrored file of a file, where there is one. */
function describeTurned(
  name: string,
  turnedFiles: readonly TurnedPass[],
  key: string,
): { readonly [key: string]: Json } {
  const made = turnedFiles.find(({ of }) => of === name);
  if (made === undefined) return {};
  const { axis, axisMm, way } = made.turn;
  const { name: file, byteLength: bytes, sha256, deviationMm } = made;
  return { [key]: { file, bytes, sha256, axis, axisMm: round(axisMm), way, deviationMm } };
}

function describeTies(report: TieReport, { tieFiles, turnedFiles }: ManifestFacts): Json {
  const { lineMm, tiesMm, longestFreeMm, stretch, placesMm: _, ...rest } = report;
  const own = tieFiles.find(({ name }) => name === report.tiesFile);
  return {
    ...rest,
    ...(own === undefined
      ? {}
      : {
          tiesBytes: own.byteLength,
          tiesSha256: own.sha256,
          ...describeTurned(own.name, turnedFiles, 'tiesTurned'),
        }),
    lineMm: round(lineMm),
    tiesMm: round(tiesMm),
    longestFreeMm: round(longestFreeMm),
    stretch: round(stretch),
  };
}

function round(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0;
}

/**
 * The manifest as plain data, schema version 1.
 *
 * `shapes` lists stretches `from`..`to` of shapes in paint order (counted from 0) with pass, part and the number of
 * the reason in `reasons`, and the ids among them.
 */
export function describeManifest(facts: ManifestFacts): Json {
  const { artwork, assignment, files, proof } = facts;
  const { artboard } = artwork;
  const { runs, reasons } = listRuns(artwork, assignment);
  return {
    pinbar: 1,
    document: 'manifest',
    tool: { name: 'pinbar', version: PINBAR_VERSION },
    input: facts.input,
    artboard: {
      widthMm: round(artboard.width * artboard.mmPerPx),
      heightMm: round(artboard.height * artboard.mmPerPx),
      viewBox: artboard.viewBox,
      sizeIsSure: artboard.sizeIsSure,
    },
    passes: assignment.passes.map((pass, index) => ({
      order: pass.order,
      name: pass.name,
      role: pass.role,
      file: files[index]!.name,
      bytes: files[index]!.byteLength,
      sha256: files[index]!.sha256,
      shapes: proof.passes[index]?.shapes ?? 0,
      artExtentMm: (proof.passes[index]?.artExtentMm ?? null) as Json,
      drawnExtentMm: (proof.passes[index]?.drawnExtentMm ?? null) as Json,
      ...describeTurned(files[index]!.name, facts.turnedFiles, 'turned'),
    })),
    marks: (facts.marks === null ? [] : nameMarks(facts.marks)).map(({ name, shape, atMm }) => ({
      name,
      shape,
      xMm: round(atMm[0]),
      yMm: round(atMm[1]),
    })),
    ...(facts.layout === null ? {} : { sheet: describeLayout(facts.layout) }),
    reasons: reasons.map(({ rule, text }) => ({ rule: rule < 0 ? null : rule, text })),
    shapes: runs.map((run) => ({ ...run })),
    leftOut: listExclusions(assignment),
    proof: {
      inRegister: proof.inRegister,
      equalExtents: proof.equalExtents,
      judges: proof.judges.map(({ findings, ...rest }) => ({ ...rest, findings: findings.length })),
    },
    checks: facts.checks,
    solid: describeBlank(facts.solid),
    ...(facts.sequence.length === 0 ? {} : { sequence: facts.sequence.map(describeSequence) }),
    ...(facts.ties.length === 0 ? {} : { ties: facts.ties.map((report) => describeTies(report, facts)) }),
    findings: facts.findings.map((item) => ({ ...item, place: { ...item.place } })),
    ticket: facts.ticket,
  };
}

/** A manifest as text: two blanks of indent down to the lists, one line per shape stretch and finding. */
export function printManifest(manifest: Json): string {
  return `${printValue(manifest, 0)}\n`;
}

/** Longest list or object that stands on one line where it may be broken up. */
const ONE_LINE = 100;

/** Each value is spelled once: a list of 100,000 ids spelled anew on every level would cost more than the rest. */
function printValue(value: Json, depth: number): string {
  if (value === null || typeof value !== 'object' || depth > 2) return JSON.stringify(value);
  const pad = '  '.repeat(depth + 1);
  const close = '  '.repeat(depth);
  const isList = Array.isArray(value);
  const parts = isList
    ? value.map((item: Json) => printValue(item, depth + 1))
    : Object.entries(value).map(([key, item]) => `${JSON.stringify(key)}: ${printValue(item as Json, depth + 1)}`);
  const length = parts.reduce((sum, part) => sum + part.length, 2 + Math.max(0, parts.length - 1));
  // A part that is broken up is longer than its own line; what comes close is spelled to be sure.
  if (length < 2 * ONE_LINE) {
    const flat = JSON.stringify(value);
    if (flat.length < ONE_LINE) return flat;
  }
  const [first, last] = isList ? ['[', ']'] : ['{', '}'];
  return `${first}\n${parts.map((part) => pad + part).join(',\n')}\n${close}${last}`;
}
