// Names for files that every file system takes.
import type { Pass } from '../model/pass.js';

/** Names of devices that some systems keep for themselves (from memory). */
const RESERVED = /^(?:con|prn|aux|nul|com[0-9]|lpt[0-9])(?:\.|$)/i;
/** Refused by at least one common file system, or able to leave the folder. */
const UNSAFE = /[<>:"/\\|?*\u0000-\u001f\u007f\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;
/** Longest stem in UTF-16 units; three bytes each still fit into 255 with pass and ending. */
const LONGEST = 60;

/** A part of a file name that is safe everywhere: composed (NFC), no separators, no trailing dots or blanks, never empty. */
export function safeName(name: string): string {
  const plain = name
    .normalize('NFC')
    .replace(UNSAFE, '-')
    .replace(/[\ud800-\udfff]/gu, '-')
    .replace(/^[. ]+|[. ]+$/g, '');
  const short = [...plain]
    .slice(0, LONGEST)
    .join('')
    .replace(/[. ]+$/, '');
  if (short === '') return 'art';
  return RESERVED.test(short) ? `_${short}` : short;
}

/** The stem of a delivered file: its name without folder and without .svg or .svgz. */
export function stemOf(fileName: string): string {
  const base = fileName.split(/[\\/]/).at(-1) ?? '';
  return safeName(base.replace(/\.svgz?$/i, ''));
}

/** `STEM.1-crease.svg`, ... in the order of the passes; unique, whatever the case. */
export function nameFiles(stem: string, passes: readonly Pass[]): readonly string[] {
  return passes.map((pass) => `${stem}.${pass.order}-${safeName(pass.name)}.svg`);
}
