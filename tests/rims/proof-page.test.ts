// The proof page as its reader sees it: in the browser, from the disk, with and without script.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { DEFAULT_TICKET, split } from '../../src/index.js';
import { describeWith, witnessPath } from '../house/witnesses.js';

const command = resolve(import.meta.dirname, '../../bin/pinbar.js');
const samples = resolve(import.meta.dirname, '../../samples');
const scratch = mkdtempSync(join(tmpdir(), 'pinbar-proof-'));
const path = join(scratch, 'job', 'proof.html');

/** A page, and everything it asked for or complained of. */
interface Opened {
  readonly page: Page;
  readonly asked: string[];
  readonly said: string[];
}

describeWith('chromium', 'the proof page', () => {
  let browser: Browser;

  beforeAll(async () => {
    const carton = join(samples, 'tuck-carton.svg');
    const ran = spawnSync(process.execPath, [
      command,
      'split',
      carton,
      '--out',
      join(scratch, 'job'),
      '--proof',
      'html',
    ]);
    expect(ran.status).toBe(0);
    browser = await chromium.launch({ executablePath: witnessPath('chromium'), args: ['--no-sandbox', '--headless'] });
  });
  afterAll(async () => {
    await browser?.close();
    rmSync(scratch, { recursive: true, force: true });
  });

  async function open(options: BrowserContextOptions = {}, file = path): Promise<Opened> {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 }, ...options });
    const opened: Opened = { page, asked: [], said: [] };
    page.on('request', (request) => opened.asked.push(request.url()));
    page.on('console', (message) => opened.said.push(message.text()));
    page.on('pageerror', (error) => opened.said.push(String(error)));
    await page.goto(pathToFileURL(file).href);
    return opened;
  }

  it('loads nothing, and shows every pass', async () => {
    const { page, asked, said } = await open();
    const sizes = await page
      .locator('.sheet img')
      .evaluateAll((images) => images.map((image) => (image as unknown as { naturalWidth: number }).naturalWidth > 0));
    expect(sizes).toEqual([true, true, true]);
    expect(asked.filter((url) => !url.startsWith('data:'))).toEqual([pathToFileURL(path).href]);
    expect(said).toEqual([]);
  });

  it('shows and hides passes without script', async () => {
    const { page } = await open({ javaScriptEnabled: false });
    const print = page.locator('.pass-2');
    expect(await print.isVisible()).toBe(true);
    await page.getByText('2 print', { exact: true }).click();
    expect(await print.isVisible()).toBe(false);
    expect(await page.locator('.pass-1').isVisible()).toBe(true);
    await page.getByText('2 print', { exact: true }).click();
    expect(await print.isVisible()).toBe(true);
  });

  it('shows the sheet at its true size: 96 px to the inch, as CSS has it', async () => {
    const { page } = await open({ javaScriptEnabled: false });
    await page.getByText('true size', { exact: true }).click();
    const box = await page.locator('.sheet').boundingBox();
    expect(box!.width).toBeCloseTo((240 / 25.4) * 96, 0);
    expect(box!.height).toBeCloseTo((236 / 25.4) * 96, 0);
  });

  it('measures between two clicks', async () => {
    const { page } = await open();
    await page.getByText('four times', { exact: true }).click();
    const perMm = (4 * 96) / 25.4;
    const sheet = page.locator('.sheet');
    await sheet.click({ position: { x: 10 * perMm, y: 10 * perMm } });
    await sheet.click({ position: { x: 40 * perMm, y: 50 * perMm } });
    // 3, 4, 5: a click falls on whole px, so half a px on either side.
    const [apart, across, down] = (await page.locator('.measure').textContent())!.match(/\d+\.\d\d/g)!.map(Number);
    expect(Math.abs(apart! - 50)).toBeLessThan(0.1);
    expect(Math.abs(across! - 30)).toBeLessThan(0.1);
    expect(Math.abs(down! - 40)).toBeLessThan(0.1);
  });

  it('measures with the keyboard alone', async () => {
    const { page } = await open();
    await page.locator('.board').focus();
    await page.keyboard.press('Enter');
    for (let i = 0; i < 3; i += 1) await page.keyboard.press('ArrowRight');
    for (let i = 0; i < 4; i += 1) await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Enter');
    expect(await page.locator('.measure').textContent()).toContain(
      '5.00 mm apart: 3.00 mm across, 4.00 mm down. Set a point to start again.',
    );
  });

  it('is not wider than a small screen', async () => {
    const { page } = await open({ viewport: { width: 390, height: 800 } });
    // Its own text, since the tests know no types of the page.
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(390);
  });
});

it('the proof page comes only when it is asked for, and the same each time', async () => {
  const bytes = readFileSync(join(samples, 'sleeve.svg'));
  const plain = await split(bytes, DEFAULT_TICKET, { proofPage: false });
  expect(plain.proofPage).toBeNull();
  const carton = readFileSync(join(samples, 'tuck-carton.svg'));
  const once = await split(carton, DEFAULT_TICKET, { proofPage: true });
  const again = await split(carton, DEFAULT_TICKET, { proofPage: true });
  expect(once.proofPage).toMatchObject({ name: 'proof.html', mediaType: 'text/html' });
  expect(once.proofPage!.sha256).toBe(again.proofPage!.sha256);
});
