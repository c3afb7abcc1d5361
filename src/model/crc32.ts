// CRC-32, the check sum of gzip and zip.

/** Eight tables in a row: the first is of a byte, each next one of the byte before it. */
function buildTables(): Int32Array {
  const tables = new Int32Array(8 * 256);
  for (let n = 0; n < 256; n += 1) {
    let c = n;
    for (let k = 0; k < 8; k += 1) c = (c & 1) !== 0 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
    tables[n] = c;
  }
  for (let n = 256; n < tables.length; n += 1) {
    const before = tables[n - 256]!;
    tables[n] = tables[before & 0xff]! ^ (before >>> 8);
  }
  return tables;
}

/** The sum goes on from piece to piece, eight bytes at a time; it starts and ends with all bits turned over. */
function continueSum(tables: Int32Array, before: number, bytes: Uint8Array): number {
  const whole = bytes.length - (bytes.length % 8);
  let crc = before;
  for (let i = 0; i < whole; i += 8) {
    crc ^= bytes[i]! | (bytes[i + 1]! << 8) | (bytes[i + 2]! << 16) | (bytes[i + 3]! << 24);
    crc =
      tables[1792 + (crc & 0xff)]! ^
      tables[1536 + ((crc >>> 8) & 0xff)]! ^
      tables[1280 + ((crc >>> 16) & 0xff)]! ^
      tables[1024 + (crc >>> 24)]! ^
      tables[768 + bytes[i + 4]!]! ^
      tables[512 + bytes[i + 5]!]! ^
      tables[256 + bytes[i + 6]!]! ^
      tables[bytes[i + 7]!]!;
  }
  for (let i = whole; i < bytes.length; i += 1) crc = tables[(crc ^ bytes[i]!) & 0xff]! ^ (crc >>> 8);
  return crc;
}

/** The sum of bytes in pieces, from 0 to 2 ** 32 - 1. */
export type Crc32 = (pieces: readonly Uint8Array[]) => number;

/**
 * A reader of check sums; it builds its tables once, so keep it for as many sums as are wanted together.
 *
 * @source RFC 1952, section 8; ISO 3309, as PKWARE's APPNOTE.TXT 4.4.7 asks
 */
export function createCrc32(): Crc32 {
  const tables = buildTables();
  return (pieces) => (pieces.reduce((sum, piece) => continueSum(tables, sum, piece), -1) ^ -1) >>> 0;
}
