// What lies in `in/`: art, tickets beside it, and what is left alone.
import { isUnreadable } from './file-trouble.js';
import { codeOf, type Entry, type FolderDisk, joinPath } from './folder-disk.js';
import { RECORD_NAME } from './job-record.js';

/** A file that may become a job. */
export interface Delivery {
  /** Folders below the scanned one, then the name. */
  readonly from: readonly Buffer[];
  readonly path: Buffer;
  /** Ticket beside the art, by name. */
  readonly beside: Buffer | null;
  /** Whether other art of the same name but another ending shares that ticket. */
  readonly besideShared: boolean;
}

/** What a scan saw. */
export interface Scan {
  readonly deliveries: readonly Delivery[];
  readonly refused: readonly Refused[];
}

/** What a scan does not look into: links and devices, which are never opened, folders that do not show what is in them, and those too far down. */
export interface Refused {
  readonly from: readonly Buffer[];
  readonly lack: 'link-or-device' | 'not-readable' | 'too-deep';
}

/** Names below a folder as text. */
export function sayNames(from: readonly Buffer[]): string {
  return from.map(String).join('/');
}

/** How deep folders in `in/` are looked into. */
const DEEPEST = 8;

const REPORT = Buffer.from('report');
const RECORD = Buffer.from(RECORD_NAME);

const ART = /\.svgz?$/i;
const TICKET = /\.ticket\.json$/i;

/** Whether a name is that of art. Names that begin with a point are being written by somebody. */
export function isArtName(name: Buffer): boolean {
  return name[0] !== 0x2e && ART.test(name.toString('latin1'));
}

/** Whether a name is that of a ticket: `ticket.json`, or art's own. */
export function isTicketName(name: Buffer): boolean {
  const text = name.toString('latin1');
  return text === 'ticket.json' || (name[0] !== 0x2e && TICKET.test(text));
}

function stemBytes(name: Buffer): string {
  return name.toString('latin1').replace(ART, '');
}

function findBeside(name: Buffer, entries: readonly Entry[]): Buffer | null {
  const wanted = `${stemBytes(name)}.ticket.json`;
  const found = entries.find((entry) => entry.kind === 'file' && entry.name.toString('latin1') === wanted);
  return found?.name ?? null;
}

/** The report of a job whose folder somebody put back into `in/` as a whole: its picture is no art. */
function isReport(entry: Entry, entries: readonly Entry[]): boolean {
  return entry.name.equals(REPORT) && entries.some(({ name }) => name.equals(RECORD));
}

interface Walk {
  readonly disk: FolderDisk;
  readonly deliveries: Delivery[];
  readonly refused: Refused[];
}

function walkFolder(walk: Walk, path: Buffer, above: readonly Buffer[]): void {
  const entries = walk.disk.list(path);
  const art = entries.filter((entry) => entry.kind === 'file' && isArtName(entry.name));
  const stems = new Map<string, number>();
  for (const { name } of art) stems.set(stemBytes(name), (stems.get(stemBytes(name)) ?? 0) + 1);
  const hasTickets = entries.some((entry) => isTicketName(entry.name));
  for (const { name } of art) {
    const beside = hasTickets ? findBeside(name, entries) : null;
    const besideShared = beside !== null && (stems.get(stemBytes(name)) ?? 0) > 1;
    walk.deliveries.push({ from: [...above, name], path: joinPath(path, name), beside, besideShared });
  }
  for (const entry of entries) {
    if (entry.name[0] === 0x2e || isReport(entry, entries)) continue;
    const from = [...above, entry.name];
    if (entry.kind === 'other') walk.refused.push({ from, lack: 'link-or-device' });
    if (entry.kind === 'folder' && above.length >= DEEPEST) walk.refused.push({ from, lack: 'too-deep' });
    else if (entry.kind === 'folder') {
      try {
        walkFolder(walk, joinPath(path, entry.name), from);
      } catch (error) {
        // A folder that cannot be read keeps nobody else waiting; nor does one that went away meanwhile.
        if (isUnreadable(error)) walk.refused.push({ from, lack: 'not-readable' });
        else if (codeOf(error) !== 'ENOENT') throw error;
      }
    }
  }
}

/** One file below a folder, by its names, with the ticket beside it; null where it is not there any more. */
export function findDelivery(disk: FolderDisk, folder: Buffer, from: readonly Buffer[]): Delivery | null {
  const above = joinPath(folder, ...from.slice(0, -1));
  const name = from.at(-1)!;
  if (disk.look(joinPath(above, name))?.kind !== 'file') return null;
  const entries = disk.list(above);
  const twins = entries.filter((entry) => isArtName(entry.name) && stemBytes(entry.name) === stemBytes(name));
  const beside = findBeside(name, entries);
  return { from, path: joinPath(above, name), beside, besideShared: beside !== null && twins.length > 1 };
}

/**
 * Lists what lies in a folder and below it.
 *
 * @throws Errors of the system about the folder itself.
 */
export function scanIn(disk: FolderDisk, folder: Buffer): Scan {
  const walk: Walk = { disk, deliveries: [], refused: [] };
  walkFolder(walk, folder, []);
  return { deliveries: walk.deliveries, refused: walk.refused };
}
