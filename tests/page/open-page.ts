// The page in a browser: opened, given files, asked for what it made.
import { readFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { unzipSync } from 'fflate';
import { type Browser, chromium, type Page } from 'playwright-core';
import { witnessPath } from '../house/witnesses.js';

/** The page as one file. */
export const SINGLE: string = pathToFileURL(resolve('dist/page/pinbar.html')).href;

/** A page, and every address that was asked for, and what went wrong. */
export interface WatchedPage {
  readonly page: Page;
  readonly requests: string[];
  readonly troubles: string[];
}

/** Starts the browser. */
export function startBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: witnessPath('chromium'),
    args: ['--no-sandbox', '--headless', '--force-device-scale-factor=1', '--lang=en-US'],
  });
}

/** A new page that is watched. */
export async function watchPage(browser: Browser, size = { width: 1280, height: 800 }): Promise<WatchedPage> {
  const context = await browser.newContext({ viewport: size, acceptDownloads: true, colorScheme: 'light' });
  const page = await context.newPage();
  const requests: string[] = [];
  const troubles: string[] = [];
  context.on('request', (request) => requests.push(request.url()));
  page.on('pageerror', (error) => troubles.push(error.message));
  page.on('dialog', (dialog) => {
    troubles.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  page.on('console', (message) => {
    if (message.type() === 'error') troubles.push(message.text());
  });
  return { page, requests, troubles };
}

/** The addresses that lead out of the page and its own memory. */
export function listOutside(requests: readonly string[]): readonly string[] {
  return requests.filter((address) => !/^(?:blob|data):/.test(address) && address !== SINGLE);
}

/** Waits until the page has done its work. What was just asked of it is shown first: before that the last verdict still stands. */
export async function waitDone(page: Page): Promise<void> {
  await page.evaluate('new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))');
  await page.waitForSelector('.verdict:not(:has(.busy))', { timeout: 30_000 });
}

/** Gives the page files by its own chooser, and waits. */
export async function giveFiles(page: Page, paths: readonly string[]): Promise<void> {
  await page.setInputFiles('input[type=file]', paths as string[]);
  await waitDone(page);
}

/** Drops files on the page, and waits. */
export async function dropFiles(page: Page, files: readonly { name: string; bytes: Uint8Array }[]): Promise<void> {
  const texts = files.map(({ name, bytes }) => ({ name, base64: Buffer.from(bytes).toString('base64') }));
  // As text: the tests are compiled without the types of a page.
  await page.evaluate(`(() => {
    const transfer = new DataTransfer();
    for (const { name, base64 } of ${JSON.stringify(texts)}) {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      transfer.items.add(new File([bytes], name));
    }
    document.querySelector('.page').dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true }));
  })()`);
  await waitDone(page);
}

/** The files of the zip that the page gives. */
export async function takeZip(page: Page): Promise<Readonly<Record<string, Uint8Array>>> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.click('#take .main-act')]);
  return unzipSync(readFileSync(await download.path()));
}

/** A sample, with its ticket where it has one. */
export function samplePaths(name: string): readonly string[] {
  const drawing = join('samples', `${name}.svg`);
  const ticket = join('samples', `${name}.ticket.json`);
  return name === 'tuck-carton' || name === 'label-sheet' ? [drawing] : [drawing, ticket];
}

/** Names and bytes of files on the disk. */
export function readGiven(paths: readonly string[]): readonly { name: string; bytes: Uint8Array }[] {
  return paths.map((path) => ({ name: basename(path), bytes: readFileSync(path) }));
}
