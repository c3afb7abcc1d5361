// The worker that does the job: reads, checks, splits and proves, by the same road as the command line.
import type { Finding } from '../model/finding.js';
import type { Inspection } from '../model/inspection.js';
import type { RoadOptions } from '../model/job.js';
import { decodeText } from '../model/platform.js';
import { PinbarError } from '../model/trouble.js';
import { split } from '../pipeline.js';
import { listOutlines, type Outlines } from '../road/list-outlines.js';
import { makeJobRunSheet, type RunRequest } from '../road/make-run-sheet.js';
import { surveyArtwork } from '../road/survey-artwork.js';
import { readProfile } from '../ticket/read-profile.js';
import { readTicket } from '../ticket/read-ticket.js';
import { describeJob } from './describe-job.js';
import { cutExcerpt, type ExcerptLine } from './excerpt.js';
import { findBesideIn } from './find-beside.js';
import type { Along, JobNews, JobOrder, JobReport, ReadProfile, SideFile } from './protocol.js';

/** The worker's own end, as far as it is used. */
interface WorkerEnd {
  onmessage: ((event: MessageEvent<JobOrder>) => void) | null;
  postMessage(news: JobNews, transfer?: readonly Transferable[]): void;
}

/** The drawing that is open. */
interface OpenDrawing {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly beside: readonly SideFile[];
  readonly inspection: Inspection;
}

const UNFORESEEN = 'This is a fault of pinbar; please report it with the line below.';
/** A longer text is not searched for the faulty line, bytes. */
const LONGEST_EXCERPT_BYTES = 64 * 1024 * 1024;

function listTransfers(outlines: Outlines): readonly Transferable[] {
  return Object.values(outlines).flatMap((column) =>
    ArrayBuffer.isView(column) ? [column.buffer as ArrayBuffer] : [],
  );
}

/** Lines of the file around the place that the last finding names. */
function excerptFor(bytes: Uint8Array | null, findings: readonly Finding[]): readonly ExcerptLine[] {
  const place = findings.at(-1)?.place;
  if (bytes === null || place?.line === undefined || bytes.length > LONGEST_EXCERPT_BYTES) return [];
  return cutExcerpt(decodeText(bytes), place.line, place.column ?? 1);
}

function listFaults(error: unknown): readonly Finding[] {
  if (error instanceof PinbarError) return error.findings;
  const message = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  return [{ code: 'cancelled', severity: 'error', message: UNFORESEEN, remedy: message, place: {}, data: {} }];
}

/** An order that a newer one has made needless is stopped between two stages. */
interface Turn {
  readonly run: number;
  aborted: boolean;
}

function optionsFor(turn: Turn, { name, beside }: Pick<OpenDrawing, 'name' | 'beside'>, end: WorkerEnd): RoadOptions {
  const { run } = turn;
  const find = findBesideIn(beside);
  return {
    fileName: name,
    signal: turn,
    onProgress: (stage) => end.postMessage({ kind: 'stage', run, stage }),
    loadPicture: async (address) => {
      const file = find(address);
      return file === undefined ? null : new Uint8Array(await file.blob.arrayBuffer());
    },
  };
}

async function openDrawing(
  order: JobOrder & { readonly kind: 'open' },
  bytes: Uint8Array,
  { turn, end }: { readonly turn: Turn; readonly end: WorkerEnd },
): Promise<OpenDrawing> {
  const { run, name, beside, userUnitsPerInch } = order;
  const { source, artwork, inspection } = await surveyArtwork(
    bytes,
    optionsFor(turn, { name, beside }, end),
    userUnitsPerInch,
  );
  const outlines = listOutlines(source, artwork);
  const ids = artwork.shapes.map(({ kind, id }) => (id === '' ? kind : `${kind} ${id}`));
  end.postMessage({ kind: 'opened', run, inspection, outlines, ids }, listTransfers(outlines));
  return { name, bytes, beside, inspection };
}

function nameProfile(name: string, text: string): ReadProfile {
  const { machines, materials } = readProfile(text);
  return { name, text, machines: machines.map((one) => one.name), materials: materials.map((one) => one.name) };
}

/** What the command line is asked for by `--profile` and its company. */
function requestRun({ profile, machine, material, sheets }: Along): RunRequest | null {
  if (profile === null) return null;
  return { profile: readProfile(profile.text), machine, sheets, ...(material === '' ? {} : { material }) };
}

async function runJob(
  { ticket, along }: JobOrder & { readonly kind: 'split' },
  drawing: OpenDrawing,
  { turn, end }: { readonly turn: Turn; readonly end: WorkerEnd },
): Promise<JobReport> {
  const options = { ...optionsFor(turn, drawing, end), proofPage: along.proofPage };
  const job = await split(drawing.bytes, readTicket(ticket), options);
  const request = requestRun(along);
  const pages = request === null || job.manifest === null ? [] : (await makeJobRunSheet(job, request)).files;
  const { profile } = along;
  const packed = profile === null ? null : { name: profile.name, pieces: [new TextEncoder().encode(profile.text)] };
  return describeJob(job, drawing.inspection, { pages, profile: packed });
}

/** Takes orders one after the other. */
function serve(end: WorkerEnd): void {
  let drawing: OpenDrawing | null = null;
  let bytes: Uint8Array | null = null;
  let turn: Turn = { run: 0, aborted: false };
  let before: Promise<void> = Promise.resolve();
  const obey = async (order: JobOrder, own: Turn): Promise<void> => {
    const { run } = order;
    try {
      if (order.kind === 'ticket') {
        end.postMessage({ kind: 'ticket', run, ticket: readTicket(order.text) });
      } else if (order.kind === 'profile') {
        end.postMessage({ kind: 'profile', run, profile: nameProfile(order.name, order.text) });
      } else if (order.kind === 'open') {
        drawing = null;
        bytes = new Uint8Array(await order.blob.arrayBuffer());
        drawing = await openDrawing(order, bytes, { turn: own, end });
      } else if (drawing !== null) {
        end.postMessage({ kind: 'done', run, report: await runJob(order, drawing, { turn: own, end }) });
      }
    } catch (error) {
      const findings = listFaults(error);
      // The lines of what was read: the drawing, or what was to be loaded along.
      const text = 'text' in order ? new TextEncoder().encode(order.text) : bytes;
      end.postMessage({ kind: 'failed', run, of: order.kind, findings, excerpt: excerptFor(text, findings) });
    }
  };
  end.onmessage = ({ data }) => {
    turn.aborted = true;
    const own: Turn = { run: data.run, aborted: false };
    turn = own;
    before = before.then(() => obey(data, own));
  };
}

serve(self as unknown as WorkerEnd);
