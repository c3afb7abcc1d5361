// The page without a mouse, for a screen reader, enlarged, and on narrow windows.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { unzipSync } from 'fflate';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeWith } from '../house/witnesses.js';
import { giveFiles, SINGLE, samplePaths, startBrowser, takeZip, waitDone, watchPage } from './open-page.js';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds serious or worse. */
async function listSerious(page: Page): Promise<readonly string[]> {
  await page.evaluate(AXE);
  const found = await page.evaluate<readonly { impact: string; id: string; where: string }[]>(
    `axe.run(document).then(({ violations }) => violations.map(({ impact, id, nodes }) =>
      ({ impact, id, where: nodes.slice(0, 3).map(({ html }) => html.slice(0, 160)).join(' | ') })))`,
  );
  return found
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, where }) => `${id}: ${where}`);
}

/** Presses Tab until what has the focus fits a selector. */
async function tabTo(page: Page, selector: string, most = 120): Promise<void> {
  for (let i = 0; i < most; i += 1) {
    await page.keyboard.press('Tab');
    if (await page.evaluate(`document.activeElement?.matches(${JSON.stringify(selector)}) ?? false`)) return;
  }
  throw new Error(`no way to ${selector} by Tab`);
}

describeWith('chromium', 'the page, without a mouse', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser?.close());

  it('is sound for a screen reader: at work and stopped', async () => {
    const { page } = await watchPage(browser);
    // The worker is never told to split: the page stays at work.
    await page.addInitScript(`{
      const Own = self.Worker;
      self.Worker = class extends Own {
        postMessage(message, transfer) {
          if (message.kind !== 'split') super.postMessage(message, transfer);
        }
      };
    }`);
    await page.goto(SINGLE);
    await page.setInputFiles('input[type=file]', 'samples/tuck-carton.svg');
    await page.waitForSelector('.board');
    expect(await page.textContent('.verdict')).toMatch(/^Working/);
    expect(await listSerious(page)).toEqual([]);
    await page.click('text=Stop');
    expect(await page.textContent('.verdict')).toBe('Stopped.');
    expect(await listSerious(page)).toEqual([]);
    await page.context().close();
  });

  it('is sound for a screen reader with all fields open, light and dark, in German', async () => {
    const { page } = await watchPage(browser);
    await page.goto(SINGLE);
    await giveFiles(page, ['samples/tuck-carton.svg']);
    await page.selectOption('#lines-order', 'restarted');
    await waitDone(page);
    await page.selectOption('#ties-crease', 'pattern');
    await waitDone(page);
    await page.selectOption('#ties-cut', 'hold');
    await waitDone(page);
    await page.setInputFiles('#along-profile', 'samples/shop.profile.json');
    await page.waitForSelector('#along-machine');
    await waitDone(page);
    expect(await page.locator('.effect').count()).toBe(2);
    expect(await listSerious(page)).toEqual([]);
    await page.click('text=Light or dark');
    await page.click('text=Sprache: Deutsch');
    expect(await page.textContent('#effect-cut')).toMatch(/ \d+ von |Stege an \d+ von \d+ Umrissen/);
    expect(await listSerious(page)).toEqual([]);
    await page.context().close();
  });

  it('is German where it is German: findings say in their own words what they say in English', async () => {
    const { page } = await watchPage(browser);
    await page.goto(SINGLE);
    await giveFiles(page, samplePaths('bad-carton'));
    const english = await page.locator('.finding-what').allTextContents();
    await page.click('text=Sprache: Deutsch');
    const german = await page.locator('.finding-what').allTextContents();
    expect(german).toHaveLength(english.length);
    expect(german).toContain('Formen, die zwei Durchgänge beanspruchen.');
    expect(german.filter((text) => english.includes(text))).toEqual([]);
    // What was said in English stands beneath, and is marked as English.
    const own = await page.locator('.wording [lang=en]').allTextContents();
    expect(own.map((text, at) => text.startsWith(english[at]!))).toEqual(english.map(() => true));
    const rest = await page.evaluate<string>(`(() => {
      const copy = document.querySelector('.reading').cloneNode(true);
      for (const one of copy.querySelectorAll('[lang=en], code, .row-name, select, pre')) one.remove();
      return copy.textContent;
    })()`);
    expect(rest.match(/\b(?:the|and|shapes|which|since)\b/g) ?? []).toEqual([]);
    await page.context().close();
  });

  it('shows a fault where a hand is far down, and leads to it', async () => {
    const { page } = await watchPage(browser);
    await page.goto(SINGLE);
    await giveFiles(page, ['samples/tuck-carton.svg']);
    await page.locator('#along-profile').scrollIntoViewIfNeeded();
    await page.setInputFiles('#along-profile', 'samples/tuck-carton.svg');
    await page.waitForSelector('.fault');
    expect(await page.textContent('.fault code')).toBe('profile/not-json');
    const top = await page.evaluate<number>(`document.querySelector('.fault').getBoundingClientRect().top`);
    expect(top).toBeGreaterThan(0);
    expect(top).toBeLessThan(800);
    expect(await page.textContent('.ways-verdict')).toBe('Cannot be read');
    await page.click('text=See why');
    expect(await page.evaluate('document.activeElement.id')).toBe('fault-title');
    await page.context().close();
  });

  it('shows on a narrow window the place that a finding leads to', async () => {
    const { page } = await watchPage(browser, { width: 390, height: 844 });
    await page.goto(SINGLE);
    await giveFiles(page, samplePaths('bad-carton'));
    await page.click('.next');
    const boardTop = (): Promise<number> =>
      page.evaluate(`document.querySelector('.board').getBoundingClientRect().bottom`);
    expect(await page.evaluate('document.activeElement.id')).toBe('found-title');
    expect(await boardTop()).toBeLessThan(0);
    await page.click('.findings .badge >> nth=1');
    const place = await page.locator('.board .badge-chosen').first().boundingBox();
    expect(place!.y).toBeGreaterThan(0);
    expect(place!.y).toBeLessThan(844);
    await page.context().close();
  });

  it('is sound for a screen reader: empty, with findings, with a fault; light and dark; in German', async () => {
    const { page } = await watchPage(browser);
    await page.goto(SINGLE);
    expect(await listSerious(page)).toEqual([]);
    await giveFiles(page, samplePaths('bad-carton'));
    expect(await listSerious(page)).toEqual([]);
    await page.click('text=Light or dark');
    expect(await page.evaluate('document.documentElement.dataset.theme')).toBe('dark');
    expect(await listSerious(page)).toEqual([]);
    await page.click('text=Sprache: Deutsch');
    expect(await page.evaluate('document.documentElement.lang')).toBe('de');
    expect(await page.textContent('#found-title')).toBe('Was gefunden wurde (8)');
    await page.click('text=Andere Zeichnung');
    await giveFiles(page, ['samples/tuck-carton.svg']);
    expect(await page.textContent('.verdict')).toBe('Passgenau');
    expect(await listSerious(page)).toEqual([]);
    await page.click('text=Andere Zeichnung');
    await giveFiles(page, ['package.json']);
    expect(await page.textContent('.fault h2')).toBe('Nicht lesbar');
    expect(await listSerious(page)).toEqual([]);
    await page.context().close();
  });

  it('goes from the drawing to the zip by keys alone', async () => {
    const { page } = await watchPage(browser);
    await page.goto(SINGLE);
    // Asked for well before the key: the browser has to be told to hand its chooser over.
    const chosen = page.waitForEvent('filechooser');
    await tabTo(page, 'input[type=file]');
    await page.keyboard.press('Enter');
    const chooser = await chosen;
    await chooser.setFiles(['samples/tuck-carton.svg']);
    await waitDone(page);
    // The board by its keys.
    await tabTo(page, '.board');
    const scale = () => page.textContent('.scale');
    const whole = await scale();
    await page.keyboard.press('1');
    expect(await scale()).toBe('100 %');
    await page.keyboard.press('+');
    expect(await scale()).toBe('125 %');
    await page.keyboard.press('0');
    expect(await scale()).toBe(whole);
    const placeOf = (): Promise<string> => page.evaluate(`document.querySelector('.paper').style.left`);
    const before = Number.parseFloat(await placeOf());
    await page.keyboard.press('ArrowRight');
    expect(Number.parseFloat(await placeOf())).toBeCloseTo(before - 60, 3);
    // A layer goes to another pass, and back.
    await tabTo(page, 'select[aria-label="Sun goes to"]');
    await page.keyboard.type('varnish');
    await waitDone(page);
    expect(await page.locator('.sheet strong').allTextContents()).toEqual(['crease', 'print', 'varnish', 'cut']);
    await page.keyboard.press('Control+z');
    await waitDone(page);
    expect(await page.locator('.sheet strong').allTextContents()).toEqual(['crease', 'print', 'cut']);
    await tabTo(page, '#take .main-act');
    const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
    expect(download.suggestedFilename()).toBe('tuck-carton.passes.zip');
    await page.context().close();
  });

  it('asks for order and ties by keys alone, and leads to what was found and to the files', async () => {
    const { page } = await watchPage(browser);
    await page.goto(SINGLE);
    await giveFiles(page, ['samples/tuck-carton.svg']);
    await tabTo(page, '.ways a[href="#job-title"]');
    await page.keyboard.press('Enter');
    expect(await page.evaluate('document.activeElement.id')).toBe('job-title');
    await tabTo(page, '#lines-order');
    await page.keyboard.press('ArrowDown');
    await waitDone(page);
    // Still there: the next key goes on from here.
    expect(await page.evaluate('document.activeElement.id')).toBe('lines-order');
    await tabTo(page, '#ties-cut');
    await page.keyboard.type('few');
    await waitDone(page);
    await tabTo(page, '#ties-cut-leastPerPiece');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('6');
    await page.keyboard.press('Tab');
    await waitDone(page);
    expect(await page.textContent('#effect-cut')).toContain('Way of the lifted tool');
    await tabTo(page, '#take .main-act');
    const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
    const zip = unzipSync(readFileSync(await download.path()));
    const ticket = JSON.parse(Buffer.from(zip['tuck-carton.ticket.json']!).toString('utf8'));
    expect(ticket.sequence.restartContours).toBe(false);
    expect(ticket.ties).toMatchObject([{ pass: 'cut', mode: 'hold', leastPerPiece: 6 }]);
    await page.context().close();
  });

  it.each([
    ['a wide window', 1280, 800, 1],
    ['twice as large', 640, 400, 2],
    ['a tablet', 768, 1024, 1],
    ['a telephone', 390, 844, 1],
    ['a narrow one, in German', 320, 640, 1],
  ])('fits %s', async (name, width, height) => {
    const { page } = await watchPage(browser, { width, height });
    await page.goto(SINGLE);
    if (name.endsWith('German')) await page.click('text=Sprache: Deutsch');
    await giveFiles(page, samplePaths('bad-carton'));
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
    const board = (await page.locator('.board').boundingBox())!;
    expect(board.width).toBeGreaterThan(width / 2);
    expect(board.height).toBeGreaterThan(150);
    await page.context().close();
  });

  it('keeps the ticket, and takes it again', async () => {
    const { page } = await watchPage(browser);
    await page.goto(SINGLE);
    await giveFiles(page, ['samples/tuck-carton.svg']);
    await page.selectOption('select[aria-label="Sun goes to"]', { label: 'varnish' });
    await waitDone(page);
    await page.fill('#job-materialWidthMm', '320');
    await page.press('#job-materialWidthMm', 'Enter');
    await waitDone(page);
    await page.reload();
    await giveFiles(page, ['samples/tuck-carton.svg']);
    expect(await page.locator('.sheet strong').allTextContents()).toEqual(['crease', 'print', 'cut']);
    await page.click('text=Use the last ticket (tuck-carton.svg)');
    await waitDone(page);
    expect(await page.locator('.sheet strong').allTextContents()).toEqual(['crease', 'print', 'varnish', 'cut']);
    expect(await page.inputValue('#job-materialWidthMm')).toBe('320');
    const [saved] = await Promise.all([page.waitForEvent('download'), page.click('text=Save the ticket')]);
    const ticket = readFileSync(await saved.path());
    const files = await takeZip(page);
    expect(Buffer.compare(files['tuck-carton.ticket.json']!, ticket)).toBe(0);
    expect(JSON.parse(ticket.toString()).checks.materialWidthMm).toBe(320);
    await page.context().close();
  });
});
