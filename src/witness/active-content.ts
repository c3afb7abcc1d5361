// What no sheet may hold, as the second judge sees it: what runs, moves, or loads from outside.
import { type WitnessElement, XLINK } from './read-tree.js';

const ACTIVE_LOCALS = new Set([
  'script',
  'handler',
  'listener',
  'animate',
  'animateColor',
  'animateMotion',
  'animateTransform',
  'set',
  'discard',
  'mpath',
  'foreignObject',
]);
const INSIDE = /^(?:$|#|data:image\/(?:png|jpe?g|gif|webp)[;,]|data:(?:font|application\/(?:x-)?font))/i;
const LOADING_NAMES = new Set([
  'src',
  'srcset',
  'ping',
  'action',
  'formaction',
  'srcdoc',
  'poster',
  'data',
  'code',
  'archive',
  'background',
]);
const LOADING_CALL = /^(?:url|src|image|image-set|-webkit-image-set|cross-fade|-webkit-cross-fade)\($/;
const NAMESPACE_RULE =
  /@namespace\s+(?:[-\w]+\s+)?(?:url\(\s*[^\s()"'\\]*\s*\)|url\(\s*"[^"\\\n\r\f]*"\s*\)|"[^"\\\n\r\f]*"|'[^'\\\n\r\f]*')\s*;/iy;
/** What a call is replaced by where the value could not be read before either. */
const NO_VALUE = '-pinbar-left-out';
/** Attributes whose values never name anything to load. */
const PLAIN = new Set(['d', 'points', 'transform', 'viewBox', 'id', 'class', 'x', 'y', 'width', 'height']);

/** Whether an element runs, moves or embeds foreign content. */
export function isActiveElement(element: WitnessElement): boolean {
  return ACTIVE_LOCALS.has(element.local);
}

/** Whether a sheet may leave an element out that stands inside something it keeps whole. */
export function isRemovable(element: WitnessElement): boolean {
  return element.kind === '' || isActiveElement(element) || element.kind === 'metadata' || element.kind === 'view';
}

/** Whether an address stays inside the file. */
export function isInside(address: string): boolean {
  return INSIDE.test(address.trim());
}

function decodeEscapes(text: string): string {
  return text.replace(/\\([0-9a-fA-F]{1,6})\s?|\\([\s\S])/g, (_, hex: string | undefined, sign: string) =>
    hex === undefined ? sign : String.fromCodePoint(Math.min(Number.parseInt(hex, 16), 0x10ffff)),
  );
}

interface CssReader {
  readonly css: string;
  at: number;
  /** Offset up to which sets of pictures are known to name nothing outside. */
  calmUntil: number;
}

const ESCAPE = /\\(?:[0-9a-fA-F]{1,6}(?:\r\n|\s)?|[\s\S])/y;
const NAME_SIGNS = /[-\w\u0080-\uffff]*/y;

function matchEnd(css: string, pattern: RegExp, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(css) ? pattern.lastIndex : at;
}

/** Offset past a string, which a line end ends. */
function stringEnd(css: string, start: number): number {
  const plain = css[start] === '"' ? /[^"\\\n\r\f]*/y : /[^'\\\n\r\f]*/y;
  let at = matchEnd(css, plain, start + 1);
  while (css[at] === '\\') at = matchEnd(css, plain, at + (css.startsWith('\r\n', at + 1) ? 3 : 2));
  return Math.min(css.length, css[at] === css[start] ? at + 1 : at);
}

/** Offset past a name and the bracket of its call; piece by piece, since one pattern would run out of stack. */
function nameEnd(css: string, start: number): number {
  let at = matchEnd(css, NAME_SIGNS, css[start] === '@' ? start + 1 : start);
  while (css[at] === '\\') {
    const past = matchEnd(css, ESCAPE, at);
    if (past === at) break;
    at = matchEnd(css, NAME_SIGNS, past);
  }
  return css[at] === '(' && at > start ? at + 1 : at;
}

/** The next comment, string, name with the bracket of its call, or single sign. */
function nextToken(reader: CssReader): string {
  const { css, at } = reader;
  let end = at + 1;
  if (css.startsWith('/*', at)) {
    const close = css.indexOf('*/', at + 2);
    end = close < 0 ? css.length : close + 2;
  } else if (css[at] === '"' || css[at] === "'") end = stringEnd(css, at);
  else end = Math.max(end, nameEnd(css, at));
  reader.at = end;
  return css.slice(at, end);
}

/** What stands between the brackets of a call whose opening one was just read. */
function takeCall(reader: CssReader): string {
  const { css, at: start } = reader;
  let depth = 1;
  let end = css.length;
  while (reader.at < css.length && depth > 0) {
    end = reader.at;
    const token = nextToken(reader);
    if (token.endsWith('(')) depth += 1;
    else if (token === ')') depth -= 1;
  }
  return css.slice(start, depth === 0 ? end : css.length);
}

/** A bare address ends at the first bracket that is not escaped. */
function takeBareAddress(reader: CssReader): string {
  const { css, at: start } = reader;
  let end = start;
  while (end < css.length && css[end] !== ')') end += css[end] === '\\' ? 2 : 1;
  reader.at = Math.min(css.length, end + 1);
  return css.slice(start, end);
}

function loadsFromOutside(name: string, inner: string): boolean {
  let isQuoted = false;
  for (let at = 0; at < inner.length; at += 1) {
    if (inner[at] !== '"' && inner[at] !== "'") continue;
    const end = stringEnd(inner, at);
    const isClosed = end > at + 1 && inner[end - 1] === inner[at];
    if (!isInside(decodeEscapes(inner.slice(at + 1, isClosed ? end - 1 : end)))) return true;
    isQuoted = true;
    at = end - 1;
  }
  if (isQuoted) return false;
  return (name === 'url(' || name === 'src(') && !isInside(decodeEscapes(inner));
}

/** What a call becomes that loads from outside; null where it may stay. */
function replaceCall(reader: CssReader, name: string, out: string): string | null {
  if (name === 'expression(') {
    takeCall(reader);
    return NO_VALUE;
  }
  const start = reader.at;
  const isAddress = name === 'url(' || name === 'src(';
  if (!isAddress && start < reader.calmUntil) return null;
  const isBare = name === 'url(' && !/^\s*["']/.test(reader.css.slice(start, start + 1_000));
  const inner = isBare ? takeBareAddress(reader) : takeCall(reader);
  if (isBare ? isInside(decodeEscapes(inner)) : !loadsFromOutside(name, inner)) {
    // Only of an address is all that stands in the brackets its own.
    if (!isAddress) {
      reader.calmUntil = reader.at;
      reader.at = start;
    }
    return null;
  }
  const isBroken = isBare && /["'(\u0000-\u0008\u000b\u000e-\u001f\u007f]|\\[\n\r\f]|\S\s+\S/.test(inner.trim());
  if (isBroken || name === 'src(' || /\)\s*$/.test(out.slice(-40))) return NO_VALUE;
  const after = reader.css.slice(reader.at, reader.at + 40);
  const isPaint = out.length <= 40 && out.trim() === '';
  if ((isPaint || /(?:^|[\s;{])(?:fill|stroke)\s*:\s*$/i.test(out.slice(-40))) && /^\s*[a-z#]/i.test(after)) return '';
  return /^[-\w\u0080-\uffff]/.test(after) ? 'none ' : 'none';
}

/** A CSS text without imports, and with `none` where it would load from outside; the same text where it loads nothing. */
export function withoutLoading(css: string): string {
  if (!/[(@\\]/.test(css)) return css;
  const reader: CssReader = { css, at: 0, calmUntil: 0 };
  let out = '';
  while (reader.at < css.length) {
    const start = reader.at;
    const token = nextToken(reader);
    const name = decodeEscapes(token).toLowerCase();
    if (name === '@import') {
      let end = ';';
      do end = nextToken(reader);
      while (reader.at < css.length && end !== ';' && end !== '{' && end !== '}');
      if (end === '{' || end === '}') reader.at -= 1;
      continue;
    }
    NAMESPACE_RULE.lastIndex = start;
    if (name === '@namespace' && NAMESPACE_RULE.test(css)) reader.at = NAMESPACE_RULE.lastIndex;
    const isCall = LOADING_CALL.test(name) || name === 'expression(';
    const replacement = isCall ? replaceCall(reader, name, out) : null;
    out += replacement ?? css.slice(start, reader.at);
  }
  return out;
}

/** What an attribute must become on a sheet: null to be left out, else its value. */
export function permittedValue(element: WitnessElement, name: string, value: string): string | null {
  if (PLAIN.has(name)) return value;
  if (name === 'href' || (name.startsWith(XLINK) && /[ :]href$/.test(name))) return isInside(value) ? value : null;
  if (name.includes(' ')) return /^\S+\/XML\/1998\/namespace .*base$|xml-events /.test(name) ? null : value;
  if (/^on/i.test(name) || LOADING_NAMES.has(name)) return null;
  return element.kind === '' ? value : withoutLoading(value);
}

/** What an element of a sheet holds that it may not, in plain words. */
export function listForbidden(element: WitnessElement): readonly string[] {
  const found: string[] = [];
  if (isActiveElement(element)) found.push(`the element ${element.local}, which runs, moves or embeds`);
  if (element.kind === 'style' && withoutLoading(element.text) !== element.text) {
    found.push('a style sheet that loads from outside');
  }
  for (let i = 0; i < element.attributeNames.length; i += 1) {
    const name = element.attributeNames[i]!;
    if (PLAIN.has(name)) continue;
    const value = element.attributeValues[i]!;
    if (permittedValue(element, name, value) !== value) {
      const shown = name.slice(name.lastIndexOf(' ') + 1);
      found.push(`${shown}="${value.slice(0, 60)}", which runs or loads from outside`);
    }
  }
  return found;
}
