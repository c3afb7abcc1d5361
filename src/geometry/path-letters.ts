// The commands of path data.

/** Codes of the absolute commands; 0x20 more makes a relative one. */
export const LETTER = {
  a: 0x41,
  c: 0x43,
  h: 0x48,
  l: 0x4c,
  m: 0x4d,
  q: 0x51,
  s: 0x53,
  t: 0x54,
  v: 0x56,
  z: 0x5a,
} as const;

/**
 * Numbers that a command takes for one segment; 0 for what is no command.
 *
 * @throws Never.
 */
export function countArguments(command: number): number {
  switch (command & ~0x20) {
    case LETTER.m:
    case LETTER.l:
    case LETTER.t:
      return 2;
    case LETTER.c:
      return 6;
    case LETTER.q:
    case LETTER.s:
      return 4;
    case LETTER.h:
    case LETTER.v:
      return 1;
    case LETTER.a:
      return 7;
    default:
      return 0;
  }
}
