// From drop to zip, for each sample: what the page gives is what the command line writes, byte for byte.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join, resolve } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeWith } from '../house/witnesses.js';
import {
  dropFiles,
  giveFiles,
  listOutside,
  readGiven,
  SINGLE,
  samplePaths,
  startBrowser,
  takeZip,
  waitDone,
  watchPage,
} from './open-page.js';

describeWith('chromium', 'the page, from drop to zip', () => {
  let browser: Browser;
  const folder = mkdtempSync(join(tmpdir(), 'pinbar-page-'));
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  /** Has the command line do what the page says that it would, beside the drawing and the files that are not made by it. */
  function runCommand(
    command: string,
    beside: Readonly<Record<string, Uint8Array>>,
  ): Readonly<Record<string, Uint8Array>> {
    const place = mkdtempSync(join(folder, 'job-'));
    for (const [name, bytes] of Object.entries(beside)) writeFileSync(join(place, name), bytes);
    expect(command).toMatch(/^pinbar split /);
    const words = command.replace(/^pinbar/, `'${process.execPath}' '${resolve('bin/pinbar.js')}'`);
    const { status, stderr } = spawnSync('sh', ['-c', `${words} --out out`], { cwd: place, encoding: 'utf8' });
    expect(stderr).not.toContain('fault of pinbar');
    expect(status).toBe(0);
    const names = readdirSync(join(place, 'out'));
    return Object.fromEntries(names.map((name) => [name, new Uint8Array(readFileSync(join(place, 'out', name)))]));
  }

  /** Holds the zip of the page against what the command writes; returns the names in the zip. */
  async function compareWithCommand(page: Parameters<typeof takeZip>[0], drawing: string): Promise<readonly string[]> {
    const files = await takeZip(page);
    const given = Object.keys(files).filter((name) => /\.(?:ticket|profile)\.json$/.test(name));
    const beside = Object.fromEntries(given.map((name) => [name, files[name]!]));
    const command = (await page.textContent('.command')) ?? '';
    const written = runCommand(command, { ...beside, [basename(drawing)]: readFileSync(drawing) });
    const made = Object.keys(files).filter((name) => !given.includes(name));
    expect(made.sort()).toEqual(Object.keys(written).sort());
    for (const [name, bytes] of Object.entries(written)) {
      expect(Buffer.compare(files[name]!, bytes), name).toBe(0);
    }
    return Object.keys(files);
  }

  it.each(['tuck-carton', 'sleeve', 'hang-tag'])('%s', async (name) => {
    const { page, requests, troubles } = await watchPage(browser);
    await page.goto(SINGLE);
    const paths = samplePaths(name);
    await dropFiles(page, readGiven(paths));
    expect(await page.textContent('.verdict')).toBe('In register');
    const names = await compareWithCommand(page, paths[0]!);
    expect(names.length).toBeGreaterThan(5);
    expect(listOutside(requests)).toEqual([]);
    expect(troubles).toEqual([]);
    await page.context().close();
  });

  it('copies on a sheet, asked for by hand', async () => {
    const { page, troubles } = await watchPage(browser);
    await page.goto(SINGLE);
    await giveFiles(page, ['samples/tuck-carton.svg']);
    await page.check('#sheet-wanted');
    await waitDone(page);
    for (const [field, value] of [
      ['widthMm', '500'],
      ['heightMm', '700'],
      ['marginsMm', '15'],
      ['gutterMm', '6'],
    ]) {
      await page.fill(`#sheet-${field}`, value!);
      await page.press(`#sheet-${field}`, 'Enter');
      await waitDone(page);
    }
    expect(await page.textContent('.verdict')).toBe('In register');
    expect(await page.textContent('#sheet-found')).toMatch(/^[2-9] copies; \d\d % of the sheet is blank\.$/);
    await compareWithCommand(page, 'samples/tuck-carton.svg');
    expect(troubles).toEqual([]);
    await page.context().close();
  });

  it('the proof as a page and a run sheet go along', async () => {
    const { page, troubles } = await watchPage(browser);
    await page.goto(SINGLE);
    await giveFiles(page, ['samples/tuck-carton.svg']);
    await page.check('#along-proof');
    await waitDone(page);
    await page.setInputFiles('#along-profile', 'samples/shop.profile.json');
    await page.waitForSelector('#along-machine');
    await page.fill('#along-sheets', '120');
    await page.press('#along-sheets', 'Enter');
    await waitDone(page);
    const names = await compareWithCommand(page, 'samples/tuck-carton.svg');
    expect(names).toEqual(
      expect.arrayContaining(['proof.html', 'run-sheet.html', 'run-sheet.json', 'shop.profile.json']),
    );
    expect(await page.textContent('.command')).toContain('--sheets 120');
    expect(troubles).toEqual([]);
    await page.context().close();
  });

  it('a drawing with a picture beside it, by its chooser', async () => {
    const { page } = await watchPage(browser);
    await page.goto(SINGLE);
    const ticket = join(folder, 'embed.json');
    writeFileSync(ticket, '{"pinbar": 1, "linkedPictures": "embed"}');
    await giveFiles(page, ['samples/label-sheet.svg', 'samples/leaf.png', ticket]);
    const words = await page.textContent('.verdict');
    expect(words).toBe('In register');
    await page.context().close();
  });

  it('a drawing that is not fit says what the command says, and gives nothing', async () => {
    const { page } = await watchPage(browser);
    await page.goto(SINGLE);
    const paths = samplePaths('bad-carton');
    await giveFiles(page, paths);
    const command = ['split', paths[0]!, '--ticket', paths[1]!, '--dry-run', '--json'];
    const { stdout } = spawnSync(process.execPath, ['bin/pinbar.js', ...command], { encoding: 'utf8' });
    const told = JSON.parse(stdout) as { findings: readonly { message: string }[] };
    const shown = await page.locator('.finding p:nth-child(2)').allTextContents();
    expect([...shown].sort()).toEqual(told.findings.map(({ message }) => message).sort());
    expect(await page.locator('#take a').count()).toBe(0);
    await page.context().close();
  });

  it('a file that cannot be read shows the line', async () => {
    const { page } = await watchPage(browser);
    await page.goto(SINGLE);
    const bad = '<svg xmlns="http://www.w3.org/2000/svg"\n width="9mm" height="9mm">\n<g id="Cut"><rect </g>\n</svg>';
    await dropFiles(page, [{ name: 'bad.svg', bytes: Buffer.from(bad) }]);
    expect(await page.textContent('.verdict')).toBe('Cannot be read');
    expect(await page.textContent('.excerpt-at')).toBe('<g id="Cut"><rect </g>');
    expect(await page.textContent('.fault code')).toBe('source/malformed');
    await page.context().close();
  });

  it('lines moved by hand, taken back and done again; the ticket repeats it', async () => {
    const { page } = await watchPage(browser);
    await page.goto(SINGLE);
    await giveFiles(page, ['samples/hang-tag.svg']);
    expect(await page.textContent('.verdict')).toBe('An answer is needed');
    const send = async (row: string, to: string): Promise<void> => {
      await page.locator('.row', { hasText: row }).locator('select').selectOption({ label: to });
      await waitDone(page);
    };
    await send('#1c7ed6', 'crease');
    await send('#d9480f', 'cut');
    const before = await page.locator('.sheet strong').allTextContents();
    expect(before).toContain('crease');
    expect(before).toContain('cut');
    await page.click('text=Take back');
    await waitDone(page);
    expect(await page.locator('.sheet strong').allTextContents()).not.toContain('cut');
    await page.click('text=Do again');
    await waitDone(page);
    expect(await page.locator('.sheet strong').allTextContents()).toEqual(before);
    await page.context().close();
  });
});
