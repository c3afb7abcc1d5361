// Whether a list of media queries holds for print.

/** `unknown` where it hangs on a feature of the device. */
export type MediaAnswer = 'holds' | 'fails' | 'unknown';

/**
 * Evaluates a list of media queries as for print.
 *
 * Features (`min-width`, `color`, ...) depend on a device that is not there: a query that hangs on one is unknown.
 *
 * @returns `holds` when one query of the list holds, else `unknown` when one is unknown, else `fails`.
 * @source Media Queries 4, section 2
 */
export function answerMedia(list: string): MediaAnswer {
  const plain = list
    .replace(/\/\*[\s\S]*?\*\//g, ' ')
    .trim()
    .toLowerCase();
  if (plain === '') return 'holds';
  const answers = splitList(plain).map(answerQuery);
  if (answers.includes('holds')) return 'holds';
  return answers.includes('unknown') ? 'unknown' : 'fails';
}

/** Commas inside parentheses do not part queries. */
function splitList(list: string): readonly string[] {
  const parts = [''];
  let depth = 0;
  for (const character of list) {
    if (character === '(') depth++;
    else if (character === ')') depth--;
    if (character === ',' && depth === 0) parts.push('');
    else parts[parts.length - 1] += character;
  }
  return parts.map((part) => part.trim());
}

function answerQuery(query: string): MediaAnswer {
  const match = /^(?:(only|not)\s+)?([a-z-]+)(?:\s+and\s+(\S.*))?$/s.exec(query);
  if (match === null) return query.includes('(') ? 'unknown' : 'fails';
  const [, modifier, type, features] = match;
  const isMedium = type === 'print' || type === 'all';
  if (type === 'and' || type === 'or' || type === 'not' || type === 'only') return 'fails';
  if (modifier === 'not') return isMedium ? (features === undefined ? 'fails' : 'unknown') : 'holds';
  if (!isMedium) return 'fails';
  return features === undefined ? 'holds' : 'unknown';
}
