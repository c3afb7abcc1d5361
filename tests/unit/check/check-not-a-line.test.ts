// What tools cannot follow, and lines that are more than lines: reasons by hand.
import { describe, expect, it } from 'vitest';
import { checkNotALine } from '../../../src/check/check-not-a-line.js';
import { readFacts } from './read-facts.js';

const DEFS =
  '<defs><linearGradient id="g"><stop stop-color="#111"/></linearGradient>' +
  '<filter id="f"><feGaussianBlur stdDeviation="1"/></filter><mask id="m"><rect width="9" height="9" fill="#fff"/></mask></defs>';

/** Code and reasons of each finding. */
async function find(cut: string): Promise<readonly unknown[]> {
  const outline = '<path id="outline" d="M70 55H130V95H70Z" fill="none" stroke="#2a7f62" stroke-width=".2"/>';
  const facts = await readFacts({}, [
    [outline, `<g fill="none" stroke="#d6336c">${cut}</g>`],
    ['<g id="Marks">', `${DEFS}<g id="Marks">`],
  ]);
  return checkNotALine(facts).map(({ code, data }) => [code.replace('check/', ''), data.reasons, data.count]);
}

const D = 'd="M50 50H150V110H50Z"';
const painted = (reasons: object): readonly unknown[] => [['line-painted', reasons, 1]];

describe('checkNotALine', () => {
  it('lets plain lines be, and fills that cover nothing', async () => {
    expect(await find(`<path ${D}/>`)).toEqual([]);
    expect(await find('<path d="M50 50H150" fill="#345"/>')).toEqual([]);
    expect(await find(`<path ${D} fill="#345" fill-opacity="0"/>`)).toEqual([]);
  });

  it('tells pictures, type and foreign objects', async () => {
    const cut =
      '<image x="50" y="50" width="9" height="9" href="data:image/gif;base64,R0lGODlhZABkAAAAAA=="/>' +
      '<text x="60" y="60">Cut</text><text x="60" y="80">here</text>';
    expect(await find(cut)).toEqual([['no-line', { picture: 1, 'live text': 2 }, 3]]);
  });

  it('tells each thing that is more than a line', async () => {
    expect(await find(`<path ${D} fill="#345"/>`)).toEqual(painted({ filled: 1 }));
    expect(await find(`<path ${D} fill="url(#g)"/>`)).toEqual(painted({ 'filled with a gradient or pattern': 1 }));
    expect(await find(`<path ${D} stroke="url(#g)"/>`)).toEqual(painted({ 'stroked with a gradient or pattern': 1 }));
    expect(await find(`<path ${D} filter="url(#f)"/>`)).toEqual(painted({ 'under a filter': 1 }));
    expect(await find(`<path ${D} mask="url(#m)"/>`)).toEqual(painted({ 'under a mask': 1 }));
  });

  it('tells what is see-through, however it comes about', async () => {
    expect(await find(`<path ${D} stroke-opacity=".99"/>`)).toEqual(painted({ 'see-through': 1 }));
    expect(await find(`<path ${D} opacity=".99"/>`)).toEqual(painted({ 'see-through': 1 }));
    expect(await find(`<g opacity=".99"><path ${D}/></g>`)).toEqual(painted({ 'see-through': 1 }));
    expect(await find(`<path ${D} stroke="#d6336cfe"/>`)).toEqual(painted({ 'see-through': 1 }));
    expect(await find(`<path ${D} opacity="1"/>`)).toEqual([]);
  });

  it('counts reasons over shapes', async () => {
    expect(await find(`<path ${D} fill="#345" opacity=".5"/><path ${D} fill="#345"/>`)).toEqual([
      ['line-painted', { filled: 2, 'see-through': 1 }, 2],
    ]);
  });
});
