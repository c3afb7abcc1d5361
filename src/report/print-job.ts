// What came of a job, as text.

import type { Comparison, JobResult } from '../model/job.js';
import { sayCount } from '../model/say-count.js';
import { describeLayout } from './describe-layout.js';
import { describeJudges, sayWhere } from './draw-proof.js';
import { countFindings, printFindings } from './print-findings.js';
import { alignColumns } from './print-inspection.js';

/** Where the files of a job are, or would be. */
export interface JobPlace {
  readonly folder: string;
  readonly written: boolean;
}

const VERDICTS: Readonly<Record<JobResult['outcome'], string>> = {
  'in-register': 'in register',
  'answer-needed': 'nothing written: an answer is needed, see below',
  refused: 'nothing written: there are errors, listed below',
  'not-verified': 'not proved: nobody checked whether the files overlay',
};

function fileRows(job: JobResult): readonly (readonly string[])[] {
  return job.assignment.passes.map((pass, index) => {
    const file = job.files[index];
    const proof = job.proof.passes[index];
    return [
      `${pass.order} ${pass.name}`,
      file?.name ?? '',
      sayCount(proof?.shapes ?? 0, 'shape'),
      file === undefined ? '' : `${file.byteLength} bytes`,
    ];
  });
}

/** The reason for each pass: which rules or layers it comes from. */
function reasonRows(job: JobResult): readonly (readonly string[])[] {
  const counts = new Map<string, number>();
  for (const placement of job.assignment.placements) {
    const key = `${placement.pass}\n${placement.reason.text}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return [...counts]
    .map(([key, count]) => {
      const [pass, reason] = key.split('\n');
      return { pass: Number(pass), count, reason: reason! };
    })
    .sort((a, b) => a.pass - b.pass)
    .slice(0, 40)
    .map(({ pass, count, reason }) => [job.assignment.passes[pass]!.name, sayCount(count, 'shape'), reason]);
}

function sayMm(length: number): string {
  return `${length.toFixed(length < 100 ? 1 : 0)} mm`;
}

/** Lines are told once, also where copies of them stand on a sheet. */
function eachCopy(job: JobResult): string {
  return job.layout === null ? '' : ', in each copy';
}

/** What putting passes in order came to. */
function printSequence(job: JobResult): string {
  if (job.sequence.length === 0) return '';
  const rows = job.sequence.map((report) => [
    report.pass,
    `lines ${sayMm(report.lineMm)}`,
    `travel ${sayMm(report.travelBeforeMm)} before, ${sayMm(report.travelAfterMm)} now`,
    `lifts ${report.liftsBefore} before, ${report.liftsAfter} now`,
    `${sayCount(report.moved, 'element')} moved`,
    report.restarted === 0 ? '' : `${report.restarted} started elsewhere`,
  ]);
  return `\nOrder within the passes${eachCopy(job)}\n${alignColumns(rows)}`;
}

/** How a pattern had to give way, at the worst. */
function sayStretch(share: number): string {
  const percent = (Math.abs(share) * 100).toFixed(1);
  if (Number(percent) === 0) return 'pattern as asked';
  return `pattern ${share < 0 ? 'pressed together' : 'stretched'} by ${percent} %`;
}

/** What ties came to. */
function printTies(job: JobResult): string {
  if (job.ties.length === 0) return '';
  const rows = job.ties.map((report) => [
    report.pass,
    `${sayCount(report.ties, 'tie')} on ${report.tiedLines} of ${sayCount(report.lines, report.mode === 'hold' ? 'outline' : 'line')}`,
    `${sayMm(report.tiesMm)} of ${sayMm(report.lineMm)}`,
    `longest free stretch ${sayMm(report.longestFreeMm)}`,
    report.mode === 'hold' ? '' : sayStretch(report.stretch),
    report.tiesFile === null ? '' : `ties alone: ${report.tiesFile}`,
  ]);
  return `\nTies${eachCopy(job)}\n${alignColumns(rows)}`;
}

/** A job as text. */
export function printJob(job: JobResult, place: JobPlace): string {
  const heading = `${job.stem}: ${VERDICTS[job.outcome]}\n`;
  const findings = `\n${countFindings(job.findings)}\n${printFindings(job.findings, false)}`;
  if (job.files.length === 0) return heading + findings;
  const where = place.written ? `Files in ${place.folder}` : `Would be written to ${place.folder} (dry run)`;
  const proof = describeJudges(job.proof)
    .map((line) => `  ${line}\n`)
    .join('');
  const extents = job.proof.equalExtents
    ? '  All files draw the same extent.\n'
    : '  The files draw different extents.\n';
  return [
    heading,
    `\n${where}, in the order of the runs\n`,
    alignColumns(fileRows(job)),
    ...(job.layout === null ? [] : [`\nSheet\n  ${describeLayout(job.layout).join('\n  ')}\n`]),
    `\nWhy these passes\n`,
    alignColumns(reasonRows(job)),
    printSequence(job),
    printTies(job),
    `\nProof\n`,
    proof === '' ? '  Nobody looked.\n' : proof + extents,
    findings,
  ].join('');
}

/** A turn as `--turn` says it, 270 and not -90; a slant stays what it is. */
function sayTurn(degrees: number): number {
  return degrees < -45 ? degrees + 360 : degrees;
}

/** Each copy on sheets of copies: where its top left came to lie, and how near its shapes are to their places. */
function printCopies({ copies }: Comparison): string {
  if (copies === undefined) return '';
  const { from, list } = copies;
  const how = from === 'said' ? 'where the manifest puts them' : 'found by their outlines';
  const rows = list.map(({ matrixMm, shapes, greatestDeviationMm }, i) => {
    const [a, b, , , e, f] = matrixMm;
    const turn = sayTurn(Math.round((Math.atan2(b, a) * 18_000) / Math.PI) / 100 + 0);
    return [
      `  copy ${i + 1}`,
      `artboard's top left at ${e.toFixed(3)}, ${f.toFixed(3)} mm`,
      `turned ${turn} degrees`,
      sayCount(shapes, 'shape'),
      `greatest deviation ${greatestDeviationMm.toFixed(6)} mm`,
    ];
  });
  return `\n${list.length === 1 ? '1 copy' : `${list.length} copies`} of the source, ${how}\n${alignColumns(rows)}`;
}

/** A comparison of files as text. */
export function printComparison(comparison: Comparison): string {
  const rows = comparison.files.map((file) => [
    file.name,
    `${Number(file.widthMm.toFixed(4))} x ${Number(file.heightMm.toFixed(4))} mm${file.sizeIsSure ? '' : ' (not sure: px or no unit)'}`,
    sayCount(file.shapes, 'shape'),
    file.extentsMm === null
      ? 'draws nothing'
      : `draws ${file.extentsMm.width.toFixed(3)} x ${file.extentsMm.height.toFixed(3)} mm from ${file.extentsMm.x.toFixed(3)}, ${file.extentsMm.y.toFixed(3)}`,
    file.marks ? 'marks' : 'no marks',
  ]);
  const at = sayWhere(comparison.greatestDeviationMm, comparison.greatestDeviationAt);
  const { length } = comparison.matches;
  const matched = length === 0 ? '' : `${sayCount(length, 'shape')} found again in the source, `;
  return [
    comparison.inRegister ? 'in register\n\n' : 'NOT in register\n\n',
    alignColumns(rows),
    printCopies(comparison),
    `\n${matched}greatest deviation ${comparison.greatestDeviationMm.toFixed(6)} mm${at}\n`,
    `\n${countFindings(comparison.findings)}\n`,
    printFindings(comparison.findings, true),
  ].join('');
}
