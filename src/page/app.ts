// The whole page.
import { Board } from './board.js';
import { showsPictures } from './board-pictures.js';
import { BROWSER_STORE } from './browser-store.js';
import type { Desk } from './drawing-desk.js';
import { DrawnPart } from './drawn-part.js';
import { FaultPart, FoundPart } from './found-part.js';
import { keepLooks } from './keep-ticket.js';
import type { PageState, PartProps } from './page-state.js';
import { PointedLine } from './pointed-line.js';
import { isReady, ProofPart, TakePart } from './proof-part.js';
import { RunStrip } from './run-strip.js';
import { SettingsPart } from './settings-part.js';
import { fixed, sayStage } from './texts.js';
import { h, type VNode } from './view-library.js';

/** How it stands, in words, and the kind of it. */
function sayVerdict({ state, say }: PartProps): { readonly words: string; readonly kind: string } {
  const { fault, job, isWorking, stage, language } = state;
  if (isWorking) {
    return { words: `${say('working')}${stage === null ? '' : `: ${sayStage(language, stage)}`}`, kind: 'working' };
  }
  if (fault !== null) return { words: say('outcome.failed'), kind: 'bad' };
  if (job === null) return { words: say('stopped'), kind: 'stopped' };
  const kind = job.outcome === 'in-register' ? 'good' : job.outcome === 'refused' ? 'bad' : 'ask';
  return { words: say(`outcome.${job.outcome}`), kind };
}

function drawVerdict(props: PartProps): VNode {
  const { words, kind } = sayVerdict(props);
  return h(
    'p',
    { class: `verdict verdict-${kind}`, role: 'status' },
    kind === 'working' ? h('span', { class: 'busy', 'aria-hidden': 'true' }) : null,
    words,
  );
}

/** Leads to a part of the page, and puts the focus there. */
function leadTo(id: string): (event: Event) => void {
  return (event) => {
    event.preventDefault();
    const part = document.getElementById(id);
    part?.scrollIntoView();
    part?.focus({ preventScroll: true });
  };
}

/** What is to be done next: take the files, or look at what stands in the way. */
function NextStep({ state, say }: PartProps): VNode | null {
  const { job, isWorking, zipAddress, fault } = state;
  const look = (words: string, id = 'found-title'): VNode =>
    h('a', { class: 'next', key: 'look', href: `#${id}`, onClick: leadTo(id) }, words);
  if (isWorking) return null;
  if (fault !== null) return h('p', { class: 'next-step' }, look(say('next.why'), 'fault-title'));
  if (job === null) return null;
  const count = job.findings.length;
  if (!isReady(state)) return h('p', { class: 'next-step' }, look(say('next.mend', count)));
  return h(
    'p',
    { class: 'next-step' },
    h('a', { class: 'main-act', key: 'take', href: zipAddress!, download: `${job.stem}.passes.zip` }, say('takeAll')),
    count === 0 ? null : look(say(count === 1 ? 'next.lookOne' : 'next.look', count)),
  );
}

/** The parts beside the board, each one step away. */
function drawWays(props: PartProps): VNode | null {
  const { state, say } = props;
  if (state.job === null) return null;
  const { words: verdict, kind } = sayVerdict(props);
  const count = state.job.findings.length;
  const ways: readonly (readonly [string, string])[] = [
    ['drawn', say('way.drawn')],
    ['found', `${say('way.found')}${count === 0 ? '' : ` (${count})`}`],
    ['job', say('settings')],
    ['proof', say('proof')],
    ['take', say('take')],
  ];
  return h(
    'nav',
    { class: 'ways', 'aria-label': say('ways') },
    ways.map(([id, words]) => h('a', { key: id, href: `#${id}-title`, onClick: leadTo(`${id}-title`) }, words)),
    // The head is out of sight where the fields are; a screen reader is told by it all the same.
    h('span', { class: `ways-verdict ways-${kind}`, 'aria-hidden': 'true' }, verdict),
  );
}

