// CWE-838 and CWE-20: bytes that are not what they say, and files that are cut off.
import { attackEach } from './attack-each.js';
import { drawCarton, drawText, type HostileCase } from './hostile-case.js';

function joinBytes(...parts: readonly (string | readonly number[])[]): Uint8Array {
  return new Uint8Array(Buffer.concat(parts.map((part) => Buffer.from(part as string))));
}

const [BEFORE, AFTER] = drawText({ art: '<desc>@</desc>' }).split('@') as [string, string];

/** Some bytes within the text of an otherwise sound file. */
function withBytes(...bytes: readonly number[]): Uint8Array {
  return joinBytes(BEFORE, bytes, AFTER);
}

function declared(encoding: string, body: string = drawText({ art: '<desc>ä</desc>' })): string {
  return `<?xml version="1.0" encoding="${encoding}"?>\n${body}`;
}

function wide(text: string, isBigEndian = false): Uint8Array {
  const bytes = Buffer.from(text, 'utf16le');
  return new Uint8Array(isBigEndian ? bytes.swap16() : bytes);
}

const BROKEN = 'source/encoding-broken';
const UNKNOWN = 'source/encoding-unknown';
const MALFORMED = 'source/malformed';

const CASES: readonly HostileCase[] = [
  { name: 'nothing at all', make: () => new Uint8Array(0), ends: MALFORMED },
  { name: 'one byte', make: () => new Uint8Array([0x3c]), ends: MALFORMED },
  { name: 'a mark and nothing after it', make: () => new Uint8Array([0xef, 0xbb, 0xbf]), ends: MALFORMED },
  { name: 'eight megabytes of zeros', make: () => new Uint8Array(8_000_000), ends: MALFORMED },
  { name: 'a lone continuation byte', make: () => withBytes(0x80), ends: BROKEN },
  { name: 'an overlong slash', make: () => withBytes(0xc0, 0xaf), ends: BROKEN },
  { name: 'an overlong angle bracket', make: () => withBytes(0xe0, 0x80, 0xbc), ends: BROKEN },
  { name: 'half of a surrogate pair', make: () => withBytes(0xed, 0xa0, 0x80), ends: BROKEN },
  { name: 'a character beyond Unicode', make: () => withBytes(0xf4, 0x90, 0x80, 0x80), ends: BROKEN },
  { name: 'a sequence cut off by a tag', make: () => withBytes(0xf0, 0x9f, 0x98), ends: BROKEN },
  { name: 'a zero byte', make: () => withBytes(0), ends: MALFORMED },
  { name: 'a control character', make: () => withBytes(0x1b), ends: MALFORMED },
  { name: 'a character that is none', make: () => withBytes(0xef, 0xbf, 0xbf), ends: MALFORMED },
  {
    name: 'UTF-16 with a mark',
    make: () => wide(`\ufeff${drawText({ art: '<script>alert(1)</script>' })}`),
    ends: 'in-register source/transcoded split/script-removed',
  },
  {
    name: 'UTF-16 the other way round, without a mark',
    make: () => wide(declared('UTF-16'), true),
    ends: 'in-register source/transcoded',
  },
  {
    name: 'UTF-16 cut off within a character',
    make: () => wide(`\ufeff${drawText({})}`).subarray(0, -1),
    ends: BROKEN,
  },
  { name: 'UTF-16 with half a surrogate pair', make: () => wide(`\ufeff${BEFORE}\ud800${AFTER}`), ends: BROKEN },
  { name: 'UTF-16 that says it is UTF-8', make: () => wide(`\ufeff${declared('UTF-8')}`), ends: BROKEN },
  { name: 'UTF-8 that says it is UTF-16', make: () => joinBytes(declared('UTF-16')), ends: BROKEN },
  { name: 'a mark of UTF-8 and another name', make: () => joinBytes(`\ufeff${declared('ISO-8859-1')}`), ends: BROKEN },
  {
    name: 'ISO 8859-1 with a byte that is a quotation mark in windows-1252',
    make: () => joinBytes(declared('ISO-8859-1', BEFORE), [0xe4, 0x93, 0x81], AFTER),
    ends: 'in-register source/transcoded',
  },
  {
    name: 'windows-1253 with a byte it does not know',
    make: () => joinBytes(declared('windows-1253', BEFORE), [0xd2], AFTER),
    ends: BROKEN,
  },
  {
    name: 'UTF-7, in which a script hides',
    make: () => joinBytes(declared('UTF-7', `${BEFORE}+ADw-script+AD4-${AFTER}`)),
    ends: UNKNOWN,
  },
  { name: 'UTF-32', make: () => joinBytes([0xff, 0xfe, 0, 0, 0x3c, 0, 0, 0]), ends: MALFORMED },
  { name: 'UTF-32 by its name', make: () => joinBytes(declared('UTF-32')), ends: UNKNOWN },
  { name: 'EBCDIC', make: () => joinBytes([0x4c, 0x6f, 0xa7, 0x94, 0x93]), ends: BROKEN },
  { name: 'EBCDIC by its name', make: () => joinBytes(declared('IBM037')), ends: UNKNOWN },
  {
    name: 'an encoding that changes its mind within the text',
    make: () => joinBytes(declared('ISO-2022-JP')),
    ends: UNKNOWN,
  },
  { name: 'an encoding that replaces everything', make: () => joinBytes(declared('replacement')), ends: UNKNOWN },
  {
    name: 'an encoding named like a part of every object',
    make: () => joinBytes(declared('constructor')),
    ends: UNKNOWN,
  },
  {
    name: 'an encoding with a name of a megabyte',
    make: () => joinBytes(declared('x'.repeat(1_000_000))),
    ends: 'in-register',
  },
  { name: 'two declarations', make: () => joinBytes(declared('UTF-8', declared('UTF-8'))), ends: MALFORMED },
  { name: 'a declaration after a blank', make: () => joinBytes(' ', declared('UTF-8')), ends: MALFORMED },
  ...[0.1, 0.5, 0.9, 0.99].map(
    (share): HostileCase => ({
      name: `cut off at ${share} of its length`,
      make: () => {
        const bytes = drawCarton({});
        return bytes.subarray(0, Math.floor(bytes.length * share));
      },
      ends: MALFORMED,
    }),
  ),
  {
    name: 'a comment that never ends, eight megabytes',
    make: () => drawCarton({ art: `<!--${'- '.repeat(4_000_000)}` }).subarray(0, 8_000_000),
    ends: MALFORMED,
  },
  {
    name: 'a CDATA section that never ends',
    make: () => drawCarton({ art: `<![CDATA[${']] '.repeat(1_000_000)}` }),
    ends: MALFORMED,
  },
  {
    name: 'a document type that never ends',
    make: () => drawCarton({ head: `<!DOCTYPE svg [${'<!--x-->'.repeat(200_000)}` }),
    ends: MALFORMED,
  },
  {
    name: 'a value that never ends',
    make: () => drawCarton({ art: `<g id="${'x'.repeat(4_000_000)}` }).subarray(0, 4_000_000),
    ends: MALFORMED,
  },
  {
    name: 'a drawing after the drawing',
    make: () => (drawCarton({}).length > 0 ? joinBytes(drawText({}), drawText({})) : new Uint8Array(0)),
    ends: MALFORMED,
  },
  {
    name: 'a page of HTML',
    make: () => joinBytes('<!DOCTYPE html><html><body><svg></svg></body></html>'),
    ends: 'source/not-svg',
  },
  {
    name: 'another language in angle brackets',
    make: () => joinBytes('<math xmlns="http://www.w3.org/1998/Math/MathML"/>'),
    ends: 'source/not-svg',
  },
  {
    name: 'a drawing of no namespace',
    make: () => joinBytes(drawText({}).replace(' xmlns="http://www.w3.org/2000/svg"', '')),
    ends: 'in-register source/namespace-missing',
  },
  {
    name: 'a picture in place of a drawing',
    make: () => joinBytes([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0]),
    ends: 'source/not-svg',
  },
];

attackEach('encodings', CASES);
