// The browser as a judge: hands it files in batches and brings its answers back.
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { witnessPath } from '../../house/witnesses.js';

/** What the browser says of one file; `refused` where it says nothing else. */
export interface Answer {
  /** Size of the file as a picture, whole px. */
  readonly natural: readonly [number, number];
  readonly refused?: string;
  /** From the user units of the root to the screen. */
  readonly root: readonly number[];
  /** Width and height of the root on the screen, px. */
  readonly rect: readonly [number, number];
  /** Uses whose content was not asked for: why, and the row. */
  readonly left: readonly (readonly [string, number])[];
  /** To the user units of the root. */
  readonly matrices: readonly (readonly number[])[];
  /** See STYLE_NAMES. */
  readonly styles: readonly (readonly string[])[];
  /** Row, flags (1: copied from a use, 2: display none, 4: transform about a loose box), matrix or -1, style, then x, y, width, height where there is a box. */
  readonly shapes: readonly (readonly number[])[];
}

/** What a style holds, in this order. */
export const STYLE_NAMES = [
  ...(['fill', 'stroke', 'fill-opacity', 'stroke-opacity', 'fill-rule', 'stroke-linecap', 'stroke-linejoin'] as const),
  ...(['stroke-miterlimit', 'opacity', 'display', 'visibility'] as const),
  ...(['stroke-width', 'stroke-dasharray', 'stroke-dashoffset'] as const),
] as const;

/** One of STYLE_NAMES. */
export type StyleName = (typeof STYLE_NAMES)[number];

const PAGE = 'http://witness.test/';
/** Files handed over at once. */
const BATCH = 20;

/** Starts the browser. It reaches nothing: every address but that of its one empty page is refused. */
export async function openBrowser(): Promise<{ readonly browser: Browser; readonly page: Page }> {
  const browser = await chromium.launch({
    executablePath: witnessPath('chromium'),
    args: ['--no-sandbox', '--headless', '--force-device-scale-factor=1', '--lang=en-US'],
  });
  const page = await browser.newPage({ viewport: { width: 1000, height: 800 } });
  await page.route('**/*', (route) => {
    const isPage = route.request().url() === PAGE;
    return isPage ? route.fulfill({ contentType: 'text/html', body: '<!doctype html><body>' }) : route.abort();
  });
  await page.goto(PAGE);
  for (const name of ['in-page.js', 'in-page-uses.js', 'in-page-strokes.js'])
    await page.addScriptTag({ path: join(import.meta.dirname, name) });
  return { browser, page };
}

/** What the browser says of files, in their order. */
export async function askBrowser(
  page: Page,
  files: readonly { readonly bytes: Uint8Array }[],
): Promise<readonly Answer[]> {
  const answers: Answer[] = [];
  for (let at = 0; at < files.length; at += BATCH) {
    const batch = files.slice(at, at + BATCH).map(({ bytes }) => Buffer.from(bytes).toString('base64'));
    answers.push(...(await page.evaluate<readonly Answer[]>(`askFiles(${JSON.stringify(batch)})`)));
  }
  return answers;
}