function Head(props: PartProps): VNode {
  const { state, say, acts } = props;
  const { file, history, isWorking, job, fault } = state;
  const turn = (looks: Pick<PageState, 'language' | 'theme'>): void => {
    acts.set(looks);
    keepLooks(BROWSER_STORE, looks);
  };
  const button = (words: string, onClick: () => void, isOff = false): VNode =>
    h('button', { type: 'button', onClick, disabled: isOff }, words);
  return h(
    'header',
    { class: 'head' },
    h('h1', {}, file === null ? 'pinbar' : [h('span', { class: 'mark' }, 'pinbar'), ` ${file.name}`]),
    file === null ? null : drawVerdict(props),
    file === null ? null : h(NextStep, props),
    h(
      'div',
      { class: 'head-acts' },
      isWorking ? button(say('stop'), acts.stop) : null,
      !isWorking && file !== null && job === null && fault === null ? button(say('goOn'), acts.goOn) : null,
      file === null ? null : button(say('undo'), acts.undo, history.past.length === 0),
      file === null ? null : button(say('redo'), acts.redo, history.future.length === 0),
      file === null ? null : button(say('another'), acts.closeDrawing),
      button(say('language'), () => turn({ language: state.language === 'en' ? 'de' : 'en', theme: state.theme })),
      button(say('theme'), () => turn({ language: state.language, theme: state.theme === 'light' ? 'dark' : 'light' })),
    ),
  );
}

function Welcome({ say, acts }: PartProps): VNode {
  return h(
    'main',
    { class: 'welcome' },
    h(
      'div',
      { class: 'tray' },
      h('p', { class: 'tray-title' }, say('dropHere')),
      h(
        'label',
        { class: 'main-act' },
        say('pick'),
        h('input', {
          type: 'file',
          class: 'unseen',
          multiple: true,
          accept: '.svg,.svgz,image/*',
          onChange: (event: Event) => acts.openFiles([...((event.currentTarget as HTMLInputElement).files ?? [])]),
        }),
      ),
      h('p', { class: 'quiet' }, say('pasteHint')),
    ),
    h('p', { class: 'intro' }, say('intro')),
  );
}

function Work(props: PartProps & { readonly desk: Desk }): VNode {
  const { state } = props;
  return h(
    'main',
    { class: 'work' },
    state.inspection === null
      ? null
      : h(
          'div',
          { class: 'look' },
          h(RunStrip, props),
          drawManner(props),
          drawSimplified(props),
          h(Board, props),
          h(PointedLine, props),
        ),
    h(
      'div',
      { class: 'reading' },
      drawWays(props),
      h(FaultPart, props),
      h(DrawnPart, props),
      h(FoundPart, props),
      h(SettingsPart, props),
      h(ProofPart, props),
      h(TakePart, props),
    ),
  );
}

function drawManner({ state, say, acts }: PartProps): VNode {
  const choices = (['both', 'drawn', 'passes'] as const).map((manner) =>
    h(
      'label',
      { key: manner, class: 'choice' },
      h('input', {
        type: 'radio',
        name: 'manner',
        checked: state.manner === manner,
        onChange: () => acts.set({ manner }),
      }),
      say(`manner.${manner}`),
    ),
  );
  const places = h(
    'label',
    { class: 'choice' },
    h('input', {
      type: 'checkbox',
      checked: state.showsPlaces,
      onChange: () => acts.set({ showsPlaces: !state.showsPlaces }),
    }),
    say('places'),
  );
  return h('fieldset', { class: 'manner' }, h('legend', { class: 'unseen' }, say('manner')), choices, places);
}

/** That the art is too large to be shown as it is; the files are whole all the same. */
function drawSimplified(props: PartProps): VNode | null {
  const { state, say } = props;
  if (showsPictures(props) || state.manner === 'passes') return null;
  return h('p', { class: 'simplified', id: 'simplified' }, say('simplified', fixed(state.chordMm, 2)));
}

/** The page. */
export function App(props: PartProps & { readonly desk: Desk }): VNode {
  const { state, acts } = props;
  return h(
    'div',
    {
      class: 'page',
      onDragOver: (event: DragEvent) => event.preventDefault(),
      onDrop: (event: DragEvent) => {
        const files = [...(event.dataTransfer?.files ?? [])];
        event.preventDefault();
        if (files.length > 0) acts.openFiles(files);
      },
    },
    h(Head, props),
    state.file === null ? h(Welcome, props) : h(Work, props),
  );
}
