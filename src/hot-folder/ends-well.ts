// Whether a file is there to its end: its text ends with the end tag of its root, or its gzip stream is whole.
import { createGunzip } from 'node:zlib';
import { PinbarError } from '../index.js';
import { scanBytes } from '../road/read-artwork.js';

/** Most bytes that are unpacked only to see whether a stream is whole. */
const MOST_UNPACKED = 268_435_456;
/** How far from each end the root's tags are looked for. */
const HEAD = 65_536;
const TAIL = 4096;

/** Text as far as tags need it: UTF-16 loses its empty halves, a byte order mark is dropped. */
function toTags(bytes: Buffer): string {
  const wide = bytes.includes(0);
  const text = bytes.toString('latin1');
  return wide ? text.replaceAll('\0', '') : text;
}

/** Name of the root element, or null where the head shows none. */
function rootName(head: string): string | null {
  const plain = head
    .replace(/<!--[\s\S]*?-->/g, '')
    .replace(/<\?[\s\S]*?\?>/g, '')
    .replace(/<!DOCTYPE[^[>]*(?:\[[\s\S]*?\]\s*)?>/i, '');
  return /<([A-Za-z_\u0080-\u00ff][\w:.\u0080-\u00ff-]*)/.exec(plain)?.[1] ?? null;
}

/** Ends of what may stand behind the root, and how each begins. */
const BEHIND_ROOT: readonly (readonly [string, string])[] = [
  ['-->', '<!--'],
  ['?>', '<?'],
];

/** The text without what may stand behind the root: comments, instructions and blanks. One step for each, so that no text takes long. */
function cutBehindRoot(tail: string): string {
  let text = tail.trimEnd();
  for (;;) {
    const pair = BEHIND_ROOT.find(([end]) => text.endsWith(end));
    if (pair === undefined) return text;
    const [end, begin] = pair;
    const before = text.lastIndexOf(end, text.length - end.length - 1);
    const at = text.indexOf(begin, before === -1 ? 0 : before + end.length);
    if (at === -1) return text;
    text = text.slice(0, at).trimEnd();
  }
}

/** What hides tags, from where to where. */
const OPEN_TEXT: readonly (readonly [string, string])[] = [
  ['<!--', '-->'],
  ['<![CDATA[', ']]>'],
];

function countOf(bytes: Buffer, word: string): number {
  let count = 0;
  for (let at = bytes.indexOf(word); at !== -1; at = bytes.indexOf(word, at + word.length)) count++;
  return count;
}

/**
 * Whether the strict reader comes to the end; a file inside a file can end with the tag of the root without being its end.
 *
 * What it refuses for another reason than its tags counts as there: a job says what is wrong with it.
 */
function reads(bytes: Buffer): boolean {
  try {
    scanBytes(bytes, {});
    return true;
  } catch (error) {
    return !(error instanceof PinbarError && error.code === 'source/malformed');
  }
}

/** Whether text is there to the end of its root. */
export function textEndsWell(bytes: Buffer): boolean {
  const name = rootName(toTags(bytes.subarray(0, HEAD)));
  const tail = cutBehindRoot(toTags(bytes.subarray(Math.max(0, bytes.length - TAIL))));
  // A comment can be longer than what is looked at of either end.
  if (name === null) return bytes.length > HEAD && reads(bytes);
  if (!tail.endsWith('>')) return false;
  const last = /<\/([^\s<>/]+)\s*>$/.exec(tail)?.[1];
  if (last === undefined) return /(?:\/|--|\?)>$/.test(tail) && reads(bytes);
  if (last !== name) return false;
  const wide = bytes.subarray(0, TAIL).includes(0);
  // An end tag can stand in a comment or in quoted text whose own end is still to come.
  const open = OPEN_TEXT.some(([begin, end]) => bytes.lastIndexOf(begin) > bytes.lastIndexOf(end));
  const even = countOf(bytes, `<${name}`) === countOf(bytes, `</${name}`);
  if (!wide && even && !open) return true;
  return reads(bytes);
}

/** The unpacked text; null where the stream stops before its end, `broken` where it is damaged, which waiting does not mend. */
async function unpack(bytes: Buffer): Promise<Buffer | 'broken' | null> {
  const gunzip = createGunzip();
  const chunks: Buffer[] = [];
  let size = 0;
  gunzip.end(bytes);
  try {
    for await (const chunk of gunzip) {
      chunks.push(chunk as Buffer);
      size += (chunk as Buffer).length;
      if (size > MOST_UNPACKED) return 'broken';
    }
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'Z_BUF_ERROR' ? null : 'broken';
  }
  return Buffer.concat(chunks);
}

/** Whether a delivered file is there to its end. What is damaged, not cut off, counts as there: a job says what is wrong with it. */
export async function endsWell(bytes: Buffer): Promise<boolean> {
  if (bytes[0] !== 0x1f || bytes[1] !== 0x8b) return textEndsWell(bytes);
  const text = await unpack(bytes);
  return text === 'broken' || (text !== null && textEndsWell(text));
}

/** Whether a ticket is there to its end: JSON that can be read. */
export function ticketEndsWell(bytes: Buffer): boolean {
  return isWholeTicket(bytes.toString('utf8').replace(/^\ufeff/, ''));
}

/** The same for its text. */
export function isWholeTicket(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}
