// The page's own work: hands orders to the two workers, takes their news, keeps the state.
import type { Role } from '../model/pass.js';
import type { Ticket } from '../model/ticket.js';
import { DEFAULT_TICKET } from '../ticket/default-ticket.js';
import { writeTicket } from '../ticket/write-ticket.js';
import { BROWSER_STORE } from './browser-store.js';
import { type Moved, moveRun, moveTo } from './edit-ticket.js';
import { beginHistory, type History, stepBack, stepForth, stepOn } from './history.js';
import { keepTicket } from './keep-ticket.js';
import type { Acts, PageState } from './page-state.js';
import type { PaintMessage, PaintNews } from './paint-news.js';
import type { PaintOrder } from './paint-order.js';
import type { Along, JobNews, JobOrder, SideFile } from './protocol.js';
import { startJobWorker, startPaintWorker } from './start-workers.js';

/** The page's work, and what the board asks of it. */
export interface Desk {
  readonly acts: Acts;
  readonly paint: (order: PaintOrder) => void;
  /** Told of each painted picture. */
  onPainted: (news: PaintNews & { readonly kind: 'painted' }) => void;
}

/** What the desk holds between two orders. */
interface Hand {
  state: PageState;
  readonly show: (state: PageState) => void;
  readonly painter: Worker;
  job: Worker | null;
  /** Whether the worker holds the drawing. */
  isOpen: boolean;
  run: number;
  /** Newest order; news of older ones is dropped. */
  wanted: number;
  ask: number;
  blob: Blob | null;
  beside: readonly SideFile[];
}

/** Names of gzipped drawings. */
const PACKED = /\.svgz$/i;
/** Names of tickets. */
const TICKET = /\.json$/i;
/** Names of pictures that a drawing may link to. */
const PICTURE = /\.(?:png|jpe?g|gif|webp)$/i;

function set(hand: Hand, change: Partial<PageState>): void {
  hand.state = { ...hand.state, ...change };
  hand.show(hand.state);
}

function tellPainter(hand: Hand, message: PaintMessage, transfer: Transferable[] = []): void {
  hand.painter.postMessage(message, transfer);
}

function forgetFiles({ state: { addresses, zipAddress } }: Hand): void {
  for (const address of [...addresses, ...(zipAddress === null ? [] : [zipAddress])]) URL.revokeObjectURL(address);
}

function endJob(hand: Hand): void {
  hand.job?.terminate();
  hand.job = null;
  hand.isOpen = false;
  hand.wanted = -1;
}

function give(hand: Hand, make: (run: number) => JobOrder): void {
  hand.run += 1;
  hand.wanted = hand.run;
  if (hand.job === null) {
    hand.job = startJobWorker();
    hand.job.onmessage = ({ data }: MessageEvent<JobNews>) => takeNews(hand, data);
  }
  hand.job.postMessage(make(hand.run));
  set(hand, { isWorking: true, stage: null, fault: null });
}

function orderOpen(hand: Hand): void {
  const { blob, beside, state } = hand;
  const { userUnitsPerInch } = state.history.present;
  hand.isOpen = false;
  set(hand, { inspection: null });
  give(hand, (run) => ({ kind: 'open', run, name: state.file!.name, blob: blob!, beside, userUnitsPerInch }));
}

function orderSplit(hand: Hand): void {
  const ticket = writeTicket(hand.state.history.present);
  const { along } = hand.state;
  give(hand, (run) => ({ kind: 'split', run, ticket, along }));
}

