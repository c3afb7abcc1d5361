// Rules as the command line writes them: `creasing=layer:"Fold lines",stroke:#00f,dashed`.
import { ROLES } from '../model/pass.js';
import type { Rule } from '../model/ticket.js';
import { PinbarError } from '../model/trouble.js';
import { nearestWord } from './nearest-word.js';
import { ELEMENT_WORDS } from './ticket-shape.js';

const EXAMPLE = 'cutting=stroke:#e5007d, creasing=layer:"Fold lines", print=rest';
const FLAGS: { readonly [key: string]: Partial<Rule> } = {
  dashed: { dashed: true },
  solid: { dashed: false },
  rest: { rest: true },
};
const TEXT_KEYS = ['layer', 'stroke', 'fill', 'class', 'id', 'element'];
const KEYS = [...TEXT_KEYS, 'width', 'tolerance', ...Object.keys(FLAGS)];
const WIDEST_MM = 1000;
const CHANNEL_MOST = 255;

function refuse(take: string, what: string, remedy: string): PinbarError {
  return new PinbarError('use/wrong', { message: `--take ${take}: ${what}`, remedy, data: { take } });
}

/** Parts between commas that stand in no quotes and no brackets. A quote opens only where a value begins. */
function splitParts(take: string, text: string): readonly string[] {
  const parts: string[] = [];
  let quote = '';
  let depth = 0;
  let part = '';
  for (const sign of text) {
    if (quote !== '') quote = sign === quote ? '' : quote;
    else if ((sign === '"' || sign === "'") && part.trimEnd().endsWith(':')) quote = sign;
    else if (sign === '(') depth += 1;
    else if (sign === ')') depth = Math.max(0, depth - 1);
    if (sign === ',' && quote === '' && depth === 0) {
      parts.push(part);
      part = '';
    } else part += sign;
  }
  if (quote !== '') throw refuse(take, 'a quote is never closed.', `Example: ${EXAMPLE}.`);
  return [...parts, part].map((item) => item.trim());
}

function unquote(text: string): string {
  return text.length > 1 && /^(["'])[\s\S]*\1$/.test(text) ? text.slice(1, -1) : text;
}

function readNumber(take: string, key: string, text: string): number {
  const most = key === 'width' ? WIDEST_MM : CHANNEL_MOST;
  const plain = key === 'width' ? text.replace(/\s*mm$/, '') : text;
  const number = /^(?:\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : Number.NaN;
  if (!(number <= most)) {
    const unit = key === 'width' ? ' mm' : '';
    const example = key === 'width' ? 'cutting=width:0.25mm' : 'cutting=stroke:#e5007d,tolerance:8';
    throw refuse(take, `${key} is "${text}"; allowed is a number from 0 to ${most}${unit}.`, `Example: ${example}.`);
  }
  return number;
}

function readElement(take: string, text: string): string {
  if (ELEMENT_WORDS.includes(text)) return text;
  const near = nearestWord(text, ELEMENT_WORDS);
  const remedy = near === null ? 'Example: cutting=element:path.' : `Did you mean "${near}"?`;
  throw refuse(take, `element is "${text}"; allowed are ${ELEMENT_WORDS.join(', ')}.`, remedy);
}

/** One condition as it stands in a ticket. */
function readCondition(take: string, part: string): Partial<Rule> {
  const colon = part.indexOf(':');
  const key = (colon < 0 ? part : part.slice(0, colon)).trim();
  const value = colon < 0 ? '' : unquote(part.slice(colon + 1).trim());
  if (!KEYS.includes(key)) {
    const near = nearestWord(key, KEYS);
    const remedy = near === null ? `Allowed are ${KEYS.join(', ')}.` : `Did you mean "${near}"?`;
    throw refuse(take, `"${key}" is not something a rule can look at.`, `${remedy} Example: ${EXAMPLE}.`);
  }
  const flag = FLAGS[key];
  if (flag !== undefined && colon < 0) return flag;
  if (flag !== undefined) throw refuse(take, `${key} takes no value.`, `Write ${key} alone. Example: ${EXAMPLE}.`);
  if (value === '') throw refuse(take, `${key} says no value.`, `Write ${key}:VALUE. Example: ${EXAMPLE}.`);
  if (key === 'width') return { widthMm: readNumber(take, key, value) };
  if (key === 'tolerance') return { colourTolerance: readNumber(take, key, value) };
  return { [key]: key === 'element' ? readElement(take, value) : value };
}

/**
 * Reads one rule of the command line.
 *
 * @param text - `PASS=CONDITION,CONDITION...`; PASS is a role, or a pass that the ticket declares. Whether there is such a pass,
 * `readTicket` says, since only a whole ticket shows it.
 * @throws PinbarError `use/wrong`, naming the nearest right word.
 */
export function parseTake(text: string): Rule {
  const equals = text.indexOf('=');
  const pass = text.slice(0, Math.max(0, equals)).trim();
  if (pass === '')
    throw refuse(text, 'it is not of the form PASS=WHAT.', `Example: ${EXAMPLE}. Roles are ${ROLES.join(', ')}.`);
  const parts = splitParts(text, text.slice(equals + 1)).map((part) => readCondition(text, part));
  const keys = parts.flatMap((part) => Object.keys(part));
  const twice = keys.find((key, i) => keys.indexOf(key) !== i);
  if (twice !== undefined) {
    throw refuse(text, `${twice} is said twice.`, 'A shape must fit every condition; write one --take for each.');
  }
  if (keys.includes('rest') && keys.length > 1) {
    throw refuse(text, 'rest stands alone.', `Take it or the other conditions out. Example: ${EXAMPLE}.`);
  }
  return Object.assign({ pass }, ...parts) as Rule;
}
