// Bytes in any encoding pinbar reads, to UTF-8 without a byte order mark.
import { encodeUtf8, strictDecoder } from '../model/platform.js';
import { PinbarError } from '../model/trouble.js';
import { findBadCharacter } from './check-characters.js';
import { findBroken } from './find-broken.js';
import { faultAt } from './malformed.js';

/** Text as UTF-8, and what it was. */
export interface Decoded {
  readonly text: Uint8Array;
  /** Label of the encoding, lower case. */
  readonly encoding: string;
  readonly transcoded: boolean;
}

const SINGLE_BYTE =
  /^(?:us-ascii|ascii|iso-?8859-(?:1|2|3|4|5|6|7|8|10|13|14|15|16)|latin[1-9]|windows-125[0-8]|cp125[0-8]|koi8-[ru]|macintosh|ibm866)$/;

/** The encoding that the first bytes tell: a byte order mark, or `<` in UTF-16 (XML 1.0, appendix F). */
function sniffWide(bytes: Uint8Array): { readonly label: string; readonly skip: number } | null {
  const [a, b, c, d] = bytes;
  if (a === 0xef && b === 0xbb && c === 0xbf) return { label: 'utf-8', skip: 3 };
  if (a === 0xff && b === 0xfe) return { label: 'utf-16le', skip: 2 };
  if (a === 0xfe && b === 0xff) return { label: 'utf-16be', skip: 2 };
  if (a === 0x3c && b === 0 && c !== 0 && d === 0) return { label: 'utf-16le', skip: 0 };
  if (a === 0 && b === 0x3c && c === 0 && d !== 0) return { label: 'utf-16be', skip: 0 };
  return null;
}

/** The encoding named in the XML declaration, lower case, or ''. */
function readDeclared(bytes: Uint8Array): string {
  const head = String.fromCharCode(...bytes.subarray(0, 200));
  return (/^<\?xml[^>]*?\sencoding\s*=\s*["']([A-Za-z][-A-Za-z0-9._]*)["']/.exec(head)?.[1] ?? '').toLowerCase();
}

function unknown(label: string): PinbarError {
  return new PinbarError('source/encoding-unknown', {
    message: `The file says that its encoding is "${label}", which pinbar does not read.`,
    remedy: 'Allowed are UTF-8, UTF-16 and the common single-byte encodings. Save the file as UTF-8.',
    place: { line: 1 },
    data: { encoding: label },
  });
}

/** The first bytes and the declaration name two encodings. */
function broken(label: string): PinbarError {
  return new PinbarError('source/encoding-broken', {
    message: `The bytes of the file do not fit its encoding, ${label}.`,
    remedy: 'Save the file again as UTF-8.',
    place: { line: 1 },
    data: { encoding: label },
  });
}

/** Labels that the WHATWG Encoding Standard reads as windows-1252. */
const WINDOWS_1252 = /^(?:us-ascii|ascii|iso-?8859-1|latin1|windows-1252|cp1252)$/;
/** Characters of the bytes 80 to 9f in windows-1252 (WHATWG Encoding Standard, index windows-1252). */
const UPPER =
  '\u20ac\u0081\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u008d\u017d\u008f' +
  '\u0090\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u009d\u017e\u0178';

/** Some engines (Node 20 among them) decode windows-1252 as if it were ISO 8859-1 and leave control characters there. */
function toWindows1252(control: string): string {
  return UPPER[control.charCodeAt(0) - 0x80]!;
}

/** Only UTF-8 is read in place; everything else is decoded and written as UTF-8. */
function transcode(bytes: Uint8Array, label: string): Uint8Array {
  let decoder: ReturnType<typeof strictDecoder>;
  try {
    decoder = strictDecoder(label);
  } catch {
    throw unknown(label);
  }
  try {
    const decoded = decoder.decode(bytes);
    const text = WINDOWS_1252.test(label) ? decoded.replace(/[\u0080-\u009f]/g, toWindows1252) : decoded;
    return encodeUtf8(text.startsWith('\ufeff') ? text.slice(1) : text);
  } catch {
    throw brokenAt(bytes, label);
  }
}

/** The fault with its place: everything before it can be decoded. */
function brokenAt(bytes: Uint8Array, label: string): PinbarError {
  const before = encodeUtf8(strictDecoder(label).decode(bytes.subarray(0, findBroken(bytes, label))));
  return faultAt('source/encoding-broken', before, before.length, {
    message: `these bytes are not ${label.toUpperCase()}.`,
    remedy: 'Save the file again as UTF-8, or let its first line name the encoding it is in.',
    data: { encoding: label },
  });
}

function chooseEncoding(bytes: Uint8Array): { readonly label: string; readonly skip: number } {
  const sniffed = sniffWide(bytes);
  if (sniffed !== null && sniffed.label !== 'utf-8') return sniffed;
  const skip = sniffed?.skip ?? 0;
  const declared = readDeclared(bytes.subarray(skip));
  if (declared === '' || declared === 'utf-8' || declared === 'utf8') return { label: 'utf-8', skip };
  if (sniffed !== null || /^utf-?16|^ucs|^iso-10646-ucs/.test(declared)) throw broken(declared);
  if (!SINGLE_BYTE.test(declared)) throw unknown(declared);
  return { label: declared, skip };
}

/** Refuses what is not UTF-8 or not a character of XML, with its place. */
function checkCharacters(text: Uint8Array, label: string): void {
  const fault = findBadCharacter(text);
  if (fault === null) return;
  if (fault.kind === 'encoding') {
    throw faultAt('source/encoding-broken', text, fault.offset, {
      message: `these bytes are not ${label.toUpperCase()}.`,
      remedy: 'Save the file again as UTF-8, or let its first line name the encoding it is in.',
    });
  }
  throw faultAt('source/malformed', text, fault.offset, {
    message: 'a character stands here that XML forbids (a control character or U+FFFE, U+FFFF).',
    remedy: 'Take the character out, or save the file again.',
  });
}

/**
 * Decodes a file.
 *
 * UTF-8 is checked and handed on as a view of the input.
 *
 * @throws PinbarError `source/encoding-unknown`, `source/encoding-broken` or `source/malformed`.
 */
export function decodeBytes(bytes: Uint8Array): Decoded {
  const { label, skip } = chooseEncoding(bytes);
  const body = bytes.subarray(skip);
  const text = label === 'utf-8' ? body : transcode(body, label);
  checkCharacters(text, label);
  if (label.startsWith('utf-16')) {
    const declared = readDeclared(text);
    if (declared !== '' && !declared.startsWith('utf-16')) throw broken(declared);
  }
  return { text, encoding: label, transcoded: label !== 'utf-8' };
}
