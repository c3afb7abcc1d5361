// The page as `pinbar open` serves it: opens the drawing it was given, asks nobody else, and is small.
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { describeWith } from '../house/witnesses.js';
import { startBrowser, waitDone, watchPage } from './open-page.js';

describeWith('chromium', 'the served page', () => {
  let browser: Browser;
  let command: ChildProcess;
  let address = '';
  beforeAll(async () => {
    browser = await startBrowser();
    const args = ['bin/pinbar.js', 'open', 'samples/tuck-carton.svg', '--no-browser'];
    command = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'ignore'] });
    [address] = (await once(createInterface(command.stdout!), 'line')) as [string];
  });
  afterAll(async () => {
    await browser?.close();
    command?.kill();
  });

  it('opens the drawing it was given, and asks only its own server', async () => {
    const { page, requests, troubles } = await watchPage(browser);
    await page.goto(address);
    await waitDone(page);
    expect(await page.textContent('h1')).toContain('tuck-carton.svg');
    expect(await page.textContent('.verdict')).toBe('In register');
    const outside = requests.filter((one) => !/^(?:blob|data):/.test(one) && !one.startsWith(address));
    expect(outside).toEqual([]);
    expect(requests.filter((one) => one.endsWith('/given'))).toHaveLength(1);
    expect(troubles).toEqual([]);
    await page.context().close();
  });

  it('is nothing to a page of another site', async () => {
    const { page } = await watchPage(browser);
    await page.goto('data:text/html,<title>other</title>');
    const read = await page.evaluate(`fetch('${address}given').then(() => 'read', () => 'refused')`);
    expect(read).toBe('refused');
    await page.setContent(`<iframe src="${address}"></iframe>`);
    await page.waitForTimeout(300);
    const framed = await page.frames()[1]!.content();
    expect(framed).not.toContain('id="page"');
    await page.context().close();
  });
});

describe('what the page weighs', () => {
  const size = (name: string): number => gzipSync(readFileSync(join('dist/page', name)), { level: 9 }).length;
  const parts = readdirSync('dist/page/parts').map((name) => `parts/${name}`);
  const first = ['index.html', ...parts.filter((name) => /\/(?:index|paint-worker)-/.test(name))];

  it('is less than 250 kB before a drawing is there', () => {
    expect(first).toHaveLength(4);
    const total = first.reduce((sum, name) => sum + size(name), 0);
    expect(total).toBeGreaterThan(10_000);
    expect(total).toBeLessThan(250_000);
  });

  it('is less than 400 kB with all that a job needs; the compactor comes only when it is asked for', () => {
    const compactor = parts.filter((name) => /\/svgo/.test(name));
    expect(compactor).toHaveLength(1);
    const job = ['index.html', ...parts.filter((name) => !compactor.includes(name))];
    expect(job.reduce((sum, name) => sum + size(name), 0)).toBeLessThan(400_000);
  });
});
