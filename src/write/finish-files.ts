// Sheets become named files with their hashes.
import { encodeUtf8, sha256Hex } from '../model/platform.js';
import { countBytes, type OutputFile, type Sheet } from '../model/sheet.js';
import { nameFiles } from './name-files.js';

/** One file per sheet. Hashes are of the bytes to be written. */
export async function finishFiles(sheets: readonly Sheet[], stem: string): Promise<readonly OutputFile[]> {
  const names = nameFiles(
    stem,
    sheets.map((sheet) => sheet.pass),
  );
  const files: OutputFile[] = [];
  for (const [index, sheet] of sheets.entries()) {
    files.push({
      name: names[index]!,
      mediaType: 'image/svg+xml',
      pieces: sheet.pieces,
      byteLength: countBytes(sheet.pieces),
      sha256: await sha256Hex(sheet.pieces),
    });
  }
  return files;
}

/** A text as a file. */
export async function finishText(name: string, mediaType: OutputFile['mediaType'], text: string): Promise<OutputFile> {
  const bytes = encodeUtf8(text);
  return { name, mediaType, pieces: [bytes], byteLength: bytes.length, sha256: await sha256Hex([bytes]) };
}

/** Bytes of a drawing as a file. */
export async function finishBytes(name: string, bytes: Uint8Array): Promise<OutputFile> {
  return {
    name,
    mediaType: 'image/svg+xml',
    pieces: [bytes],
    byteLength: bytes.length,
    sha256: await sha256Hex([bytes]),
  };
}
