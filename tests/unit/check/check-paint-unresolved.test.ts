// Gradients and patterns that give no paint.
import { describe, expect, it } from 'vitest';
import { checkPaintUnresolved } from '../../../src/check/check-paint-unresolved.js';
import { carton, factsOf } from './carton-facts.js';

const BLANK = '<path d="M50 50H150V110H50Z"/>';

async function find(print: string, cut = BLANK, more = '') {
  return checkPaintUnresolved(await factsOf(carton(print, cut, more)));
}

describe('checkPaintUnresolved', () => {
  const why = async (server: string, paint = 'url(#dusk)'): Promise<readonly unknown[]> =>
    (await find(`<path d="M47 47H153V113H47Z" fill="${paint}"/>`, BLANK, server)).map(({ data }) => data.why);
  const stop = '<stop stop-color="#123"/>';

  it('takes stops and content from the server that one refers to', async () => {
    const from = `<linearGradient id="night">${stop}</linearGradient>`;
    expect(await why(`${from}<radialGradient id="dusk" href="#night"/>`)).toEqual([]);
    expect(await why('<linearGradient id="night"/><linearGradient id="dusk" href="#night"/>')).toEqual(['no-stops']);
    expect(await why('<linearGradient id="dusk" href="#dusk"/>')).toEqual(['circle']);
  });

  it('asks a pattern for a size and for content', async () => {
    const pattern = (more: string, content: string): string => `<pattern id="dusk" ${more}>${content}</pattern>`;
    expect(await why(pattern('width="2" height="2"', '<path d="M0 0H1"/>'))).toEqual([]);
    expect(await why(pattern('width="2" height="2"', '<title>Dots</title>'))).toEqual(['no-content']);
    expect(await why(pattern('width="2" height="0"', '<path d="M0 0H1"/>'))).toEqual(['no-size']);
    expect(await why(pattern('width="2"', '<path d="M0 0H1"/>'))).toEqual(['no-size']);
  });

  it('tells what is not there, stroke and fill alike, whether or not anything else is drawn', async () => {
    expect(await why('')).toEqual(['not-there']);
    expect(await why('', 'url(#dusk) #123')).toEqual(['not-there']);
    const both = '<path d="M47 47H153V113H47Z" fill="url(#a)" stroke="url(#b)"/>';
    const [found] = await find(both);
    expect(found!.data).toMatchObject({ count: 2, targets: ['a', 'b'] });
    expect(found!.message).toMatch(/^1 shape in layer "Print" is painted with "#a" \(and 1 more\)/);
  });
});
