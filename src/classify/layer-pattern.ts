// Which names and layers the patterns of rules stand for.
import { foldWord } from './role-words.js';

/** The pattern of a rule for shapes that stand in no layer. */
export const NO_LAYER = '/';

/** A pattern with `*` as a test on folded text. */
export function compilePattern(pattern: string): (text: string) => boolean {
  const folded = foldWord(pattern);
  if (!folded.includes('*')) return (text) => foldWord(text) === folded;
  const parts = folded.split('*');
  return (text) => {
    const target = foldWord(text);
    const [first, ...rest] = parts;
    if (!target.startsWith(first!)) return false;
    let at = first!.length;
    for (const [i, part] of rest.entries()) {
      const isLast = i === rest.length - 1;
      const found = isLast ? target.length - part.length : target.indexOf(part, at);
      if (found < at || !target.startsWith(part, found)) return false;
      at = found + part.length;
    }
    return true;
  };
}

/**
 * The pattern of a rule for a layer, as a test: one that begins with `/` is a whole path to the letter, as layers alike in name have
 * paths of their own; any other is a name or a path, with `*`, case and accents folded.
 */
export function compileLayer(pattern: string): (layer: { readonly name: string; readonly path: string }) => boolean {
  if (pattern.startsWith('/')) return ({ path }) => spellLayer(path) === pattern;
  const matches = compilePattern(pattern);
  return ({ name, path }) => matches(name) || matches(path);
}

/** The pattern that stands for one layer alone, by its path. */
export function spellLayer(path: string): string {
  return `/${path}`;
}
