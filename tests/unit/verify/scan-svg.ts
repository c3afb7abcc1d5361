// Scans SVG text for the tests of the first judge.
import { readSource } from '../../../src/source/read-source.js';
import type { Source } from '../../../src/source/source.js';

/** The content of a root, scanned; line 1 is the root's own. */
export function scanSvg(content: string, attributes = 'width="100mm" height="60mm" viewBox="0 0 100 60"'): Source {
  const names = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" xmlns:x="urn:x"';
  return scanText(`<svg ${names} ${attributes}>\n${content}\n</svg>`);
}

/** A whole file, scanned. */
export function scanText(text: string): Source {
  return readSource(new Uint8Array(Buffer.from(text)));
}
