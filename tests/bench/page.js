// Measures the page in a browser: how long a large drawing takes, and how long the page itself is held up meanwhile.
//
// node tests/bench/page.js [MB ...]; 20 and 50 unless said. Needs Debian's chromium and a build.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { drawLayered } from './draw-layered.js';

const MB = 1024 * 1024;
/** No task of the page's own thread may be longer, ms. */
const LONGEST_TASK_MS = 200;
const PAGE = pathToFileURL(resolve('dist/page/pinbar.html')).href;
const DONE = '.verdict:not(:has(.busy))';

/** The longest tasks of the page's own thread, ms, in time of its processor: other work of the machine lengthens the other time. */
function findLongest(trace) {
  const { traceEvents } = JSON.parse(trace.toString('utf8'));
  const threads = traceEvents.filter(({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain');
  const isPage = ({ pid, tid }) => threads.some((thread) => thread.pid === pid && thread.tid === tid);
  const tasks = traceEvents.filter((event) => event.name === 'RunTask' && isPage(event));
  return Math.round(Math.max(0, ...tasks.map(({ tdur, dur }) => tdur ?? dur ?? 0)) / 1000);
}

const sizes = process.argv.slice(2).map(Number);
const folder = mkdtempSync(join(tmpdir(), 'pinbar-page-bench-'));
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--headless'] });
try {
  for (const size of sizes.length > 0 ? sizes : [20, 50]) {
    const path = join(folder, `drawn-${size}.svg`);
    const ticket = join(folder, 'job.ticket.json');
    writeFileSync(path, drawLayered(size * MB).bytes);
    writeFileSync(ticket, '{"pinbar": 1, "marginMm": 30}');
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    page.on('pageerror', (error) => console.error(error));
    page.on('crash', () => console.error('the page crashed'));
    await page.goto(PAGE);
    const traced = { categories: ['disabled-by-default-devtools.timeline', 'toplevel', '__metadata'] };
    await browser.startTracing(page, traced);
    const begun = Date.now();
    await page.setInputFiles('input[type=file]', [path, ticket]);
    await page.waitForSelector('.board', { timeout: 300_000 });
    const shown = Date.now() - begun;
    await page.waitForSelector(DONE, { timeout: 600_000 });
    const done = Date.now() - begun;
    const atWork = findLongest(await browser.stopTracing());
    await browser.startTracing(page, traced);
    // A hand on it: zoom, pan, the other looks.
    await page.focus('.board');
    for (const key of ['1', '+', 'ArrowLeft', 'ArrowUp', '-', '0']) await page.keyboard.press(key);
    await page.click('text=By pass');
    await page.hover('.row');
    await page.waitForTimeout(2000);
    const inHand = findLongest(await browser.stopTracing());
    const words = await page.textContent('.verdict');
    console.log(
      `${size} MB: seen after ${shown} ms, ${words?.toLowerCase()} after ${done} ms; longest task of the page ${atWork} ms at work, ${inHand} ms in hand`,
    );
    if (size <= 20 && Math.max(atWork, inHand) > LONGEST_TASK_MS) process.exitCode = 1;
    await page.close();
  }
} finally {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
}
