// What the browser remembers from one visit to the next: the last ticket, the language, light or dark.
import type { Ticket } from '../model/ticket.js';
import { writeTicket } from '../ticket/write-ticket.js';

/** A ticket as it was kept: JSON that is read like a file, since anything may have changed it. */
export interface KeptTicket {
  /** Name of the drawing it was for. */
  readonly name: string;
  readonly text: string;
}

/** What is remembered of the page's looks. */
export interface KeptLooks {
  readonly language?: 'en' | 'de';
  readonly theme?: 'light' | 'dark';
}

/** A place that keeps texts; the browser's own fits. */
export interface TextStore {
  getItem(key: string): string | null;
  setItem(key: string, text: string): void;
}

const TICKET_KEY = 'pinbar.ticket';
const LOOKS_KEY = 'pinbar.looks';

/** A browser may refuse to keep anything; then the page does without. */
function attempt<T>(act: () => T, otherwise: T): T {
  try {
    return act();
  } catch {
    return otherwise;
  }
}

/** Keeps a ticket. */
export function keepTicket(store: TextStore, name: string, ticket: Ticket): void {
  const kept: KeptTicket = { name, text: JSON.stringify(writeTicket(ticket)) };
  attempt(() => store.setItem(TICKET_KEY, JSON.stringify(kept)), undefined);
}

/** The ticket of last time; null where there is none. */
export function recallTicket(store: TextStore): KeptTicket | null {
  return attempt(() => {
    const kept = JSON.parse(store.getItem(TICKET_KEY) ?? 'null') as Partial<KeptTicket> | null;
    if (typeof kept?.name !== 'string' || typeof kept.text !== 'string') return null;
    return { name: kept.name, text: kept.text };
  }, null);
}

/** Keeps language and light or dark. */
export function keepLooks(store: TextStore, looks: KeptLooks): void {
  attempt(() => store.setItem(LOOKS_KEY, JSON.stringify(looks)), undefined);
}

/** The looks of last time, as far as they are known. */
export function recallLooks(store: TextStore): KeptLooks {
  return attempt(() => {
    const kept = JSON.parse(store.getItem(LOOKS_KEY) ?? '{}') as Record<string, unknown>;
    return {
      ...(kept.language === 'en' || kept.language === 'de' ? { language: kept.language } : {}),
      ...(kept.theme === 'light' || kept.theme === 'dark' ? { theme: kept.theme } : {}),
    };
  }, {});
}
