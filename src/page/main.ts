// Begins the page.
import { App } from './app.js';
import { BROWSER_STORE } from './browser-store.js';
import { type Desk, openDesk } from './drawing-desk.js';
import { recallLooks, recallTicket } from './keep-ticket.js';
import { beginState, type PageState } from './page-state.js';
import { type Language, sayIn } from './texts.js';
import { h, render } from './view-library.js';
import './page.css';

/** Opens the file that the command was given, where the page is served by it. */
async function openGiven(desk: Desk): Promise<void> {
  const given = document.querySelector<HTMLMetaElement>('meta[name="pinbar-file"]');
  if (given === null) return;
  const answer = await fetch('given');
  if (answer.ok) desk.acts.openBlob(given.content, await answer.blob());
}

function begin(root: HTMLElement): void {
  const looks = recallLooks(BROWSER_STORE);
  const language: Language = looks.language ?? (navigator.language.startsWith('de') ? 'de' : 'en');
  const theme = looks.theme ?? (matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light');
  const show = (state: PageState): void => {
    const say = sayIn(state.language);
    document.documentElement.lang = state.language;
    document.documentElement.dataset.theme = state.theme;
    document.title = say('title');
    render(h(App, { state, say, acts: desk.acts, desk }), root);
  };
  const first = beginState(language, theme, recallTicket(BROWSER_STORE));
  const desk = openDesk(first, show);
  document.addEventListener('paste', (event) => {
    const text = event.clipboardData?.getData('text/plain') ?? '';
    const files = [...(event.clipboardData?.files ?? [])];
    if (files.length > 0) desk.acts.openFiles(files);
    else if (/<svg[\s>]/.test(text)) desk.acts.openText(text);
  });
  document.addEventListener('keydown', (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return;
    // What is being typed is taken back by the field itself.
    if ((event.target as Element | null)?.closest('[data-typing]')) return;
    event.preventDefault();
    if (event.shiftKey) desk.acts.redo();
    else desk.acts.undo();
  });
  show(first);
  void openGiven(desk);
}

begin(document.getElementById('page')!);