function takeNews(hand: Hand, news: JobNews): void {
  if (news.run !== hand.wanted) return;
  if (news.kind === 'stage') set(hand, { stage: news.stage });
  else if (news.kind === 'ticket') {
    if (hand.isOpen) turnTo(hand, stepOn(hand.state.history, news.ticket));
    else set(hand, { history: beginHistory(news.ticket) });
    // Nothing new was asked, or the drawing is still to be read.
    if (hand.wanted === news.run) orderOpen(hand);
  } else if (news.kind === 'profile') {
    const { profile } = news;
    setAlong(hand, { profile, machine: profile.machines[0] ?? '', material: profile.materials[0] ?? '' });
  } else if (news.kind === 'opened') {
    const { inspection, outlines, ids } = news;
    hand.isOpen = true;
    const columns = Object.values(outlines).flatMap((column) => (ArrayBuffer.isView(column) ? [column.buffer] : []));
    const { strokeKeys, chordMm } = outlines;
    const shapeLayers = outlines.layers.slice();
    const shapeStrokes = outlines.strokeKey.slice();
    tellPainter(hand, { kind: 'outlines', outlines }, columns as ArrayBuffer[]);
    set(hand, { inspection, names: ids, strokeKeys, shapeLayers, shapeStrokes, chordMm });
    orderSplit(hand);
  } else if (news.kind === 'failed') {
    const { findings, excerpt } = news;
    // What was to be loaded is not there; drawing, ticket and files are those that were.
    const canGoOn = (news.of === 'ticket' || news.of === 'profile') && hand.isOpen && hand.state.job !== null;
    set(hand, { isWorking: false, fault: { findings, excerpt, canGoOn } });
  } else {
    forgetFiles(hand);
    const { report } = news;
    tellPainter(hand, { kind: 'sorted', sorted: report.sorted });
    const addresses = report.files.map(({ blob }) => URL.createObjectURL(blob));
    const zipAddress = report.zip === null ? null : URL.createObjectURL(report.zip);
    set(hand, { isWorking: false, stage: null, job: report, addresses, zipAddress });
  }
}

function openBlob(hand: Hand, name: string, blob: Blob, beside: readonly SideFile[]): void {
  closeDrawing(hand);
  hand.blob = blob;
  hand.beside = beside.filter((file) => !TICKET.test(file.name));
  const ticket = beside.find((file) => TICKET.test(file.name));
  const art = new Blob([blob], { type: 'image/svg+xml' });
  set(hand, {
    file: { name, bytes: blob.size },
    artAddress: PACKED.test(name) ? null : URL.createObjectURL(art),
    history: beginHistory(DEFAULT_TICKET),
    looked: { kind: 'all' },
    raised: null,
    chosenFinding: 0,
  });
  if (ticket === undefined) orderOpen(hand);
  else void loadTicket(hand, ticket);
}

/** Has the worker read a ticket; the drawing follows. */
async function loadTicket(hand: Hand, file: SideFile): Promise<void> {
  set(hand, { isWorking: true, stage: null });
  const text = await file.blob.text();
  give(hand, (run) => ({ kind: 'ticket', run, name: file.name, text }));
}

async function loadProfile(hand: Hand, file: SideFile): Promise<void> {
  set(hand, { isWorking: true, stage: null });
  const text = await file.blob.text();
  give(hand, (run) => ({ kind: 'profile', run, name: file.name, text }));
}

/** Something else goes along; the files are made again. */
function setAlong(hand: Hand, change: Partial<Along>): void {
  set(hand, { along: { ...hand.state.along, ...change } });
  if (hand.isOpen) orderSplit(hand);
  else orderOpen(hand);
}

function closeDrawing(hand: Hand): void {
  endJob(hand);
  forgetFiles(hand);
  if (hand.state.artAddress !== null) URL.revokeObjectURL(hand.state.artAddress);
  set(hand, {
    file: null,
    isWorking: false,
    inspection: null,
    job: null,
    fault: null,
    addresses: [],
    zipAddress: null,
    artAddress: null,
    pointed: -1,
  });
}

/** Files for the drawing that is open: pictures that it links to, and a ticket. */
function addBeside(hand: Hand, files: readonly SideFile[]): void {
  const pictures = files.filter(({ name }) => !TICKET.test(name));
  const ticket = files.find(({ name }) => TICKET.test(name));
  if (pictures.length > 0) {
    hand.beside = [...hand.beside.filter(({ name }) => pictures.every((one) => one.name !== name)), ...pictures];
    // Read anew, with them.
    hand.isOpen = false;
  }
  if (ticket !== undefined) void loadTicket(hand, ticket);
  else orderOpen(hand);
}

