// What to do about a finding on the page, where its own words name an option of the command line: the page has a field for it.
import type { Finding, FindingCode } from '../model/finding.js';

/** An option of the command line. */
const OPTION = /(?:^|[\s(])--[a-z]/;

/** By code; values of `data` stand in their places. */
const ON_PAGE: Readonly<Partial<Record<FindingCode, string>>> = {
  'mark/no-room':
    'Under “Marks and size” let the artboard grow by {marginMm} mm, alike on all passes, or go without marks.',
  'layer/hidden-asked': 'Under “Answers” take the hidden layers, or leave them out.',
  'layer/hidden-skipped': 'Take the hidden layers under “Answers” if they are wanted.',
  'classify/unclaimed': 'Choose their pass under “What is drawn”, or leave them out there.',
  'classify/name-against-paint': 'Choose the right pass under “What is drawn”.',
  'classify/name-unsure':
    'If the name is right, choose that pass under “What is drawn”; if not, move the shapes to another layer.',
  'classify/fill-and-stroke':
    'Under “Answers” let the fill go to print and the line to its tool, which takes a pass that prints; or draw them as two shapes.',
  'split/picture-linked':
    'Drop the picture onto this page and have it put into the files under “Answers”, or leave it out there.',
  'split/picture-left-out':
    'Nothing to do if it is to be left out, as asked; if not, have it put into the files under “Answers”.',
  'sheet/bleed-into-neighbour':
    'Under “Sheet and copies” ask for {gutterMm} mm between the blanks: as much as the print reaches beyond the blank. Copies are never clipped.',
  'sheet/too-small': 'Ask for fewer copies, a larger sheet, another turn of the copies, or for no marks.',
};

/** By code, whatever their own words: those speak of rules and tickets, which nobody writes on a page. */
const ALWAYS: Readonly<Partial<Record<FindingCode, string>>> = {
  'classify/claimed-twice': 'Choose the right pass under “What is drawn”.',
  'classify/pass-empty': 'Send something to it under “What is drawn”, or load a ticket without it.',
  // The page is given pictures one by one, without their folders.
  'split/picture-refused':
    'Drop the picture onto this page, or leave it out under “Answers”. Pictures of one name from several folders must be put into the drawing itself.',
};

/** What to do, in the words of the page. */
export function sayRemedy({ code, remedy, data }: Finding): string {
  const always = ALWAYS[code];
  if (always !== undefined) return always;
  if (!OPTION.test(remedy)) return remedy;
  const text = ON_PAGE[code];
  if (text !== undefined) return text.replace(/\{(\w+)\}/g, (_, key: string) => String(data[key]));
  return remedy
    .replace(/ \(--[^)]*\)/g, '')
    .replace(/,? or raise the bound with --limit \S+$/, '.')
    .replace(
      /If the file is sound, raise the bound with --limit \S+$/,
      'Make the drawing simpler; the command line can raise the bound.',
    );
}
