// Every text in both languages, with the same places for values.
import { expect, it } from 'vitest';
import { fixed, sayIn, TEXTS } from '../../../src/page/texts.js';

const places = (text: string): readonly string[] => (text.match(/\{\d\}/g) ?? []).sort();

it('says everything twice', () => {
  const entries = Object.entries(TEXTS);
  expect(entries.length).toBeGreaterThan(80);
  expect(entries.filter(([, [en, de]]) => en === '' || de === '').map(([key]) => key)).toEqual([]);
  expect(entries.filter(([, [en, de]]) => String(places(en)) !== String(places(de))).map(([key]) => key)).toEqual([]);
});

it('puts values in their places', () => {
  expect(sayIn('en')('artboard', 240, 236)).toBe('240 × 236 mm');
  expect(sayIn('de')('shapes', 12)).toBe('12 Formen');
  expect(sayIn('en')('mm', fixed(1.26, 1))).toBe('1.3 mm');
  expect(sayIn('de')('mm', fixed(1.26, 1))).toBe('1,3 mm');
  expect(sayIn('de')('goesTo', 'Rev. 1.2')).toBe('Rev. 1.2 geht an');
});
