// Bytes of a file to a scanned source.
import { type Finding, finding } from '../model/finding.js';
import { PinbarError } from '../model/trouble.js';
import { decodeBytes } from './decode-bytes.js';
import { deliveredOffset } from './delivered.js';
import { expandEntities } from './expand-entities.js';
import { gunzipBytes, isGzip } from './gunzip-bytes.js';
import { locate } from './locate.js';
import { faultAt } from './malformed.js';
import { elementName } from './read-attribute.js';
import { refuseOthers } from './refuse-others.js';
import { scanElements } from './scan-elements.js';
import { findDoctype } from './scan-markup.js';
import { DEFAULT_LIMITS, type Limits, type Source, SVG_NAMESPACE } from './source.js';

/** Options of `readSource`. */
export interface ReadOptions {
  readonly limits?: Partial<Limits>;
}

function checkSize(bytes: Uint8Array, limits: Limits): void {
  if (bytes.length <= limits.bytes) return;
  throw new PinbarError('limit/bytes', {
    message: `The file has ${bytes.length} bytes; ${limits.bytes} are allowed.`,
    remedy: 'If the file is sound, raise the bound with --limit bytes=NUMBER.',
    data: { bytes: bytes.length, allowed: limits.bytes },
  });
}

/** Plain bytes, whatever subclass the caller handed in: its methods may cost or differ. */
function toPlain(bytes: Uint8Array): Uint8Array {
  return bytes.constructor === Uint8Array ? bytes : new Uint8Array(bytes.buffer, bytes.byteOffset, bytes.length);
}

/** What an SVG file must be: its root, and whether the root has the SVG namespace. */
function judgeRoot(source: Source, delivered: Uint8Array): boolean {
  const root = elementName(source, 0);
  if (root.local === 'svg' && root.namespace === SVG_NAMESPACE) return false;
  if (root.qualified === 'svg' && root.namespace === '') return true;
  const offset = deliveredOffset(source.expansions, source.elements.start[0]!);
  throw faultAt('source/not-svg', delivered, offset, {
    message: `the root element is <${root.qualified}>, not <svg> of the SVG namespace.`,
    remedy: 'Hand in an SVG file.',
  });
}

function describe(source: Source, transcoded: boolean): readonly Finding[] {
  const findings: Finding[] = [];
  if (transcoded) {
    const message = `The file is in ${source.encoding}; the sheets are written in UTF-8.`;
    findings.push(finding('source/transcoded', { message, data: { encoding: source.encoding } }));
  }
  if (source.doctype !== null) {
    const message = 'The document type is left out of the sheets; what its entities stand for is written out.';
    findings.push(finding('source/doctype-removed', { message, place: locate(source, source.doctype[0]) }));
  }
  if (source.namespaceMissing) {
    findings.push(
      finding('source/namespace-missing', {
        message: 'The root element lacks the SVG namespace; it is read as SVG, and the sheets get the namespace.',
        remedy: 'Nothing to do; other programs may refuse the original.',
        place: locate(source, source.elements.start[0]!),
      }),
    );
  }
  return findings;
}

/**
 * Reads a file: unpacks, decodes, writes entities out, scans.
 *
 * @param bytes - `.svg` or gzipped `.svgz`; UTF-8, UTF-16 or a declared single-byte encoding.
 * @returns The element table over UTF-8 text, which is a view of `bytes` where these were plain UTF-8.
 * @throws PinbarError with a `source/` or `limit/` code.
 */
export function readSource(bytes: Uint8Array, options: ReadOptions = {}): Source {
  const limits = { ...DEFAULT_LIMITS, ...options.limits };
  checkSize(bytes, limits);
  const gzipped = isGzip(bytes);
  const plain = toPlain(bytes);
  const unpacked = gzipped ? gunzipBytes(plain, limits.unpackedBytes) : plain;
  refuseOthers(unpacked);
  const decoded = decodeBytes(unpacked);
  const doctype = findDoctype(decoded.text);
  const { text, expansions } =
    doctype === null ? { text: decoded.text, expansions: [] } : expandEntities(decoded.text, doctype, limits);
  const delivered = expansions.length === 0 ? undefined : { text: decoded.text, expansions };
  const scan = scanElements(text, { limits, delivered });
  const base = { text, encoding: decoded.encoding, gzipped, expansions, findings: [] };
  const first: Source = { ...base, ...scan, namespaceMissing: false };
  const namespaceMissing = judgeRoot(first, decoded.text);
  const source: Source = namespaceMissing
    ? { ...base, ...scanElements(text, { limits, delivered, assumeSvg: true }), namespaceMissing }
    : first;
  return { ...source, findings: describe(source, decoded.transcoded) };
}
