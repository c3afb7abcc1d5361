// When a delivered file counts as there to its end.
import { describe, expect, it } from 'vitest';
import { endsWell, textEndsWell } from '../../../src/hot-folder/ends-well.js';
import { drop, listRoom, openShop, runCommand, smallArt } from './shop.js';

const ends = (text: string): boolean => textEndsWell(Buffer.from(text));
const filler = 'filler '.repeat(12_000);

describe('a file that is there to its end', () => {
  it('ends with its root, whatever may stand behind that', () => {
    for (const behind of [
      '',
      '\n',
      ' \r\n\t',
      '<!-- a -->',
      '\n<?a b?>\n<!-- c -->\n',
      '<!-- a <!b> -->',
      '<!-- <!-- -->',
      `<!--${filler}-->`,
    ]) {
      expect([behind.slice(0, 20), ends(`<svg><g/></svg>${behind}`)]).toEqual([behind.slice(0, 20), true]);
    }
    expect(ends('<svg/>')).toBe(true);
    expect(ends(`<!--${filler}--><svg><g/></svg>`)).toBe(true);
    expect(ends(`<!--${filler}--><svg/>`)).toBe(true);
  });

  it('has no more to come', () => {
    for (const cut of [
      '',
      '<svg>',
      '<svg><g/>',
      '<svg><!-- </svg>',
      '<svg><style><![CDATA[ </svg>',
      '<svg><g/></svg',
      '<svg><g/><!-- a -->',
      '<svg></svg><!-- a',
      '<svg></svg><?a',
    ]) {
      expect([cut, ends(cut)]).toEqual([cut, false]);
    }
    expect(ends(`<svg><g/><!--${filler}-->`)).toBe(false);
    expect(ends(`<!--${filler}-->`)).toBe(false);
    expect(ends(`<!--${filler}`)).toBe(false);
  });

  it('may be UTF-16', async () => {
    expect(await endsWell(Buffer.from(`\ufeff${smallArt(1)}<!-- a -->`, 'utf16le'))).toBe(true);
    expect(await endsWell(Buffer.from(`\ufeff${smallArt(1).slice(0, -3)}`, 'utf16le'))).toBe(false);
  });

  it('is seen at once where its last lines are set far in', () => {
    const shop = openShop();
    // Run as a command, which can be ended should it never come back.
    drop(shop, { 'deep.svg': smallArt(1).replace('<g id="Cut">', `${' '.repeat(60)}<g id="Cut">`) });
    expect(runCommand('watch', shop, '--once', '--quiet-time', '0.1', '--jobs', '1').status).toBe(0);
    expect(listRoom(shop, 'done')).toEqual(['deep']);
  });
});
