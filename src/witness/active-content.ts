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
const CSS_TOKEN =
  /\/\*[\s\S]*?(?:\*\/|$)|"(?:\\[\s\S]|[^"\\])*"?|'(?:\\[\s\S]|[^'\\])*'?|@?(?:[-\w\u0080-\u{10ffff}]|\\[\s\S])+\(?|[\s\S]/gu;
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

/** The tokens from an opening bracket to its closing one, joined, and the index of the closing one. */
function takeCall(tokens: readonly string[], start: number): { readonly inner: string; readonly last: number } {
  let depth = 1;
  let i = start + 1;
  for (; i < tokens.length; i += 1) {
    if (tokens[i]!.endsWith('(')) depth += 1;
    else if (tokens[i] === ')') depth -= 1;
    if (depth === 0) break;
  }
  return { inner: tokens.slice(start + 1, i).join(''), last: i };
}

function loadsFromOutside(name: string, inner: string): boolean {
  const quoted = [...inner.matchAll(/"((?:\\[\s\S]|[^"\\])*)"|'((?:\\[\s\S]|[^'\\])*)'/g)];
  if (quoted.length > 0) return quoted.some((match) => !isInside(decodeEscapes(match[1] ?? match[2] ?? '')));
  return (name === 'url(' || name === 'src(') && !isInside(decodeEscapes(inner));
}

/** A CSS text without imports, and with `none` where it would load from outside; the same text where it loads nothing. */
export function withoutLoading(css: string): string {
  if (!/[(@\\]/.test(css)) return css;
  const tokens = css.match(CSS_TOKEN) ?? [];
  let out = '';
  for (let i = 0; i < tokens.length; i += 1) {
    const token = tokens[i]!;
    const name = decodeEscapes(token).toLowerCase();
    if (name === '@import') {
      while (i < tokens.length && tokens[i] !== ';') i += 1;
    } else if (LOADING_CALL.test(name)) {
      const call = takeCall(tokens, i);
      if (loadsFromOutside(name, call.inner)) {
        out += 'none';
        i = call.last;
      } else out += token;
    } else out += token;
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
