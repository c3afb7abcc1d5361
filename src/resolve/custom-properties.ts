// Custom properties and var().

/** Custom properties of an element, computed: no var() is left. Names with their two hyphens. */
export interface CustomProperties {
  get(name: string): string | undefined;
}

/** Longest text that a value may grow to, so that variables that double each other stay small. */
const LONGEST_VALUE = 20_000;
/** Longest chain of properties of one element that lead to each other. */
const LONGEST_CHAIN = 256;
/** Deepest chain of fallbacks inside fallbacks. */
const DEEPEST_FALLBACK = 32;

/** Whether a value has to be substituted before it can be read. */
export function hasVariable(text: string): boolean {
  return /var\(/i.test(text);
}

/**
 * The custom properties of an element from those of its parent and its own declarations.
 *
 * A property in a cycle, or with a var() that leads nowhere, is left out: it then counts as not set.
 *
 * @source CSS Custom Properties 1, sections 2 and 3
 */
export function computeCustomProperties(
  parent: CustomProperties,
  declared: ReadonlyMap<string, string>,
): CustomProperties {
  if (declared.size === 0) return parent;
  // Only what the element says itself; a copy of all it inherits would cost their number for every element. Null: not set.
  const own = new Map<string, string | null>();
  const find = (name: string): string | undefined => {
    const value = own.get(name);
    return value === undefined ? parent.get(name) : (value ?? undefined);
  };
  for (const [name, text] of declared) if (text.toLowerCase() === 'initial') own.set(name, null);
  const open = new Set([...declared.keys()].filter((name) => !isWide(declared.get(name)!)));
  const cyclic = findCycles(declared, open);
  for (const name of open) own.set(name, null);
  let depth = 0;
  const settle = (name: string): string | null => {
    if (cyclic.has(name) || depth >= LONGEST_CHAIN) return null;
    if (!open.has(name)) return find(name) ?? null;
    open.delete(name);
    depth++;
    const value = substitute(declared.get(name)!, settle, 0);
    depth--;
    if (value !== null) own.set(name, value);
    return value;
  };
  for (const name of [...open]) if (open.has(name)) settle(name);
  return { get: find };
}

function isWide(text: string): boolean {
  return /^(?:inherit|initial|unset|revert|revert-layer)$/i.test(text);
}

/** Names that stand in a cycle of references. Walks without recursion: chains may be long. */
function findCycles(declared: ReadonlyMap<string, string>, open: ReadonlySet<string>): ReadonlySet<string> {
  const cyclic = new Set<string>();
  const done = new Set<string>();
  for (const start of open) {
    const path: { readonly name: string; readonly targets: readonly string[]; at: number }[] = [];
    const onPath = new Set<string>();
    const enter = (name: string): void => {
      onPath.add(name);
      path.push({ name, targets: listTargets(declared.get(name)!), at: 0 });
    };
    if (!done.has(start)) enter(start);
    while (path.length > 0) {
      const step = path.at(-1)!;
      const target = step.targets[step.at++];
      if (target === undefined) {
        done.add(step.name);
        onPath.delete(step.name);
        path.pop();
      } else if (onPath.has(target)) {
        for (let i = path.length - 1; i >= 0; i--) {
          cyclic.add(path[i]!.name);
          if (path[i]!.name === target) break;
        }
      } else if (open.has(target) && !done.has(target)) enter(target);
    }
  }
  return cyclic;
}

/** Names that a value refers to, fallbacks included. */
function listTargets(text: string): readonly string[] {
  return [...text.matchAll(/var\(\s*(--[^\s,()]+)/gi)].map((match) => match[1]!);
}

/** A value with its var() written out, or null where one leads nowhere or the text grows too long. */
export function substituteVariables(text: string, custom: CustomProperties): string | null {
  return substitute(text, (name) => custom.get(name) ?? null, 0);
}

function substitute(text: string, look: (name: string) => string | null, depth: number): string | null {
  if (depth > DEEPEST_FALLBACK) return null;
  let result = '';
  let at = 0;
  for (;;) {
    const scan = /(?<![\w-])var\(\s*(--[^\s,()]+)\s*(,?)/gi;
    scan.lastIndex = at;
    const match = scan.exec(text);
    if (match === null) break;
    const close = findClose(text, scan.lastIndex);
    if (close < 0) return null;
    const inside = text.slice(scan.lastIndex, close);
    if (match[2] === '' && inside.trim() !== '') return null;
    const value = look(match[1]!) ?? (match[2] === '' ? null : substitute(inside.trim(), look, depth + 1));
    if (value === null) return null;
    // Blanks keep two tokens from growing into one.
    result += `${text.slice(at, match.index)} ${value} `;
    if (result.length > LONGEST_VALUE) return null;
    at = close + 1;
  }
  const whole = at === 0 ? text : result + text.slice(at);
  if (at === 0 && hasVariable(text)) return null;
  return whole.length > LONGEST_VALUE ? null : whole.trim();
}

/** Offset of the parenthesis that closes the one before `start`, strings passed over, or -1. */
function findClose(text: string, start: number): number {
  let depth = 1;
  for (let at = start; at < text.length; at++) {
    const character = text[at]!;
    if (character === '(') depth++;
    else if (character === ')' && --depth === 0) return at;
    else if (character === '"' || character === "'") {
      const end = text.indexOf(character, at + 1);
      if (end < 0) return -1;
      at = end;
    }
  }
  return -1;
}
