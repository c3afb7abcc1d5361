// What is wrong with the words of a finding, for a reader who designs cartons and writes no programs.
import type { Finding } from '../../src/index.js';
import { printFindings } from '../../src/report/print-findings.js';

/** What a program says when nobody looked: values of the language, class names, braces of a template. */
const PROGRAM_WORDS =
  /\b(?:undefined|null|NaN|Infinity|true|false|boolean|RangeError|TypeError|Uint8Array)\b|\[object|\$\{/;
const FEWEST_WORDS = 4;

/** A sentence, or several, closed by a full stop; a line shown from the file with a caret may follow. */
function isSentence(text: string): boolean {
  const said = text.split('\n')[0]!;
  return /[.:?!]$/.test(said) && said.split(/\s+/).length >= FEWEST_WORDS;
}

/** Whether a person who reads the printed finding is led to the place that it carries. */
function showsPlace(item: Finding): boolean {
  const printed = printFindings([item], true);
  const { line, file } = item.place;
  return (line === undefined || printed.includes(`line ${line}`)) && (file === undefined || printed.includes(file));
}

/** Everything wrong with the message and the remedy of a finding; the remedy of a note may be empty. */
export function listTextFaults(item: Finding): readonly string[] {
  const { message, remedy, severity } = item;
  const faults: string[] = [];
  if (!isSentence(message)) faults.push(`no sentence: ${message}`);
  if (severity !== 'note' && remedy === '') faults.push(`no remedy: ${message}`);
  if (remedy !== '' && !/^[A-Z]/.test(remedy)) faults.push(`the remedy does not begin like a sentence: ${remedy}`);
  if (remedy !== '' && !/[.?]$/.test(remedy)) faults.push(`the remedy does not end like a sentence: ${remedy}`);
  if (!showsPlace(item)) faults.push(`does not say where (line ${item.place.line}): ${message}`);
  for (const text of [message.split('\n')[0]!, remedy]) {
    if (PROGRAM_WORDS.test(text)) faults.push(`speaks like a program: ${text}`);
    if (/ {2}|\s[.,;](?!\w)|\.\.(?!\.)|\s""(?=[\s.,;:)]|$)/.test(text)) faults.push(`is not tidy: ${text}`);
  }
  return faults;
}
