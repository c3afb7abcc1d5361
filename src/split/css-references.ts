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
const IDENTIFIER = /(?:[-_a-zA-Z0-9\u0080-\u{10ffff}]|\\[0-9a-fA-F]{1,6}[ \t\r\n\f]?|\\[^\r\n\f0-9a-fA-F])+/uy;
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

/** Offset past a quoted string that starts at `at`. */
function skipString(css: string, at: number): number {
  const quote = css[at];
  for (let i = at + 1; i < css.length; i += 1) {
    if (css[i] === '\\') i += 1;
    else if (css[i] === quote) return i + 1;
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
  const strings = [...inner.matchAll(/"((?:\\[\s\S]|[^"\\])*)"?|'((?:\\[\s\S]|[^'\\])*)'?/g)].map((match) =>
    decodeEscapes(match[1] ?? match[2] ?? ''),
  );
  if (strings.length > 0) return strings;
  return name === 'url' || name === 'src' ? [decodeEscapes(inner).trim()] : [];
}

/** Judges one name that starts at `at`; returns where to go on. */
function judgeName(css: string, at: number, found: OutsideReference[]): number {
  IDENTIFIER.lastIndex = at;
  const raw = IDENTIFIER.exec(css)?.[0] ?? '';
  if (raw === '') return at + 1;
  const end = at + raw.length;
  const name = decodeEscapes(raw).toLowerCase();
  if (name === 'import' && css[at - 1] === '@') {
    const stop = skipStatement(css, end);
    found.push({ start: at - 1, end: stop, replacement: '', address: css.slice(at - 1, stop).slice(0, 80) });
    return stop;
  }
  if (name === 'namespace' && css[at - 1] === '@') return skipStatement(css, end);
  if (css[end] !== '(' || !LOADING.has(name)) return end;
  const stop = skipToClose(css, end + 1);
  const outside = addressesOf(name, css.slice(end + 1, stop - 1)).find((address) => !isInsideAddress(address));
  if (outside === undefined) return name === 'url' || name === 'src' ? stop : end + 1;
  found.push({ start: at, end: stop, replacement: 'none', address: outside.slice(0, 80) });
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
  const found: OutsideReference[] = [];
  let i = 0;
  while (i < css.length) {
    const sign = css[i]!;
    if (sign === '"' || sign === "'") i = skipString(css, i);
    else if (css.startsWith('/*', i)) i = skipComment(css, i);
    else if (/[-_a-zA-Z\\\u0080-\uffff]/.test(sign)) i = judgeName(css, i, found);
    else i += 1;
  }
  return found;
}
