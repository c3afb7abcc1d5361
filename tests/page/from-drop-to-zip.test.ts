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

/** Samples that are in register as they come, with the ticket beside them. */
const DONE_SAMPLES = ['tuck-carton', 'sleeve', 'hang-tag', 'counters', 'label-sheet'];

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
  async function compareWithCommand(
    page: Parameters<typeof takeZip>[0],
    drawing: string,
    others: readonly string[] = [],
  ): Promise<readonly string[]> {
    const files = await takeZip(page);
    const given = Object.keys(files).filter((name) => /\.(?:ticket|profile)\.json$/.test(name));
    const beside = Object.fromEntries(given.map((name) => [name, files[name]!]));
    const pictures = Object.fromEntries(others.map((path) => [basename(path), readFileSync(path)]));
    const command = (await page.textContent('.command')) ?? '';
    const written = runCommand(command, { ...beside, ...pictures, [basename(drawing)]: readFileSync(drawing) });
    const made = Object.keys(files).filter((name) => !given.includes(name));
    expect(made.sort()).toEqual(Object.keys(written).sort());
    for (const [name, bytes] of Object.entries(written)) {
      expect(Buffer.compare(files[name]!, bytes), name).toBe(0);
    }
    return Object.keys(files);
  }

  it.each(DONE_SAMPLES)('%s', async (name) => {
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
    // One copy until the rest is said: the most are looked for anew with each step.
    for (const [field, value] of [
      ['ups', '1'],
      ['widthMm', '500'],
      ['heightMm', '700'],
      ['marginsMm', '15'],
      ['gutterMm', '6'],
      ['ups', 'max'],
    ]) {
      await page.fill(`#sheet-${field}`, value!);
      await page.press(`#sheet-${field}`, 'Enter');
      await waitDone(page);
    }
    expect(await page.textContent('.verdict')).toBe('In register');
    expect(await page.textContent('#sheet-found')).toMatch(/^Copies: [2-9]\. Their blanks take \d\d % of the sheet\.$/);
    await compareWithCommand(page, 'samples/tuck-carton.svg');
    expect(troubles).toEqual([]);
    await page.context().close();
  });

  it('all that a sheet knows, asked for by hand', async () => {
    const { page, troubles } = await watchPage(browser);
    await page.goto(SINGLE);
    await giveFiles(page, ['samples/label-sheet.svg', 'samples/tuck-carton.sheet.json']);
    for (const [field, value] of [
      ['ups', '2x1'],
      ['gutterMm', '6'],
      ['gutterYMm', '8'],
      ['scale', '0.8'],
    ]) {
      await page.fill(`#sheet-${field}`, value!);
      await page.press(`#sheet-${field}`, 'Enter');
      await waitDone(page);
    }
    await page.selectOption('#sheet-turn', '0');
    await page.selectOption('#sheet-place', 'origin');
    await page.check('#sheet-copyMark');
    await page.selectOption('#job-witness', 'always');
    await waitDone(page);
    expect(await page.textContent('.verdict')).toBe('In register');
    expect(await page.textContent('#sheet-found')).toMatch(/^Copies: 2\./);
    await compareWithCommand(page, 'samples/label-sheet.svg');
    const ticket = (await takeZip(page))['label-sheet.ticket.json']!;
    const { sheet, witness } = JSON.parse(Buffer.from(ticket).toString('utf8')) as Record<string, unknown>;
    expect(witness).toBe('always');
    expect(sheet).toMatchObject({
      gutterMm: 6,
      gutterXMm: 6,
      gutterYMm: 8,
      ups: '2x1',
      turn: 0,
      place: 'origin',
      copyMark: true,
      scale: 0.8,
    });
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
    const drawing = join(folder, 'leaf-label.svg');
    const line = 'fill="none" stroke="#d6336c" stroke-width="0.3"';
    writeFileSync(
      drawing,
      `<svg xmlns="http://www.w3.org/2000/svg" width="140mm" height="100mm" viewBox="0 0 140 100">
      <g id="Print"><image href="leaf.png" x="50" y="40" width="20" height="20"/></g>
      <g id="Cut"><rect x="40" y="30" width="60" height="40" ${line}/></g></svg>`,
    );
    await giveFiles(page, [drawing, 'samples/leaf.png']);
    expect(await page.textContent('.verdict')).toBe('An answer is needed');
    await page.selectOption('#job-pictures', 'embed');
    await waitDone(page);
    expect(await page.textContent('.verdict')).toBe('In register');
    const names = await compareWithCommand(page, drawing, ['samples/leaf.png']);
    expect(names).toContain('leaf-label.1-print.svg');
    await page.context().close();
  });

  it('has had every sample: those done as they come, and the one that is not fit', () => {
    const drawn = readdirSync('samples').flatMap((name) => (name.endsWith('.svg') ? [name.slice(0, -4)] : []));
    expect(drawn.sort()).toEqual([...DONE_SAMPLES, 'bad-carton'].sort());
  });

  it('order and ties of the tool passes, asked for by hand; what came of them is told in numbers', async () => {
    const { page, troubles } = await watchPage(browser);
    await page.goto(SINGLE);
    await giveFiles(page, ['samples/tuck-carton.svg']);
    const choose = async (field: string, word: string): Promise<void> => {
      await page.selectOption(field, word);
      await waitDone(page);
    };
    const fill = async (field: string, text: string): Promise<void> => {
      await page.fill(field, text);
      await page.press(field, 'Enter');
      await waitDone(page);
    };
    await choose('#lines-order', 'restarted');
    await choose('#lines-origin', 'bottom-right');
    await page.uncheck('#order-cut');
    await waitDone(page);
    await choose('#ties-crease', 'pattern');
    await fill('#ties-crease-cutMm', '4');
    await choose('#ties-crease-endsWith', 'tie');
    await choose('#ties-cut', 'hold');
    await fill('#ties-cut-leastPerPiece', '5');
    await page.check('#ties-cut-alone');
    await waitDone(page);
    expect(await page.textContent('.verdict')).toBe('In register');
    const names = await compareWithCommand(page, 'samples/tuck-carton.svg');
    expect(names).toContain('tuck-carton.3-cut-ties.svg');
    const files = await takeZip(page);
    const read = (name: string): unknown => JSON.parse(Buffer.from(files[name]!).toString('utf8'));
    const ticket = read('tuck-carton.ticket.json') as { sequence: unknown; ties: readonly unknown[] };
    expect(ticket.sequence).toEqual({ passes: ['crease'], origin: 'bottom-right', restartContours: true });
    expect(ticket.ties).toMatchObject([
      { pass: 'crease', mode: 'pattern', cutMm: 4, endsWith: 'tie' },
      { pass: 'cut', mode: 'hold', leastPerPiece: 5, tiesPass: true },
    ]);
    // The numbers shown are those of the manifest.
    const { sequence, ties } = read('manifest.json') as {
      sequence: readonly { travelBeforeMm: number; travelAfterMm: number }[];
      ties: readonly { ties: number; longestFreeMm: number }[];
    };
    expect(sequence).toHaveLength(1);
    const crease = (await page.locator('#effect-crease li').allTextContents()).join(' ');
    expect(crease).toContain(`${sequence[0]!.travelBeforeMm.toFixed(1)} mm before`);
    expect(crease).toContain(`${sequence[0]!.travelAfterMm.toFixed(1)} mm now`);
    const cut = (await page.locator('#effect-cut li').allTextContents()).join(' ');
    expect(ties[1]!.ties).toBeGreaterThanOrEqual(5);
    expect(cut).toContain(`${ties[1]!.ties} ties on`);
    expect(cut).toContain(`longest free stretch is ${ties[1]!.longestFreeMm.toFixed(1)} mm`);
    expect(cut).not.toContain('Way of the lifted tool');
    expect(troubles).toEqual([]);
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
    const shown = await page.locator('.finding-what').allTextContents();
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

  it('says of a large drawing that it is shown by its lines alone, and of no other', async () => {
    const { page } = await watchPage(browser);
    await page.goto(SINGLE);
    await giveFiles(page, ['samples/tuck-carton.svg']);
    expect(await page.locator('#simplified').count()).toBe(0);
    expect(await page.locator('.pictures img').count()).toBe(3);
    // Few lines and many bytes: what counts is how much a browser would have to read.
    const line = 'fill="none" stroke="#d6336c" stroke-width="0.3"';
    const rects = Array.from({ length: 600 }, (_, i) => {
      const [x, y] = [20 + 5 * (i % 20), 20 + 5 * Math.floor(i / 20)];
      return `<rect id="r${i}" class="${'x'.repeat(3600)}" x="${x}" y="${y}" width="3" height="3" ${line}/>`;
    });
    const art = `<svg xmlns="http://www.w3.org/2000/svg" width="140mm" height="190mm" viewBox="0 0 140 190"><g id="Cut">${rects.join('')}</g></svg>`;
    expect(art.length).toBeGreaterThan(2_000_000);
    await page.click('text=Another drawing');
    await dropFiles(page, [{ name: 'large.svg', bytes: Buffer.from(art) }]);
    expect(await page.textContent('.verdict')).toBe('In register');
    expect(await page.textContent('#simplified')).toMatch(
      /^Large drawing: .* within 0\.02 mm\. .* The files are whole/,
    );
    expect(await page.locator('.pictures img').count()).toBe(0);
    await page.click('text=By pass');
    expect(await page.locator('#simplified').count()).toBe(0);
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
