// Files that nobody drops on purpose: none of them stops a watcher, and none is passed over in silence.
import { readFileSync, statSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { drop, listRoom, openShop, readJournal, smallArt, watchOnce } from './shop.js';

describe('a file that is larger', () => {
  it('than any memory is set aside unread, and its neighbours are done', async () => {
    const shop = openShop();
    drop(shop, { 'a.svg': smallArt(1), 'huge.svg': '<svg>', 'b.svg': smallArt(2), 'b.ticket.json': '{' });
    // Holes: neither takes room on the disk.
    truncateSync(join(shop, 'in/huge.svg'), 6_000_000_000);
    truncateSync(join(shop, 'in/b.ticket.json'), 6_000_000_000);
    const { counts } = await watchOnce(shop);
    expect(counts).toMatchObject({ done: 1, failed: 1, waiting: 1, left: 0 });
    expect(statSync(join(shop, 'failed/huge/huge.svg')).size).toBe(6_000_000_000);
    expect(readJournal(shop).find(({ name }) => name === 'huge.svg')).toMatchObject({
      ending: 'failed',
      bytes: 6_000_000_000,
      codes: ['limit/bytes'],
    });
  });

  it('than --limit allows is set aside with what to do', async () => {
    const shop = openShop();
    drop(shop, { 'a.svg': smallArt(1) });
    const bytes = smallArt(1).length;
    expect((await watchOnce(shop, { limits: { bytes: bytes - 1 } })).counts).toMatchObject({ failed: 1 });
    expect(readFileSync(join(shop, 'failed/a/report/report.txt'), 'utf8')).toContain(`--limit bytes=${bytes}`);
    drop(shop, { 'a.svg': smallArt(1) });
    expect((await watchOnce(shop, { limits: { bytes: 20 * bytes } })).counts).toMatchObject({ done: 1 });
  });

  it('than a bound of the reader other than its bytes is taken, and told in a report', async () => {
    const shop = openShop();
    // A tag in a comment has the strict reader asked whether the end is there, and that stops at its own bound.
    drop(shop, { 'deep.svg': `<svg><!-- <svg -->${'<g>'.repeat(300)}${'</g>'.repeat(300)}</svg>` });
    expect((await watchOnce(shop)).counts).toMatchObject({ failed: 1, left: 0 });
    expect(listRoom(shop, 'failed')).toEqual(['deep']);
    expect(readJournal(shop)).toMatchObject([{ codes: ['limit/depth'] }]);
  });
});
