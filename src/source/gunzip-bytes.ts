// Unpacks gzip, never keeping more than is allowed.
import { Gunzip } from 'fflate';
import { joinPieces } from '../model/sheet.js';
import { PinbarError } from '../model/trouble.js';

/** Bytes fed to the unpacker at once. It calls itself for each member that ends within them, so that many could exhaust the stack. */
const STEP = 8 * 1024;

/** Whether bytes begin like a gzip stream (RFC 1952, section 2.3.1). */
export function isGzip(bytes: Uint8Array): boolean {
  return bytes[0] === 0x1f && bytes[1] === 0x8b;
}

function refuse(message: string, cause?: unknown): PinbarError {
  return new PinbarError(
    'source/gzip-broken',
    { message, remedy: 'Send the file again, or save it as plain .svg.' },
    [],
    cause,
  );
}

function tooLarge(allowed: number): PinbarError {
  return new PinbarError('limit/unpacked-bytes', {
    message: `The unpacked file has more than the ${allowed} bytes that are allowed.`,
    remedy: 'If the file is sound, raise the bound with --limit unpackedBytes=NUMBER.',
    data: { allowed },
  });
}

/** Eight CRC-32 tables in a row (RFC 1952, section 8): the first is of a byte, each next one of the byte before it. */
function buildCrcTables(): Int32Array {
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

/** The check sum goes on from chunk to chunk, eight bytes at a time; it starts and ends with all bits turned over. */
function continueCrc(tables: Int32Array, before: number, bytes: Uint8Array): number {
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

/** The unpacker checks no sum; a damaged stream can unpack to something else. Summed up at the end: a bomb never comes to it. */
function checkMember(packed: Uint8Array, end: number, chunks: readonly Uint8Array[], tables: Int32Array): void {
  const view = new DataView(packed.buffer, packed.byteOffset + end - 8, 8);
  const crc = chunks.reduce((sum, chunk) => continueCrc(tables, sum, chunk), -1);
  const length = chunks.reduce((sum, chunk) => sum + chunk.length, 0);
  const sound = view.getUint32(4, true) === length % 0x100000000 && view.getUint32(0, true) === (crc ^ -1) >>> 0;
  if (!sound) throw refuse('The gzip stream is damaged: its check sum does not fit what was unpacked.');
}

/**
 * Unpacks a gzip stream, of one member or several (RFC 1952, section 2.2).
 *
 * @param mostBytes - Unpacking stops as soon as more would be kept.
 * @throws PinbarError `source/gzip-broken` or `limit/unpacked-bytes`.
 */
export function gunzipBytes(packed: Uint8Array, mostBytes: number): Uint8Array {
  if (packed.length < 18) throw refuse('The gzip stream is cut off.');
  const chunks: Uint8Array[] = [];
  let length = 0;
  let finished = false;
  const tables = buildCrcTables();
  let firstOfMember = 0;
  const closeMember = (end: number): void => {
    checkMember(packed, end, chunks.slice(firstOfMember), tables);
    firstOfMember = chunks.length;
  };
  const stream = new Gunzip((chunk, final) => {
    length += chunk.length;
    if (length > mostBytes) throw tooLarge(mostBytes);
    if (chunk.length > 0) chunks.push(chunk);
    finished ||= final;
  });
  stream.onmember = closeMember;
  try {
    for (let at = 0; at < packed.length; at += STEP) {
      stream.push(packed.subarray(at, at + STEP), at + STEP >= packed.length);
    }
  } catch (error) {
    if (error instanceof PinbarError) throw error;
    throw refuse('The gzip stream is damaged or cut off.', error);
  }
  if (!finished) throw refuse('The gzip stream is cut off.');
  closeMember(packed.length);
  return joinPieces(chunks);
}
