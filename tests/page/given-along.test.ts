// What a hand gives along with a drawing: numbers, pictures, tickets; and what becomes of what is wrong in it.
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeWith } from '../house/witnesses.js';
import { dropFiles, giveFiles, SINGLE, startBrowser, waitDone, watchPage } from './open-page.js';

const LINE = 'fill="none" stroke="#d6336c" stroke-width="0.3"';
const LEAF = new Uint8Array(readFileSync('samples/leaf.png'));

function drawLabel(href: string): { readonly name: string; readonly bytes: Uint8Array } {
  const text = `<svg xmlns="http://www.w3.org/2000/svg" width="140mm" height="100mm" viewBox="0 0 140 100">
    <g id="Print"><image href="${href}" x="50" y="40" width="20" height="20"/></g>
    <g id="Cut"><rect x="40" y="30" width="60" height="40" ${LINE}/></g></svg>`;
  return { name: 'label.svg', bytes: new Uint8Array(Buffer.from(text)) };
}

async function type(page: Page, field: string, text: string): Promise<void> {
  await page.click(field);
  await page.keyboard.press('Control+a');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
  await waitDone(page);
}

describeWith('chromium', 'the page, given things along', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser?.close());

  it('takes numbers with a comma, and says of what it cannot read what is wanted', async () => {
    const { page, troubles } = await watchPage(browser);
    await page.goto(SINGLE);
    await giveFiles(page, ['samples/tuck-carton.svg']);
    await type(page, '#job-bleedMm', '2,5');
    expect(await page.inputValue('#job-bleedMm')).toBe('2.5');
    await type(page, '#job-bleedMm', '-5');
    expect(await page.textContent('#job-bleedMm-fault')).toBe('A number is wanted here, nought or more, such as 2.5.');
    expect(await page.getAttribute('#job-bleedMm', 'aria-describedby')).toBe('job-bleedMm-fault');
    expect(await page.textContent('.verdict')).toBe('In register');
    await type(page, '#job-bleedMm', '3');
    expect(await page.locator('#job-bleedMm-fault').count()).toBe(0);
    await page.check('#sheet-wanted');
    await waitDone(page);
    await type(page, '#sheet-ups', 'many');
    expect(await page.textContent('#sheet-ups-fault')).toContain('columns by rows');
    await type(page, '#sheet-ups', '1 × 1');
    expect(await page.inputValue('#sheet-ups')).toBe('1x1');
    await page.click('text=Sprache: Deutsch');
    await type(page, '#job-bleedMm', '1.5');
    expect(await page.inputValue('#job-bleedMm')).toBe('1,5');
    expect(troubles).toEqual([]);
    await page.context().close();
  });

  it('shows all that lies on the board, margin and numbers clear of the rulers', async () => {
    const { page } = await watchPage(browser);
    await page.goto(SINGLE);
    await giveFiles(page, ['samples/tuck-carton.svg']);
    for (const margin of ['0', '40']) {
      await type(page, '#job-margin', margin);
      const paper = (await page.locator('.paper').boundingBox())!;
      const board = (await page.locator('.board').boundingBox())!;
      expect(paper.y - board.y).toBeGreaterThan(22 + 20);
      expect(paper.x - board.x).toBeGreaterThan(22 + 20);
      expect(paper.y + paper.height).toBeLessThan(board.y + board.height);
      expect(paper.x + paper.width).toBeLessThan(board.x + board.width);
    }
    await page.context().close();
  });

  it('takes a number back by keys where it was typed, and what is being typed before that', async () => {
    const { page } = await watchPage(browser);
    await page.goto(SINGLE);
    await giveFiles(page, ['samples/tuck-carton.svg']);
    await type(page, '#job-bleedMm', '5');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('7');
    await page.keyboard.press('Control+z');
    expect(await page.inputValue('#job-bleedMm')).not.toBe('3');
    expect(await page.locator('text=Take back').isEnabled()).toBe(true);
    await type(page, '#job-bleedMm', '5');
    await page.keyboard.press('Control+z');
    await waitDone(page);
    expect(await page.inputValue('#job-bleedMm')).toBe('3');
    expect(await page.locator('text=Take back').isEnabled()).toBe(false);
    await page.context().close();
  });

  it('takes a picture that comes after its drawing', async () => {
    const { page, troubles } = await watchPage(browser);
    await page.goto(SINGLE);
    await dropFiles(page, [drawLabel('leaf.png')]);
    await page.selectOption('#job-pictures', 'embed');
    await waitDone(page);
    expect(await page.locator('.finding code').allTextContents()).toContain('split/picture-refused');
    await dropFiles(page, [{ name: 'leaf.png', bytes: LEAF }]);
    expect(await page.textContent('h1')).toBe('pinbar label.svg');
    expect(await page.textContent('.verdict')).toBe('In register');
    expect(troubles).toEqual([]);
    await page.context().close();
  });

  it('takes a picture whose name holds a percent sign of its own', async () => {
    const { page } = await watchPage(browser);
    await page.goto(SINGLE);
    await dropFiles(page, [drawLabel('100%.png'), { name: '100%.png', bytes: LEAF }]);
    await page.selectOption('#job-pictures', 'embed');
    await waitDone(page);
    expect(await page.textContent('.verdict')).toBe('In register');
    await page.context().close();
  });

  it('shows the lines of a ticket that cannot be read, and goes on without it', async () => {
    const { page } = await watchPage(browser);
    await page.goto(SINGLE);
    await giveFiles(page, ['samples/tuck-carton.svg']);
    const field = page.locator('.ticket-acts input').first();
    await field.setInputFiles('samples/tuck-carton.sheet.json');
    await waitDone(page);
    // Mended, it may be chosen once more.
    expect(await field.inputValue()).toBe('');
    await page.click('text=Take back');
    await waitDone(page);
    const broken = Buffer.from('{\n "pinbar": 1,\n "rules": [}\n');
    await dropFiles(page, [{ name: 'broken.json', bytes: new Uint8Array(broken) }]);
    expect(await page.textContent('.fault code')).toBe('ticket/not-json');
    expect(await page.textContent('.excerpt-at')).toBe(' "rules": [}');
    await page.click('text=Go on without it');
    expect(await page.textContent('.verdict')).toBe('In register');
    expect(await page.locator('.fault').count()).toBe(0);
    expect(await page.locator('#take .main-act').count()).toBe(1);
    await page.context().close();
  });

  it('says once which line of a drawing cannot be read', async () => {
    const { page } = await watchPage(browser);
    await page.goto(SINGLE);
    const broken = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg">\n<path d="M0 0"></g>\n</svg>');
    await dropFiles(page, [{ name: 'broken.svg', bytes: new Uint8Array(broken) }]);
    expect(await page.textContent('.excerpt-at')).toBe('<path d="M0 0"></g>');
    expect(await page.textContent('.fault-message .finding-what')).toMatch(/they must match\.$/);
    await page.context().close();
  });

  it('works in a browser that keeps nothing', async () => {
    const { page, troubles } = await watchPage(browser);
    await page.addInitScript(`Object.defineProperty(window, 'localStorage', {
      get() { throw new DOMException('denied', 'SecurityError'); } })`);
    await page.goto(SINGLE);
    await giveFiles(page, ['samples/tuck-carton.svg']);
    await page.click('text=Light or dark');
    await page.check('#job-part-paint');
    await waitDone(page);
    expect(await page.textContent('.verdict')).toBe('In register');
    expect(troubles).toEqual([]);
    await page.context().close();
  });
});
