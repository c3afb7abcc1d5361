// Which encoding is chosen, what it is read as, and what is refused.
import { describe, expect, it } from 'vitest';
import { decodeUtf8, encodeUtf8 } from '../../../src/model/platform.js';
import { decodeBytes } from '../../../src/source/decode-bytes.js';
import { catchFault, describeFault } from './catch-fault.js';

/** One byte a character. */
function bytesOf(text: string): Uint8Array {
  return Uint8Array.from([...text].map((sign) => sign.charCodeAt(0)));
}

function wide(text: string, bigEndian: boolean): Uint8Array {
  const view = new DataView(new ArrayBuffer(text.length * 2));
  for (let i = 0; i < text.length; i += 1) view.setUint16(2 * i, text.charCodeAt(i), !bigEndian);
  return new Uint8Array(view.buffer);
}

const declare = (label: string): string => `<?xml version="1.0" encoding="${label}"?>`;
const read = (bytes: Uint8Array) => {
  const { text, encoding, transcoded } = decodeBytes(bytes);
  return { text: decodeUtf8(text), encoding, transcoded };
};

describe('UTF-8', () => {
  it.each(['<a>ä€😀</a>', `${declare('UTF-8')}<a/>`, `${declare('utf8')}<a/>`])('%s', (text) => {
    const expected = { text, encoding: 'utf-8', transcoded: false };
    expect(read(encodeUtf8(text))).toEqual(expected);
    expect(read(encodeUtf8(`\ufeff${text}`))).toEqual(expected);
  });

  it('is handed on as a view, past the byte order mark', () => {
    const bytes = encodeUtf8('\ufeff<a/>');
    const { text } = decodeBytes(bytes);
    expect([text.buffer === bytes.buffer, text.byteOffset - bytes.byteOffset]).toEqual([true, 3]);
  });
});

describe.each([
  ['utf-16le', false],
  ['utf-16be', true],
] as const)('%s', (encoding, bigEndian) => {
  it.each(['<a>ä€😀</a>', `${declare('UTF-16')}<a/>`])('with and without a byte order mark: %s', (text) => {
    const expected = { text, encoding, transcoded: true };
    expect(read(wide(`\ufeff${text}`, bigEndian))).toEqual(expected);
    expect(read(wide(text, bigEndian))).toEqual(expected);
  });

  it('refuses half a character, half a pair and another declaration', () => {
    const codes = ['<a>\ud800</a>', '<a>\udc00\ud800</a>', `${declare('UTF-8')}<a/>`].map(
      (text) => catchFault(() => decodeBytes(wide(text, bigEndian))).code,
    );
    codes.push(catchFault(() => decodeBytes(wide('<a/>', bigEndian).subarray(0, -1))).code);
    expect(codes).toEqual(codes.map(() => 'source/encoding-broken'));
  });

  it('refuses characters that XML forbids', () => {
    expect(describeFault(() => decodeBytes(wide('<a>\n\uffff</a>', bigEndian)))).toMatchObject({
      code: 'source/malformed',
      line: 2,
      column: 1,
    });
  });
});

describe('single-byte encodings', () => {
  // Unicode mapping tables of ISO/IEC 8859 and of the vendors' code pages, from memory.
  it.each([
    ['iso-8859-1', '\xe4', 'ä'],
    ['iso-8859-2', '\xb1', 'ą'],
    ['iso-8859-5', '\xb6', 'Ж'],
    ['iso-8859-15', '\xa4', '€'],
    ['windows-1250', '\x9c', 'ś'],
    ['windows-1251', '\xc6', 'Ж'],
    ['windows-1252', '\x80\x93\xe4', '€“ä'],
    ['koi8-r', '\xf6', 'Ж'],
    ['latin1', '\xe4', 'ä'],
  ])('%s', (label, written, expected) => {
    const head = declare(label.toUpperCase());
    expect(read(bytesOf(`${head}<a>${written}</a>`))).toEqual({
      text: `${head}<a>${expected}</a>`,
      encoding: label,
      transcoded: true,
    });
  });

  it('a name in single quotes after other blanks', () => {
    expect(read(bytesOf("<?xml\tversion='1.0'\nencoding = 'iso-8859-1' ?><a>\xe4</a>")).encoding).toBe('iso-8859-1');
  });

  it('a byte the encoding has no character for', () => {
    expect(catchFault(() => decodeBytes(bytesOf(`${declare('iso-8859-7')}<a>\xff</a>`))).code).toBe(
      'source/encoding-broken',
    );
  });
});

