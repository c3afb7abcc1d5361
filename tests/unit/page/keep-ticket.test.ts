// What the browser remembers, and what it does with what it cannot read.
import { describe, expect, it } from 'vitest';
import { keepLooks, keepTicket, recallLooks, recallTicket, type TextStore } from '../../../src/page/keep-ticket.js';
import { DEFAULT_TICKET } from '../../../src/ticket/default-ticket.js';
import { readTicket } from '../../../src/ticket/read-ticket.js';

function makeStore(first: Readonly<Record<string, string>> = {}): TextStore {
  const texts = new Map(Object.entries(first));
  return { getItem: (key) => texts.get(key) ?? null, setItem: (key, text) => void texts.set(key, text) };
}

const CLOSED: TextStore = {
  getItem: () => {
    throw new Error('not allowed');
  },
  setItem: () => {
    throw new Error('full');
  },
};

describe('a kept ticket', () => {
  it('comes back as the text of the same ticket', () => {
    const store = makeStore();
    const ticket = { ...DEFAULT_TICKET, marginMm: 4 };
    keepTicket(store, 'a.svg', ticket);
    const kept = recallTicket(store)!;
    expect(kept.name).toBe('a.svg');
    expect(readTicket(kept.text)).toEqual(ticket);
  });

  it.each(['', '{', '1', '{"name": 1, "text": "{}"}', '{"name": "a"}', 'null'])('is none where it says %s', (text) => {
    expect(recallTicket(makeStore({ 'pinbar.ticket': text }))).toBe(null);
  });
});

describe('kept looks', () => {
  it('come back as far as they are known', () => {
    const store = makeStore();
    keepLooks(store, { language: 'de', theme: 'dark' });
    expect(recallLooks(store)).toEqual({ language: 'de', theme: 'dark' });
    expect(recallLooks(makeStore({ 'pinbar.looks': '{"language": "xx", "theme": "light"}' }))).toEqual({
      theme: 'light',
    });
    expect(recallLooks(makeStore())).toEqual({});
  });
});

it('does without where the browser keeps nothing', () => {
  expect(() => keepTicket(CLOSED, 'a.svg', DEFAULT_TICKET)).not.toThrow();
  expect(() => keepLooks(CLOSED, {})).not.toThrow();
  expect(recallTicket(CLOSED)).toBe(null);
  expect(recallLooks(CLOSED)).toEqual({});
});