function openFiles(hand: Hand, files: readonly File[]): void {
  const isDrawing = ({ name, type }: File): boolean => /\.svgz?$/i.test(name) || type === 'image/svg+xml';
  const isBeside = ({ name, type }: File): boolean => TICKET.test(name) || /^image\//.test(type) || PICTURE.test(name);
  const drawing = files.find(isDrawing) ?? files[0];
  if (drawing === undefined) return;
  if (hand.state.file !== null && files.every((file) => !isDrawing(file) && isBeside(file))) {
    addBeside(
      hand,
      files.map((file) => ({ name: file.name, blob: file })),
    );
    return;
  }
  const beside = files.filter((file) => file !== drawing).map((file) => ({ name: file.name, blob: file }));
  openBlob(hand, drawing.name, drawing, beside);
}

/** Another ticket: the drawing is read again only where its size would change, or where its worker is gone. */
function turnTo(hand: Hand, history: History<Ticket>): void {
  const before = hand.state.history.present;
  // The same again is no step: a list that is typed at says its choice with every letter.
  if (JSON.stringify(history.present) === JSON.stringify(before)) return;
  set(hand, { history });
  keepTicket(BROWSER_STORE, hand.state.file?.name ?? '', history.present);
  const isSame = history.present.userUnitsPerInch === before.userUnitsPerInch;
  if (isSame && hand.isOpen) orderSplit(hand);
  else orderOpen(hand);
}

function move(hand: Hand, moved: Moved, target: string): void {
  const { inspection, history } = hand.state;
  if (inspection === null || target === '') return;
  const [name, role] = target.startsWith('role:') ? [null, target.slice(5)] : target.split('\n');
  turnTo(hand, stepOn(history, moveTo(history.present, inspection, moved, { name: name!, role: role as Role })));
}

function chooseFinding(hand: Hand, number: number): void {
  const [spot] = hand.state.job?.findings.find((item) => item.number === number)?.spots ?? [];
  set(hand, { chosenFinding: number, ...(spot === undefined ? {} : { jump: { xMm: spot[0], yMm: spot[1] } }) });
}

function makeActs(hand: Hand): Acts {
  const change = (make: (ticket: Ticket) => Ticket): void =>
    turnTo(hand, stepOn(hand.state.history, make(hand.state.history.present)));
  return {
    openFiles: (files) => openFiles(hand, files),
    openBlob: (name, blob) => openBlob(hand, name, blob, []),
    openText: (text) => openBlob(hand, 'pasted.svg', new Blob([text]), []),
    closeDrawing: () => closeDrawing(hand),
    stop: () => {
      endJob(hand);
      set(hand, { isWorking: false, stage: null });
    },
    goOn: () => orderOpen(hand),
    move: (moved, target) => move(hand, moved, target),
    moveRun: (index, step) => change((ticket) => moveRun(ticket, hand.state.job?.passes ?? [], index, step)),
    changeTicket: change,
    loadTicket: (name, blob) => void loadTicket(hand, { name, blob }),
    loadProfile: (name, blob) => void loadProfile(hand, { name, blob }),
    setAlong: (part) => setAlong(hand, part),
    loadKept: () => {
      const { kept } = hand.state;
      if (kept !== null) void loadTicket(hand, { name: kept.name, blob: new Blob([kept.text]) });
    },
    undo: () => turnTo(hand, stepBack(hand.state.history)),
    redo: () => turnTo(hand, stepForth(hand.state.history)),
    set: (part) => set(hand, part),
    pointAt: (xMm, yMm, withinMm) => {
      hand.ask += 1;
      tellPainter(hand, { kind: 'point', ask: hand.ask, xMm, yMm, withinMm });
    },
    chooseFinding: (number) => chooseFinding(hand, number),
  };
}

/** Begins the work; `show` is told of every change. */
export function openDesk(first: PageState, show: (state: PageState) => void): Desk {
  const hand: Hand = {
    state: first,
    show,
    painter: startPaintWorker(),
    job: null,
    isOpen: false,
    run: 0,
    wanted: -1,
    ask: 0,
    blob: null,
    beside: [],
  };
  const desk: Desk = {
    acts: makeActs(hand),
    paint: (order) => tellPainter(hand, { kind: 'paint', order }),
    onPainted: () => undefined,
  };
  hand.painter.onmessage = ({ data }: MessageEvent<PaintNews>) => {
    if (data.kind === 'painted') desk.onPainted(data);
    else if (data.ask === hand.ask && data.shape !== hand.state.pointed) set(hand, { pointed: data.shape });
  };
  return desk;
}
