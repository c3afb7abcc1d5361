// The road: every stage once, in order.
import type { Matrix } from './geometry/matrix.js';
import { markSheets } from './mark/mark-sheets.js';
import { FINDING_KINDS, type Finding, SEVERITIES } from './model/finding.js';
import type { Inspection } from './model/inspection.js';
import type { CheckResult, Comparison, Fitness, JobResult, Outcome, RoadOptions } from './model/job.js';
import { sha256Hex } from './model/platform.js';
import type { Proof } from './model/proof.js';
import type { Ticket } from './model/ticket.js';
import { drawChecks } from './report/draw-checks.js';
import { groupFindings } from './report/group-findings.js';
import { checkJob } from './road/check-job.js';
import { enterStage } from './road/enter-stage.js';
import { finishPasses } from './road/finish-passes.js';
import { placeShapes } from './road/place-findings.js';
import { prepareJob } from './road/prepare-job.js';
import { proveFiles } from './road/prove-files.js';
import { scanBytes } from './road/read-artwork.js';
import { reportJob } from './road/report-job.js';
import { surveyArtwork } from './road/survey-artwork.js';
import { DEFAULT_TICKET } from './ticket/default-ticket.js';
import { relevelFindings } from './ticket/relevel.js';
import type { Original } from './verify/verify.js';
import { finishFiles, finishText } from './write/finish-files.js';
import { stemOf } from './write/name-files.js';

/** Options of `inspect`. */
export interface InspectOptions extends RoadOptions {
  /** User units to the inch for a root whose size is not sure. */
  readonly userUnitsPerInch?: number | null;
}

/**
 * What is in a layered SVG: size, layers, strokes, and the passes they suggest.
 *
 * @param bytes - The file, gzipped or not.
 * @throws PinbarError when the file cannot be read or breaks a limit; `code` says which.
 */
export async function inspect(bytes: Uint8Array, options: InspectOptions = {}): Promise<Inspection> {
  return (await surveyArtwork(bytes, options, options.userUnitsPerInch ?? null)).inspection;
}

function asks(item: Finding): boolean {
  return FINDING_KINDS[item.code].asks === true;
}

function decideOutcome(findings: readonly Finding[], proof: Proof): Outcome {
  const errors = findings.filter((item) => item.severity === 'error');
  if (errors.some((item) => !asks(item))) return 'refused';
  if (errors.length > 0) return 'answer-needed';
  return proof.inRegister ? 'in-register' : 'not-verified';
}

function decideFitness(findings: readonly Finding[]): Fitness {
  const outcome = decideOutcome(findings, NO_PROOF);
  if (outcome === 'refused') return 'unfit';
  return outcome === 'answer-needed' ? outcome : 'fit';
}

const NO_PROOF: Proof = { inRegister: false, judges: [], passes: [], equalExtents: false };

/**
 * Takes a layered SVG apart into one file per pass and proves that the files overlay.
 *
 * Touches no disk: the files come back in pieces, most of them views of `bytes`. Same bytes and ticket, same files.
 *
 * @param bytes - The file, gzipped or not.
 * @param ticket - Of `readTicket`; by layer names when left out.
 * @returns Files, manifest, proof and findings; no files where an answer is needed or an error stands in the way.
 * @throws PinbarError when the file cannot be read, breaks a limit, or the caller stops the run.
 */
