// Finds what a CSS text would load from outside: imports and addresses in url(), src(), image() and image-set().

/** A stretch of the text to be taken out. */
export interface OutsideReference {
  readonly start: number;
  readonly end: number;
  /** What to write instead. */
  readonly replacement: string;
  /** The address, shortened. */
  readonly address: string;
}

const LOADING = new Set(['url', 'src', 'image', 'image-set', '-webkit-image-set', 'cross-fade', '-webkit-cross-fade']);
const SAFE_ADDRESS = /^(?:#|data:image\/(?:png|jpe?g|gif|webp)[;,]|data:(?:font|application\/(?:x-)?font)|$)/i;

/** Whether an address stays inside the file. */
export function isInsideAddress(address: string): boolean {
  return SAFE_ADDRESS.test(address.trim());
}

function decodeEscapes(text: string): string {
  return text.replace(/\\([0-9a-fA-F]{1,6})[ \t\r\n\f]?|\\([^\r\n\f])/g, (_, hex: string, plain: string) => {
    if (plain !== undefined) return plain;
    const code = Number.parseInt(hex, 16);
    return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : '\ufffd';
  });
}

/** The longest name, -webkit-cross-fade, with every sign as an escape of eight characters. */
const LONGEST_NAME = 8 * 20;
const LINE_END = /[\n\r\f]/;

/** Offset past the name that starts at `at`, escapes included; by hand, since a pattern would run out of stack on a long one. */
function skipName(css: string, at: number): number {
  let i = at;
  while (i < css.length) {
    if (css[i] === '\\') {
      if (i + 1 >= css.length || LINE_END.test(css[i + 1]!)) break;
      const hex = /[0-9a-fA-F]{1,6}[ \t\r\n\f]?/y;
      hex.lastIndex = i + 1;
      i += hex.test(css) ? hex.lastIndex - i : 2;
    } else if (/[-_a-zA-Z0-9\u0080-\uffff]/.test(css[i]!)) i += 1;
    else break;
  }
  return i;
}

/** Offset past a quoted string that starts at `at`; a line that ends before it does ends it (CSS Syntax 3, section 4.3.5). */
function skipString(css: string, at: number): number {
  const quote = css[at];
  for (let i = at + 1; i < css.length; i += 1) {
    if (css[i] === '\\') i += css.startsWith('\r\n', i + 1) ? 2 : 1;
    else if (css[i] === quote) return i + 1;
    else if (LINE_END.test(css[i]!)) return i;
  }
  return css.length;
}

/** Offset past an address without quotes: it ends at the first bracket, whatever stands in it (CSS Syntax 3, section 4.3.6). */
function skipBareAddress(css: string, at: number): number {
  for (let i = at; i < css.length; i += 1) {
    if (css[i] === '\\') i += 1;
    else if (css[i] === ')') return i + 1;
  }
  return css.length;
}

function skipComment(css: string, at: number): number {
  const end = css.indexOf('*/', at + 2);
  return end < 0 ? css.length : end + 2;
}

/** Offset past the bracket that closes the one before `at`. */
function skipToClose(css: string, at: number): number {
  let depth = 1;
  let i = at;
  while (i < css.length) {
    const sign = css[i];
    if (sign === '"' || sign === "'") i = skipString(css, i);
    else if (css.startsWith('/*', i)) i = skipComment(css, i);
    else {
      if (sign === '\\') i += 1;
      else if (sign === '(') depth += 1;
      else if (sign === ')') depth -= 1;
      i += 1;
      if (depth === 0) return i;
    }
  }
  return css.length;
}

/** Offset past the semicolon that ends an at-rule without a block. */
function skipStatement(css: string, at: number): number {
  let i = at;
  while (i < css.length && css[i] !== ';' && css[i] !== '}' && css[i] !== '{') {
    if (css[i] === '"' || css[i] === "'") i = skipString(css, i);
    else if (css.startsWith('/*', i)) i = skipComment(css, i);
    else if (css[i] === '(') i = skipToClose(css, i + 1);
    else i += css[i] === '\\' ? 2 : 1;
  }
  return Math.min(css.length, css[i] === ';' ? i + 1 : i);
}

/** The addresses inside a loading function's brackets: its strings, or its bare text. */
function addressesOf(name: string, inner: string): readonly string[] {
  const strings: string[] = [];
  for (let at = 0; at < inner.length; ) {
    if (inner[at] !== '"' && inner[at] !== "'") {
      at += 1;
      continue;
    }
    const end = skipString(inner, at);
    const isClosed = end > at + 1 && inner[end - 1] === inner[at];
    strings.push(decodeEscapes(inner.slice(at + 1, isClosed ? end - 1 : end)));
    at = Math.max(end, at + 1);
  }
  if (strings.length > 0) return strings;
  return name === 'url' || name === 'src' ? [decodeEscapes(inner).trim()] : [];
}

/** A value that no property knows: what stood there was none either, so that the declaration goes on counting for nothing. */
const NO_VALUE = '-pinbar-left-out';
const BAD_BARE_ADDRESS = /["'(\u0000-\u0008\u000b\u000e-\u001f\u007f]|\\[\n\r\f]|[^\s]\s+[^\s]/;

/**
 * What stands for something taken out, so that the rest of the declaration means what it meant: nothing painted, the colour
 * that a paint falls back to, or nothing that can be read.
 */
function chooseReplacement(css: string, start: number, end: number, isReadable: boolean): string {
  const before = css.slice(Math.max(0, start - 40), start);
  if (!isReadable || /\)\s*$/.test(before)) return NO_VALUE;
  const isPaint = /(?:^|[\s;{])(?:fill|stroke)\s*:\s*$/i.test(before) || (start <= 40 && before.trim() === '');
  const after = css.slice(end, end + 40);
  if (isPaint && /^\s*[a-z#]/i.test(after)) return '';
  return /^[-\w\u0080-\uffff]/.test(after) ? 'none ' : 'none';
}

/** The names of namespaces load nothing; a rule that is not just such a name is looked at like any other. */
const NAMESPACE_RULE =
  /@namespace\s+(?:[-\w]+\s+)?(?:url\(\s*[^\s()"'\\]*\s*\)|url\(\s*"[^"\\\n\r\f]*"\s*\)|"[^"\\\n\r\f]*"|'[^'\\\n\r\f]*')\s*;/iy;

function skipNamespaceRule(css: string, at: number): number {
  NAMESPACE_RULE.lastIndex = at;
  return NAMESPACE_RULE.test(css) ? NAMESPACE_RULE.lastIndex : -1;
}

interface Search {
  readonly css: string;
  readonly found: OutsideReference[];
  /** Offset up to which sets of pictures name nothing outside. */
  calmUntil: number;
}

/** Judges one name that starts at `at`; returns where to go on. */
function judgeName(search: Search, at: number): number {
  const { css, found } = search;
  const end = skipName(css, at);
  if (end === at) return at + 1;
  // No name that counts is longer, however it is spelled.
  const name = end - at > LONGEST_NAME ? '' : decodeEscapes(css.slice(at, end)).toLowerCase();
  if (name === 'import' && css[at - 1] === '@') {
    const stop = skipStatement(css, end);
    found.push({ start: at - 1, end: stop, replacement: '', address: css.slice(at - 1, stop).slice(0, 80) });
    return stop;
  }
  if (name === 'namespace' && css[at - 1] === '@') {
    const past = skipNamespaceRule(css, at - 1);
    return past < 0 ? end : past;
  }
  if (css[end] !== '(') return end;
  if (name === 'expression') {
    const stop = skipToClose(css, end + 1);
    found.push({ start: at, end: stop, replacement: NO_VALUE, address: css.slice(at, stop).slice(0, 80) });
    return stop;
  }
  return LOADING.has(name) ? judgeCall(search, { name, at, inside: end + 1 }) : end;
}

/** Judges a function that loads; returns where to go on. */
function judgeCall(
  search: Search,
  call: { readonly name: string; readonly at: number; readonly inside: number },
): number {
  const { css, found } = search;
  const { name, at, inside } = call;
  const isAddress = name === 'url' || name === 'src';
  // A set of pictures within one whose strings were all looked at holds no others.
  if (!isAddress && at < search.calmUntil) return inside;
  const isBare = name === 'url' && !/^[ \t\n\r\f]*["']/.test(css.slice(inside, inside + 1_000));
  const stop = isBare ? skipBareAddress(css, inside) : skipToClose(css, inside);
  const inner = css.slice(inside, css[stop - 1] === ')' ? stop - 1 : stop);
  const addresses = isBare ? [decodeEscapes(inner).trim()] : addressesOf(name, inner);
  const outside = addresses.find((address) => !isInsideAddress(address));
  if (outside === undefined) {
    if (!isAddress) search.calmUntil = stop;
    return isAddress ? stop : inside;
  }
  const isReadable = name !== 'src' && !(isBare && BAD_BARE_ADDRESS.test(inner.trim()));
  const replacement = chooseReplacement(css, at, stop, isReadable);
  found.push({ start: at, end: stop, replacement, address: outside.slice(0, 80) });
  return stop;
}

/**
 * Everything in a CSS text (sheet or declaration list) that would be loaded from outside the file.
 *
 * Escapes, comments and strings are read as CSS does, so that `u\72l(http:...)` is seen. `@namespace` names, and loads nothing.
 *
 * @param css - The decoded text.
 * @returns Stretches in order of place; offsets count UTF-16 units of `css`.
 * @source CSS Syntax 3, sections 4.3 and 5
 */
export function findOutsideReferences(css: string): readonly OutsideReference[] {
  const search: Search = { css, found: [], calmUntil: 0 };
  let i = 0;
  while (i < css.length) {
    const sign = css[i]!;
    if (sign === '"' || sign === "'") i = skipString(css, i);
    else if (css.startsWith('/*', i)) i = skipComment(css, i);
    else if (/[-_a-zA-Z\\\u0080-\uffff]/.test(sign)) i = judgeName(search, i);
    else i += 1;
  }
  return search.found;
}
