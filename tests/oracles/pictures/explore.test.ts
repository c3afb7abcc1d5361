import { appendFileSync, writeFileSync } from 'node:fs';
import { it } from 'vitest';
import { startRenderer } from './ask-renderer.js';
import * as choose from './choose-files.js';
import { laySheets } from './lay-sheets.js';

it('explores', { timeout: 900000 }, async () => {
  const r = startRenderer();
  const [kind, n] = (process.env.SET ?? 'listSamples:0').split(':');
  const t = Date.now();
  let px = 0;
  const out = `/tmp/w/pic-${kind}.txt`;
  writeFileSync(out, '');
  for (const d of (choose as any)[kind!](Number(n))) {
    const l = await laySheets(d, r, 400000);
    const bad = l.results
      .map((x: any) =>
        x.oddSize
          ? 'odd' + x.size + ':' + x.oddSize
          : `${x.differing}/${x.inked}[${x.blocks}](${x.greatest.toFixed(1)})@${x.at ?? ''}`,
      )
      .join(' ');
    px += l.results.reduce((s, x) => s + x.size[0] * x.size[1], 0);
    appendFileSync(out, `${l.name}\t${l.passes}\t${l.told}\t${l.refused ?? ''}\t${bad}\n`);
  }
  r.stop();
  console.log(kind, (Date.now() - t) / 1000, 's', px);
});