export async function split(
  bytes: Uint8Array,
  ticket: Ticket = DEFAULT_TICKET,
  options: RoadOptions = {},
): Promise<JobResult> {
  const fileName = options.fileName ?? 'art.svg';
  const stem = stemOf(fileName);
  const inputHash = sha256Hex([bytes]);
  const prepared = await prepareJob(bytes, ticket, options);
  const { source, sanitised, artwork, assignment, marks, parts } = prepared;
  const skipped = options.skipChecks === true;
  const checked = await checkJob(prepared, ticket, options);
  const { solid, sheet } = checked;
  const layout = sheet?.layout ?? null;
  const before = [...prepared.findings, ...checked.findings];
  const job = { ticket, artwork, assignment, solid, layout, stem };
  if (before.some((item) => item.severity === 'error')) {
    const outcome = decideOutcome(before, NO_PROOF);
    const nothing = {
      files: [],
      sequence: [],
      ties: [],
      tieFiles: [],
      turnedFiles: [],
      manifest: null,
      proofPicture: null,
      proofPage: null,
    };
    return { ...job, ...nothing, outcome, proof: NO_PROOF, findings: before };
  }
  const sheets = markSheets(parts.sheets, marks.plan, { artwork, assignment, marks: ticket.marks, stem });
  await enterStage('write', options);
  const plain = await finishFiles(sheets, stem);
  const original: Original = {
    source,
    artwork,
    assignment,
    marginMm: ticket.marginMm,
    rootMayChange: source.namespaceMissing || Object.values(marks.rootSize).some((value) => value !== null),
    cleanedRows: sanitised.cleanedRows,
    removed: sanitised.removed,
  };
  const made = { sheets, files: plain, marked: marks.plan !== null };
  const passProof = await proveFiles(original, made, ticket, options);
  const finished = { files: plain, proof: passProof };
  const { proof, files, lines, ...more } = await finishPasses(finished, { original, sheet, stem }, ticket, options);
  const seen = proof.judges.flatMap((judge) => judge.findings);
  const findings = [...before, ...relevelFindings([...more.findings, ...seen], ticket.severities)];
  await enterStage('report', options);
  const reports = await reportJob({
    ...{ artwork, assignment, files, proof, solid, layout, findings, ticket, stem, ...lines },
    input: { name: fileName, bytes: bytes.length, sha256: await inputHash },
    marks: sheet?.marks ?? marks.plan,
    checks: { skipped, findings: checked.findings.length },
    wantsPage: options.proofPage === true,
  });
  return { ...job, ...reports, ...lines, outcome: decideOutcome(findings, proof), files, proof, findings };
}

/**
 * Whether artwork is fit to run: everything `split` would say before it makes files, and what the checks find.
 *
 * @param bytes - The file, gzipped or not.
 * @param ticket - Of `readTicket`; its `checks` hold the numbers.
 * @throws PinbarError when the file cannot be read, breaks a limit, or the caller stops the run.
 */
export async function check(
  bytes: Uint8Array,
  ticket: Ticket = DEFAULT_TICKET,
  options: RoadOptions = {},
): Promise<CheckResult> {
  const stem = stemOf(options.fileName ?? 'art.svg');
  const prepared = await prepareJob(bytes, ticket, options);
  const { source, artwork, assignment } = prepared;
  const { findings: checked, solid, sheet } = await checkJob(prepared, ticket, { ...options, skipChecks: false });
  const layout = sheet?.layout ?? null;
  const placed = placeShapes([...prepared.findings, ...checked], artwork);
  const findings = groupFindings(placed).flatMap(({ items }) => items.map((item) => item.finding));
  await enterStage('report', options);
  const counts = Object.fromEntries(
    SEVERITIES.map((severity) => [severity, findings.filter((item) => item.severity === severity).length]),
  ) as CheckResult['counts'];
  const outcome = decideFitness(findings);
  const text = drawChecks({ stem, artboard: artwork.artboard, art: source.text, findings, outcome });
  const picture = await finishText('checks.svg', 'image/svg+xml', text);
  return { outcome, ticket, artwork, assignment, findings, counts, solid, layout, picture, stem };
}

/** A file to be compared. */
export interface NamedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Options of `verify`. */
export interface VerifyOptions extends RoadOptions {
  /** Greatest distance that still counts as equal, mm. Default 0.001. */
  readonly toleranceMm?: number;
  /** How far the files are known to sit from the source, right and down, mm. */
  readonly shiftMm?: readonly [number, number];
  readonly userUnitsPerInch?: number | null;
  /**
   * From mm on the source to mm on the sheet, one for each copy that the files hold: those of `copiesOf` for a manifest. Left out: found
   * out, where the files are not the source once.
   */
  readonly copiesMm?: readonly Matrix[] | null;
}

/**
 * Compares any files with each other, and with a source where one is given, also files made by hand elsewhere.
 *
 * @throws PinbarError when a file cannot be read.
 */
export async function verify(
  files: readonly NamedFile[],
  source: NamedFile | null = null,
  options: VerifyOptions = {},
): Promise<Comparison> {
  await enterStage('read', options);
  const toText = (file: NamedFile): NamedFile => ({ name: file.name, bytes: scanBytes(file.bytes, options).text });
  const texts = files.map(toText);
  const original = source === null ? null : toText(source);
  await enterStage('witness', options);
  const { compareFiles } = await import('./witness/compare-files.js');
  const result = compareFiles(texts, original, {
    toleranceMm: options.toleranceMm ?? 0.001,
    shiftMm: options.shiftMm ?? [0, 0],
    userUnitsPerInch: options.userUnitsPerInch ?? null,
    copiesMm: options.copiesMm ?? null,
  });
  return { ...result, inRegister: result.findings.every((item) => item.severity !== 'error') };
}
