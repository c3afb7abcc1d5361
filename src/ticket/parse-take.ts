// Rules as the command line writes them: `creasing=layer:"Fold lines",stroke:#00f,dashed`.
import { ROLES } from '../model/pass.js';
import type { Rule } from '../model/ticket.js';
import { PinbarError } from '../model/trouble.js';
import { nearestWord } from './nearest-word.js';

const EXAMPLE = 'cutting=stroke:#e5007d, creasing=layer:"Fold lines", print=rest';
const TEXT_KEYS = ['layer', 'stroke', 'fill', 'class', 'id', 'element'];
const KEYS = [...TEXT_KEYS, 'width', 'tolerance', 'dashed', 'solid', 'rest'];

function refuse(take: string, what: string, remedy: string): PinbarError {
  return new PinbarError('use/wrong', { message: `--take ${take}: ${what}`, remedy, data: { take } });
}

/** Parts between commas that stand in no quotes and no brackets. */
function splitParts(take: string, text: string): readonly string[] {
  const parts: string[] = [];
  let quote = '';
  let depth = 0;
  let part = '';
  for (const sign of text) {
    if (quote !== '') quote = sign === quote ? '' : quote;
    else if (sign === '"' || sign === "'") quote = sign;
    else if (sign === '(') depth += 1;
    else if (sign === ')') depth -= 1;
    if (sign === ',' && quote === '' && depth <= 0) {
      parts.push(part);
      part = '';
    } else part += sign;
  }
  if (quote !== '') throw refuse(take, 'a quote is never closed.', `Example: ${EXAMPLE}.`);
  return [...parts, part].map((item) => item.trim());
}

function unquote(text: string): string {
  return /^(["'])[\s\S]*\1$/.test(text) ? text.slice(1, -1) : text;
}

function readNumber(take: string, key: string, text: string, most: number): number {
  const number = Number(key === 'width' ? text.replace(/mm$/, '') : text);
  if (text === '' || !Number.isFinite(number) || number < 0 || number > most) {
    throw refuse(take, `${key} is "${text}"; allowed is a number from 0 to ${most}.`, `Example: cutting=${key}:0.25.`);
  }
  return number;
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
  if (key === 'rest') return { rest: true };
  if (key === 'dashed') return { dashed: true };
  if (key === 'solid') return { dashed: false };
  if (value === '') throw refuse(take, `${key} says no value.`, `Write ${key}:VALUE. Example: ${EXAMPLE}.`);
  if (key === 'width') return { widthMm: readNumber(take, key, value, 1000) };
  if (key === 'tolerance') return { colourTolerance: readNumber(take, key, value, 255) };
  return { [key]: value };
}

/**
 * Reads one rule of the command line.
 *
 * @param text - `PASS=CONDITION,CONDITION...`; PASS is a role, or a pass that the ticket declares.
 * @throws PinbarError `use/wrong`, naming the nearest right word.
 */
export function parseTake(text: string): Rule {
  const equals = text.indexOf('=');
  const pass = text.slice(0, Math.max(0, equals)).trim();
  if (pass === '')
    throw refuse(text, 'it is not of the form PASS=WHAT.', `Example: ${EXAMPLE}. Roles are ${ROLES.join(', ')}.`);
  const parts = splitParts(text, text.slice(equals + 1));
  return Object.assign({ pass }, ...parts.map((part) => readCondition(text, part))) as Rule;
}
