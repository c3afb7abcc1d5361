// Files to one zip archive, byte for byte the same on every run: stored, without dates.
import { createCrc32 } from '../model/crc32.js';
import { encodeUtf8 } from '../model/platform.js';
import { countBytes } from '../model/sheet.js';
import { PinbarError } from '../model/trouble.js';

/** A file to be packed. */
export interface PackedFile {
  readonly name: string;
  /** The pieces one after the other are the file. */
  readonly pieces: readonly Uint8Array[];
}

/** The first date that the format can hold: 1 January 1980, midnight. */
const FIRST_DATE = 0x0021;
/** Names are UTF-8: bit 11 of the flags. */
const UTF8_NAMES = 0x0800;
/** The format without its extension for large archives ends here, bytes. */
const LARGEST_BYTES = 0xffff_ffff;

/** Numbers as little-endian bytes; each with its width in bytes. */
function packNumbers(fields: readonly (readonly [value: number, width: 2 | 4])[]): Uint8Array {
  const bytes = new Uint8Array(fields.reduce((sum, [, width]) => sum + width, 0));
  const view = new DataView(bytes.buffer);
  let at = 0;
  for (const [value, width] of fields) {
    if (width === 2) view.setUint16(at, value, true);
    else view.setUint32(at, value, true);
    at += width;
  }
  return bytes;
}

/** What local header and directory say alike. */
function describeFile(name: Uint8Array, length: number, crc: number): readonly (readonly [number, 2 | 4])[] {
  return [
    [20, 2],
    [UTF8_NAMES, 2],
    [0, 2],
    [0, 2],
    [FIRST_DATE, 2],
    [crc, 4],
    [length, 4],
    [length, 4],
    [name.length, 2],
    [0, 2],
  ];
}

/**
 * A zip archive in pieces; those of the files are views of what was handed in.
 *
 * @source PKWARE APPNOTE.TXT 6.3.10, sections 4.3.7, 4.3.12 and 4.3.16
 * @throws PinbarError `write/failed` where the archive would not fit the format.
 */
export function zipFiles(files: readonly PackedFile[]): readonly Uint8Array[] {
  const pieces: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  const crc32 = createCrc32();
  let offset = 0;
  for (const file of files) {
    const name = encodeUtf8(file.name);
    const facts = describeFile(name, countBytes(file.pieces), crc32(file.pieces));
    const header = packNumbers([[0x04034b50, 4], ...facts]);
    // Comment, disk, kinds of attributes: none; then where the file begins.
    const tail: readonly (readonly [number, 2 | 4])[] = [
      [0, 2],
      [0, 2],
      [0, 2],
      [0, 4],
      [offset, 4],
    ];
    directory.push(packNumbers([[0x02014b50, 4], [20, 2], ...facts, ...tail]), name);
    pieces.push(header, name, ...file.pieces);
    offset += header.length + name.length + countBytes(file.pieces);
    if (offset > LARGEST_BYTES) {
      throw new PinbarError('write/failed', {
        message: 'The files together are larger than a zip archive can hold (4 GiB).',
        remedy: 'Take them one by one.',
      });
    }
  }
  const size = countBytes(directory);
  const end = packNumbers([
    [0x06054b50, 4],
    [0, 2],
    [0, 2],
    [files.length, 2],
    [files.length, 2],
    [size, 4],
    [offset, 4],
    [0, 2],
  ]);
  return [...pieces, ...directory, end];
}
