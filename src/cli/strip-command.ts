// pinbar test-strip and register-target: drawings of pinbar's own, split like any other.
import { createHash } from 'node:crypto';
import {
  describeStrip,
  drawRegisterTarget,
  drawTestStrip,
  type JobResult,
  type OutputFile,
  type OwnDrawing,
  PinbarError,
  printStrip,
  type Role,
  readTicket,
  type SteppedSetting,
  split,
} from '../index.js';
import { isToolpath, namePass, ROLES } from '../model/pass.js';
import { printFindings } from '../report/print-findings.js';
import { printJob } from '../report/print-job.js';
import { nearestWord } from '../ticket/nearest-word.js';
import { writeJson, writeMessage, writeResult } from './console.js';
import { EXIT } from './exit-code.js';
import { checkFolder, publishFiles } from './publish-files.js';

interface SheetFlags {
  readonly sheet: readonly [number, number];
  readonly out?: string;
  readonly force?: boolean;
  readonly json?: boolean;
}

/** Options of `test-strip` as the command line gives them. */
export interface StripFlags extends SheetFlags {
  readonly tool: string;
  readonly setting: SteppedSetting;
  readonly from: number;
  readonly to: number;
  readonly steps: number;
}

/** Options of `register-target` as the command line gives them. */
export interface TargetFlags extends SheetFlags {
  readonly passes: string;
}

/** The role that a word of the trade names: the role itself, or its verb. */
function findRole(word: string): Role {
  const role = ROLES.find((each) => each === word || namePass(each) === word);
  if (role !== undefined && role !== 'ignore') return role;
  const tools = ROLES.filter(isToolpath).map(namePass);
  const near = nearestWord(word, [...ROLES.map(namePass), ...ROLES]);
  throw new PinbarError('use/wrong', {
    message: `"${word}" is no pass that pinbar knows.`,
    remedy:
      near !== null
        ? `Did you mean "${near}"?`
        : `Name a tool (${tools.join(', ')}) or what is put on the sheet (print, white, varnish).`,
  });
}

/** Parts a drawing of our own and writes the job; the checks are left out, since it is no carton. */
async function makeJob(
  drawing: OwnDrawing,
  names: { readonly stem: string; readonly folder: string },
  flags: SheetFlags,
  addFiles: (job: JobResult) => readonly OutputFile[],
  signal: AbortSignal,
): Promise<JobResult> {
  await checkFolder(names.folder, null, flags.force === true);
  const art = new TextEncoder().encode(drawing.svg);
  const ticket = readTicket(JSON.stringify(drawing.ticket));
  const job = await split(art, ticket, { fileName: `${names.stem}.svg`, skipChecks: true, signal });
  if (job.outcome !== 'in-register') {
    throw new PinbarError(
      'use/wrong',
      {
        message: `${names.stem} could not be made: ${printFindings(job.findings, false)}`,
        remedy: 'Take a larger sheet.',
      },
      job.findings,
    );
  }
  const reports = [job.proofPicture, job.manifest].filter((file) => file !== null);
  const files = [...job.files, ...addFiles(job), ...reports];
  await publishFiles(names.folder, files, { inputPath: null, force: flags.force === true });
  return job;
}

function writeRecord(name: string, value: unknown): OutputFile {
  const bytes = new TextEncoder().encode(`${JSON.stringify(value, null, 2)}\n`);
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  return { name, mediaType: 'application/json', pieces: [bytes], byteLength: bytes.length, sha256 };
}

/** Runs `test-strip`; returns the exit code. */
export async function runStrip(flags: StripFlags, signal: AbortSignal): Promise<number> {
  const { from, to, steps, setting } = flags;
  const role = findRole(flags.tool);
  const [widthMm, heightMm] = flags.sheet;
  const request = { role, setting, from, to, steps, widthMm, heightMm };
  const drawing = drawTestStrip(request);
  const stem = `${namePass(role)}-strip`;
  const folder = flags.out ?? stem;
  const describe = (job: JobResult) => ({
    pinbar: 1,
    document: 'test-strip',
    ...describeStrip(
      request,
      drawing.steps,
      job.files.map(({ name }) => name),
    ),
  });
  const job = await makeJob(
    drawing,
    { stem, folder },
    flags,
    (made) => [writeRecord('strip.json', describe(made))],
    signal,
  );
  const record = describe(job);
  if (flags.json) writeJson({ ...record, folder });
  else writeResult(`${printJob(job, { folder, written: true })}\n${printStrip(record)}`);
  return EXIT.inRegister;
}

/** Runs `register-target`; returns the exit code. */
export async function runTarget(flags: TargetFlags, signal: AbortSignal): Promise<number> {
  const [widthMm, heightMm] = flags.sheet;
  const names = flags.passes.split(',').map((name) => name.trim());
  const passes = names.map((name) => ({ name, role: findRole(name) }));
  const folder = flags.out ?? 'register-target';
  const drawing = drawRegisterTarget({ passes, widthMm, heightMm });
  const job = await makeJob(drawing, { stem: 'register-target', folder }, flags, () => [], signal);
  const drawn = job.assignment.passes.map(({ name }) => name);
  const left = names.filter((name) => !drawn.includes(name));
  if (left.length > 0)
    writeMessage(
      `No file for ${left.join(', ')}: only passes of tools are read against the print, and one print carries the figures.`,
    );
  if (flags.json) {
    const files = job.files.map(({ name }) => name);
    writeJson({ pinbar: 1, document: 'register-target', folder, passes: drawn, files });
  } else {
    const reading =
      'Run all passes, then read each scale: the line of the tool that meets its printed line says how far the pass is out.\n' +
      `Or measure the marks with a loupe and hand them to pinbar measure MARKS.csv --job ${folder}\n`;
    writeResult(`${printJob(job, { folder, written: true })}\n${reading}`);
  }
  return EXIT.inRegister;
}