describe('what only begins like a byte order mark or like UTF-16', () => {
  // Each is a byte off from one that decides; taken as UTF-8 all of them are broken or hold what XML forbids.
  it.each([
    [[0xef, 0xbc, 0xbf, 0x3c]],
    [[0xef, 0xbb, 0xbe, 0x3c]],
    [[0x00, 0x3d, 0x00, 0x61]],
    [[0x3c, 0x00, 0x61, 0x62]],
    [[0x00, 0x3c, 0x61, 0x62]],
    [[0x3c, 0x00, 0x00, 0x00]],
    [[0x00, 0x3c, 0x00, 0x00]],
    [[0xff, 0xff, 0x3c, 0x00]],
    [[0xfe, 0xfe, 0x00, 0x3c]],
  ])('%j is UTF-8', (start) => {
    const bytes = Uint8Array.from([...start, ...encodeUtf8('<a/>')]);
    const outcome = (() => {
      try {
        return decodeBytes(bytes).encoding;
      } catch (error) {
        return (error as { readonly code: string }).code;
      }
    })();
    const isText = start[0] === 0xef;
    expect(outcome).toBe(isText ? 'utf-8' : start[0]! > 0x80 ? 'source/encoding-broken' : 'source/malformed');
    if (isText) expect(decodeBytes(bytes).text.length).toBe(bytes.length);
  });
});

describe('refusals', () => {
  it('say which encoding the bytes do not fit, and what to do', () => {
    const { message, findings } = catchFault(() => decodeBytes(encodeUtf8(`${declare('UTF-16')}<a/>`)));
    expect(message).toBe('The bytes of the file do not fit its encoding, utf-16.');
    expect(findings.at(-1)).toMatchObject({
      remedy: 'Save the file again as UTF-8.',
      place: { line: 1 },
      data: { encoding: 'utf-16' },
    });
  });

  it.each(['shift_jis', 'utf-7', 'utf-32', 'x-own', 'latin99'])('unknown: %s', (label) => {
    const { code, message, findings } = catchFault(() => decodeBytes(encodeUtf8(`${declare(label)}<a/>`)));
    expect(code).toBe('source/encoding-unknown');
    expect(message).toContain(`"${label}"`);
    expect(findings.at(-1)).toMatchObject({ place: { line: 1 }, data: { encoding: label } });
  });

  it('one byte a character, though declared as UTF-16', () => {
    expect(catchFault(() => decodeBytes(encodeUtf8(`${declare('UTF-16')}<a/>`))).code).toBe('source/encoding-broken');
  });

  it('a byte order mark of UTF-8 before another declaration', () => {
    const bytes = encodeUtf8(`\ufeff${declare('iso-8859-1')}<a/>`);
    expect(catchFault(() => decodeBytes(bytes)).code).toBe('source/encoding-broken');
  });

  it('bytes that are not UTF-8, at their place', () => {
    expect(describeFault(() => decodeBytes(bytesOf('<a>\n b\xe4c</a>')))).toMatchObject({
      code: 'source/encoding-broken',
      line: 2,
      column: 3,
      caret: '  ^',
    });
  });

  it('characters that XML forbids, at their place', () => {
    expect(describeFault(() => decodeBytes(encodeUtf8('<a>ä\u0007</a>')))).toMatchObject({
      code: 'source/malformed',
      line: 1,
      column: 5,
    });
  });
});

it('says where the bytes stop fitting', () => {
  const place = (bytes: Uint8Array) => catchFault(() => decodeBytes(bytes)).findings.at(-1)?.place;
  expect(place(new Uint8Array(Buffer.from('\ufeff<svg>\nab\ud800c</svg>', 'utf16le')))).toEqual({ line: 2, column: 3 });
  const greek = '<?xml version="1.0" encoding="windows-1253"?>\n<svg>';
  expect(place(new Uint8Array([...Buffer.from(greek), 0xe1, 0xd2]))).toEqual({ line: 2, column: 7 });
});
