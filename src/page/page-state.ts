// What the page knows.
import type { Matrix } from '../geometry/matrix.js';
import type { Finding } from '../model/finding.js';
import type { Inspection } from '../model/inspection.js';
import type { Stage } from '../model/job.js';
import type { Ticket } from '../model/ticket.js';
import { DEFAULT_TICKET } from '../ticket/default-ticket.js';
import type { Moved } from './edit-ticket.js';
import type { ExcerptLine } from './excerpt.js';
import { beginHistory, type History } from './history.js';
import type { KeptTicket } from './keep-ticket.js';
import type { Along, JobReport } from './protocol.js';
import type { Language, Say } from './texts.js';

/** Which passes are looked at: all, some, or one after the other. */
export type Looked =
  | { readonly kind: 'all' }
  | { readonly kind: 'some'; readonly passes: readonly number[] }
  | { readonly kind: 'step'; readonly pass: number };

/** How the art is looked at. */
export type Manner = 'both' | 'drawn' | 'passes';

/** Why a job could not go on. */
export interface Fault {
  readonly findings: readonly Finding[];
  readonly excerpt: readonly ExcerptLine[];
  /** What was to be loaded along is at fault: the job goes on without it. */
  readonly canGoOn: boolean;
}

/** What the page knows. */
export interface PageState {
  readonly file: { readonly name: string; readonly bytes: number } | null;
  readonly isWorking: boolean;
  readonly stage: Stage | null;
  readonly inspection: Inspection | null;
  /** Kind and id of each shape. */
  readonly names: readonly string[];
  readonly strokeKeys: readonly string[];
  readonly shapeLayers: Int32Array;
  readonly shapeStrokes: Int32Array;
  /** How far painted curves may leave the drawn ones. */
  readonly chordMm: number;
  readonly job: JobReport | null;
  /** Addresses of the made files, in the order of `job.files`; of the drawing itself where there are none. */
  readonly addresses: readonly string[];
  readonly zipAddress: string | null;
  readonly artAddress: string | null;
  readonly history: History<Ticket>;
  readonly along: Along;
  readonly fault: Fault | null;
  readonly manner: Manner;
  readonly looked: Looked;
  readonly showsPlaces: boolean;
  readonly raised: Moved | null;
  /** Shape under the pointer, or -1. */
  readonly pointed: number;
  readonly chosenFinding: number;
  /** Where the board should go; another object, another jump. */
  readonly jump: { readonly xMm: number; readonly yMm: number } | null;
  /** The ticket of last time; null where there is none. */
  readonly kept: KeptTicket | null;
  /** What a ticket asks for where it says nothing. */
  readonly usual: Ticket;
  readonly language: Language;
  readonly theme: 'light' | 'dark';
}

/** The page before a file is there. */
export function beginState(language: Language, theme: 'light' | 'dark', kept: KeptTicket | null): PageState {
  return {
    file: null,
    isWorking: false,
    stage: null,
    inspection: null,
    names: [],
    strokeKeys: [],
    shapeLayers: new Int32Array(0),
    shapeStrokes: new Int32Array(0),
    chordMm: 0,
    job: null,
    addresses: [],
    zipAddress: null,
    artAddress: null,
    history: beginHistory(DEFAULT_TICKET),
    along: { proofPage: false, profile: null, machine: '', material: '', sheets: 250 },
    fault: null,
    manner: 'both',
    looked: { kind: 'all' },
    showsPlaces: true,
    raised: null,
    pointed: -1,
    chosenFinding: 0,
    jump: null,
    kept,
    usual: DEFAULT_TICKET,
    language,
    theme,
  };
}

/** How strongly each pass is shown: 1 in full, 2 faded, 0 not. */
export function listShown({ job, looked }: PageState): readonly number[] {
  return (job?.passes ?? []).map((_, index) => {
    if (looked.kind === 'all') return 1;
    if (looked.kind === 'some') return looked.passes.includes(index) ? 1 : 0;
    if (index === looked.pass) return 1;
    return index < looked.pass ? 2 : 0;
  });
}

/** Per pass: the middles of its ties on the drawing; those of the report are on the artboard that the margin has grown. @unit mm */
export function listTies({ job }: PageState): readonly (readonly number[])[] {
  if (job === null) return [];
  return job.passes.map(({ name }) =>
    (job.ties.find(({ pass }) => pass === name)?.placesMm ?? []).map((place) => place - job.marginMm),
  );
}

const ONE_COPY: readonly Matrix[] = [[1, 0, 0, 1, 0, 0]];

/** From mm on the drawing to mm on the board, for every copy that lies there. */
export function listCopies({ job }: PageState): readonly Matrix[] {
  return job?.sheet?.copies ?? ONE_COPY;
}

/** Size of what lies on the board: the sheet of copies, or the drawing. @unit mm */
export function findBoardMm({ job, inspection }: PageState): { readonly width: number; readonly height: number } {
  const { widthMm: width, heightMm: height } = job?.sheet ?? inspection!.artboard;
  return { width, height };
}

/** What every part of the page is handed. */
export interface PartProps {
  readonly state: PageState;
  readonly say: Say;
  readonly acts: Acts;
}

/** What a hand can do. */
export interface Acts {
  openFiles(files: readonly File[]): void;
  openBlob(name: string, blob: Blob): void;
  openText(text: string): void;
  closeDrawing(): void;
  stop(): void;
  goOn(): void;
  move(moved: Moved, target: string): void;
  moveRun(index: number, step: -1 | 1): void;
  changeTicket(change: (ticket: Ticket) => Ticket): void;
  loadTicket(name: string, blob: Blob): void;
  loadProfile(name: string, blob: Blob): void;
  setAlong(change: Partial<Along>): void;
  /** The ticket of last time. */
  loadKept(): void;
  undo(): void;
  redo(): void;
  set(change: Partial<PageState>): void;
  pointAt(xMm: number, yMm: number, withinMm: number): void;
  chooseFinding(number: number): void;
}
