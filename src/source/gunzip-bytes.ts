// Unpacks gzip, never keeping more than is allowed.
import { Gunzip } from 'fflate';
import { type Crc32, createCrc32 } from '../model/crc32.js';
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

/** The unpacker checks no sum; a damaged stream can unpack to something else. Summed up at the end: a bomb never comes to it. */
function checkMember(packed: Uint8Array, end: number, chunks: readonly Uint8Array[], crc32: Crc32): void {
  const view = new DataView(packed.buffer, packed.byteOffset + end - 8, 8);
  const length = chunks.reduce((sum, chunk) => sum + chunk.length, 0);
  const sound = view.getUint32(4, true) === length % 0x100000000 && view.getUint32(0, true) === crc32(chunks);
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
  const crc32 = createCrc32();
  let firstOfMember = 0;
  const closeMember = (end: number): void => {
    checkMember(packed, end, chunks.slice(firstOfMember), crc32);
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
