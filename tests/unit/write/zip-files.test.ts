// Archives, read by another program's reader.
import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { encodeUtf8 } from '../../../src/model/platform.js';
import { joinPieces } from '../../../src/model/sheet.js';
import { zipFiles } from '../../../src/write/zip-files.js';

const FILES = [
  { name: 'a.svg', pieces: [encodeUtf8('<svg'), encodeUtf8('/>')] },
  { name: 'Straße.json', pieces: [] },
  { name: 'b.bin', pieces: [Uint8Array.from({ length: 70_000 }, (_, i) => i % 251)] },
];

describe('an archive', () => {
  it('holds the files under their names', () => {
    const read = unzipSync(joinPieces(zipFiles(FILES)));
    expect(Object.keys(read)).toEqual(FILES.map(({ name }) => name));
    for (const { name, pieces } of FILES) expect(Buffer.compare(read[name]!, joinPieces(pieces))).toBe(0);
  });

  it('holds the check sum of each', () => {
    // The check value of the CRC catalogue: "123456789" gives cbf43926.
    const [header] = zipFiles([{ name: 'n', pieces: [encodeUtf8('123456789')] }]);
    expect(new DataView(header!.buffer).getUint32(14, true)).toBe(0xcbf43926);
  });

  it('is the same on every run, and bears the first date there is', () => {
    const once = joinPieces(zipFiles(FILES));
    expect(Buffer.compare(once, joinPieces(zipFiles(FILES)))).toBe(0);
    // 1 January 1980: day 1, month 1, year 0; at midnight.
    expect(new DataView(once.buffer).getUint32(10, true)).toBe((1 | (1 << 5)) << 16);
  });
});
