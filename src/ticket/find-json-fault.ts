// Where a text stops being JSON, told the same by every engine.

/** What may stand next. */
type Hope = 'value' | 'value-or-end' | 'key' | 'key-or-end' | 'colon' | 'comma-or-end' | 'nothing';

const BLANK = /[ \t\n\r]/;
const PLAIN = /[^"\\\u0000-\u001f]/;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
const LITERAL = /-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?|true|false|null/y;

/** Where a pattern that begins at `at` ends, or -1. */
function matchAt(pattern: RegExp, text: string, at: number): number {
  const own = new RegExp(pattern);
  own.lastIndex = at;
  return own.test(text) ? own.lastIndex : -1;
}

function skipBlanks(text: string, from: number): number {
  let at = from;
  while (at < text.length && BLANK.test(text[at]!)) at += 1;
  return at;
}

/** Where the quoted text that begins at `from` ends, or -1. Letter by letter: a pattern would run out of stack on a long one. */
function endOfText(text: string, from: number): number {
  if (text[from] !== '"') return -1;
  let at = from + 1;
  while (at >= 0 && at < text.length && text[at] !== '"') {
    at = PLAIN.test(text[at]!) ? at + 1 : matchAt(ESCAPE, text, at);
  }
  return at < 0 || at >= text.length ? -1 : at + 1;
}

/** What may follow a whole value. */
function afterValue(open: readonly string[]): Hope {
  return open.length === 0 ? 'nothing' : 'comma-or-end';
}

/** One step: the place after what stands at `at` and what may come then, or null where it may not stand there. */
function step(text: string, at: number, hope: Hope, open: string[]): { at: number; hope: Hope } | null {
  const sign = text[at];
  const mayEnd = hope === 'comma-or-end' || hope === 'key-or-end' || hope === 'value-or-end';
  if (mayEnd && sign === open.at(-1)) {
    open.pop();
    return { at: at + 1, hope: afterValue(open) };
  }
  if (hope === 'colon') return sign === ':' ? { at: at + 1, hope: 'value' } : null;
  if (hope === 'comma-or-end') {
    return sign === ',' ? { at: at + 1, hope: open.at(-1) === '}' ? 'key' : 'value' } : null;
  }
  if (hope === 'key' || hope === 'key-or-end') {
    const end = endOfText(text, at);
    return end < 0 ? null : { at: end, hope: 'colon' };
  }
  if (hope === 'nothing') return null;
  if (sign === '{' || sign === '[') {
    open.push(sign === '{' ? '}' : ']');
    return { at: at + 1, hope: sign === '{' ? 'key-or-end' : 'value-or-end' };
  }
  const end = Math.max(endOfText(text, at), matchAt(LITERAL, text, at));
  return end < 0 ? null : { at: end, hope: afterValue(open) };
}

/**
 * The place of the first thing in a text that keeps it from being JSON.
 *
 * @returns Offset in UTF-16 units, the length of the text where its end comes too soon; -1 where the text is JSON.
 * @throws Never.
 * @source ECMA-404
 */
export function findJsonFault(text: string): number {
  const open: string[] = [];
  let state: { at: number; hope: Hope } = { at: 0, hope: 'value' };
  for (;;) {
    const at = skipBlanks(text, state.at);
    if (at === text.length) return state.hope === 'nothing' ? -1 : at;
    const next = step(text, at, state.hope, open);
    if (next === null) return at;
    state = next;
  }
}
