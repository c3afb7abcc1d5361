// The page's own work: hands orders to the two workers, takes their news, keeps the state.
import type { Ticket } from '../model/ticket.js';
import type { Role } from '../model/pass.js';
import { DEFAULT_TICKET } from '../ticket/default-ticket.js';
import { writeTicket } from '../ticket/write-ticket.js';
import { moveRun, moveTo } from './edit-ticket.js';
import { beginHistory, type History, stepBack, stepForth, stepOn } from './history.js';
import type { Acts, PageState } from './page-state.js';
import type { JobNews, JobOrder, PaintMessage, PaintNews, PaintOrder, SideFile } from './protocol.js';
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
  job: Worker | null;
  painter: Worker;
  run: number;
  /** Newest order that is not superseded; news of older ones is dropped. */
  wanted: number;
  ask: number;
  blob: Blob | null;
  beside: readonly SideFile[];
}

/** Names of gzipped drawings. */
const PACKED = /\.svgz$/i;

function splitFiles(files: readonly File[]): { readonly drawing: File | null; readonly beside: readonly SideFile[] } {
  const drawing = files.find(({ name, type }) => /\.svgz?$/i.test(name) || type === 'image/svg+xml') ?? files[0] ?? null;
  return { drawing, beside: files.filter((file) => file !== drawing).map((file) => ({ name: file.name, blob: file })) };
}

/** Begins the work; `show` is told of every change. */
export function openDesk(first: PageState, show: (state: PageState) => void): Desk {
  const hand: Hand = {
    state: first,
    job: null,
    painter: startPaintWorker(),
    run: 0,
    wanted: 0,
    ask: 0,
    blob: null,
    beside: [],
  };
  const set = (change: Partial<PageState>): void => {
    hand.state = { ...hand.state, ...change };
    show(hand.state);
  };
  const tellPainter = (message: PaintMessage, transfer: Transferable[] = []): void =>
    hand.painter.postMessage(message, transfer);
  const forgetFiles = (): void => {
    const { addresses, zipAddress } = hand.state;
    for (const address of [...addresses, ...(zipAddress === null ? [] : [zipAddress])]) URL.revokeObjectURL(address);
  };
  const order = (make: (run: number) => JobOrder): void => {
    hand.run += 1;
    hand.wanted = hand.run;
    if (hand.job === null) {
      hand.job = startJobWorker();
      hand.job.onmessage = ({ data }: MessageEvent<JobNews>) => take(data);
    }
    hand.job.postMessage(make(hand.run));
    set({ isWorking: true, stage: null, fault: null });
  };
  const orderSplit = (ticket: Ticket): void => order((run) => ({ kind: 'split', run, ticket: writeTicket(ticket) }));
  const take = (news: JobNews): void => {
    if (news.kind === 'stage') set({ stage: news.stage });
    else if (news.kind === 'opened') {
      const { inspection, outlines, ids } = news;
      const { strokeKeys } = outlines;
      set({ inspection, names: ids, strokeKeys, shapeLayers: outlines.layers.slice() });
      tellPainter({ kind: 'outlines', outlines }, []);
      orderSplit(hand.state.history.present);
    } else if (news.run !== hand.wanted) return;
    else if (news.kind === 'failed') {
      set({ isWorking: false, fault: { findings: news.findings, excerpt: news.excerpt } });
    } else {
      forgetFiles();
      tellPainter({ kind: 'sorted', sorted: news.report.sorted });
      set({
        isWorking: false,
        job: news.report,
        addresses: news.report.files.map(({ blob }) => URL.createObjectURL(blob)),
        zipAddress: news.report.zip === null ? null : URL.createObjectURL(news.report.zip),
      });
    }
  };
  const desk: Desk = { acts: makeActs(), paint: (painted) => tellPainter({ kind: 'paint', order: painted }), onPainted: () => {} };
  hand.painter.onmessage = ({ data }: MessageEvent<PaintNews>) => {
    if (data.kind === 'painted') desk.onPainted(data);
    else if (data.ask === hand.ask && data.shape !== hand.state.pointed) set({ pointed: data.shape });
  };
  return desk;

  function openBlob(blob: Blob, name: string, beside: readonly SideFile[]): void {
    endJob();
    forgetFiles();
    if (hand.state.artAddress !== null) URL.revokeObjectURL(hand.state.artAddress);
    hand.blob = blob;
    hand.beside = beside;
    const art = new Blob([blob], { type: 'image/svg+xml' });
    set({
      file: { name, bytes: blob.size },
      inspection: null,
      job: null,
      addresses: [],
      zipAddress: null,
      artAddress: PACKED.test(name) ? null : URL.createObjectURL(art),
      history: beginHistory(DEFAULT_TICKET),
      looked: { kind: 'all' },
      pointed: -1,
      raised: null,
      chosenFinding: 0,
    });
    orderOpen();
  }
  function orderOpen(): void {
    const { blob, beside, state } = hand;
    const { userUnitsPerInch } = state.history.present;
    order((run) => ({ kind: 'open', run, name: state.file!.name, blob: blob!, beside, userUnitsPerInch }));
  }
  function endJob(): void {
    hand.job?.terminate();
    hand.job = null;
    hand.wanted = -1;
  }
  function turnTo(history: History<Ticket>): void {
    const before = hand.state.history.present;
    if (history.present === before) return;
    set({ history });
    if (hand.job === null || history.present.userUnitsPerInch !== before.userUnitsPerInch) orderOpen();
    else orderSplit(history.present);
  }
  function changeTicket(change: (ticket: Ticket) => Ticket): void {
    turnTo(stepOn(hand.state.history, change(hand.state.history.present)));
  }
  function makeActs(): Acts {
    return {
      openFiles: (files) => {
        const { drawing, beside } = splitFiles(files);
        if (drawing !== null) openBlob(drawing, drawing.name, beside);
      },
      openText: (text) => openBlob(new Blob([text], { type: 'image/svg+xml' }), 'pasted.svg', []),
      closeDrawing: () => {
        endJob();
        set({ file: null, isWorking: false, inspection: null, job: null, fault: null });
      },
      stop: () => {
        endJob();
        set({ isWorking: false, stage: null });
      },
      move: (moved, target) => {
        const { inspection } = hand.state;
        if (inspection === null) return;
        const [name, role] = target.startsWith('role:') ? [null, target.slice(5)] : target.split('\n');
        changeTicket((ticket) => moveTo(ticket, inspection, moved, { name: name!, role: role as Role }));
      },
      moveRun: (index, step) => changeTicket((ticket) => moveRun(ticket, hand.state.job?.passes ?? [], index, step)),
      changeTicket,
      undo: () => turnTo(stepBack(hand.state.history)),
      redo: () => turnTo(stepForth(hand.state.history)),
      set,
      pointAt: (xMm, yMm, withinMm) => {
        hand.ask += 1;
        tellPainter({ kind: 'point', ask: hand.ask, xMm, yMm, withinMm });
      },
      chooseFinding: (number) => {
        const [spot] = hand.state.job?.findings.find((item) => item.number === number)?.spots ?? [];
        set({ chosenFinding: number, ...(spot === undefined ? {} : { jump: { xMm: spot[0], yMm: spot[1] } }) });
      },
    };
  }
}
