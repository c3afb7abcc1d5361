// A pass written once more for another copy: what it draws, under ids of its own.
import { escapeXml } from '../model/escape-xml.js';
import { encodeUtf8 } from '../model/platform.js';
import { joinPieces } from '../model/sheet.js';
import { repeatRules } from '../resolve/repeat-rules.js';
import { readAttribute, readAttributeValue, readText } from '../source/read-attribute.js';
import { type Source, SVG_NAMESPACE, XML_NAMESPACE } from '../source/source.js';
import { type Edit, orderEdits } from '../split/edit.js';
import { NEVER_DRAWN_NAMES } from '../split/svg-names.js';

/** A style sheet of a file. */
interface StyleText {
  /** Without comments. */
  readonly text: string;
  readonly media: string;
}

function listStyleRows({ elements }: Source): readonly number[] {
  const isStyle = elements.names.map((name) => name.namespace === SVG_NAMESPACE && name.local === 'style');
  const rows: number[] = [];
  if (isStyle.includes(true))
    for (let row = 1; row < elements.count; row += 1) if (isStyle[elements.name[row]!]) rows.push(row);
  return rows;
}

/** The style sheets of a file, in its order. */
export function listStyles(source: Source): readonly StyleText[] {
  return listStyleRows(source).map((row) => ({
    text: readText(source, row).replace(/\/\*[\s\S]*?\*\//g, ''),
    media: (readAttributeValue(source, row, 'media') ?? '').trim(),
  }));
}

/** Attributes that name their element, as rows of the attribute table; those of the root and empty ones left out. */
function listIds({ elements }: Source): readonly number[] {
  const { attributes } = elements;
  const names = attributes.names.map(
    ({ namespace, local }) => local === 'id' && (namespace === '' || namespace === XML_NAMESPACE),
  );
  const found: number[] = [];
  for (let a = elements.attributeStart[1] ?? attributes.count; a < attributes.count; a += 1)
    if (names[attributes.name[a]!] && attributes.valueEnd[a]! > attributes.valueStart[a]!) found.push(a);
  return found;
}

/**
 * What the ids of each copy get behind them: nothing for the first, then `-copy-2` and so on.
 *
 * The word is chosen so that no id of the pass becomes another.
 */
export function chooseSuffixes(source: Source, copies: number): readonly string[] {
  const ids = new Set(listIds(source).map((attribute) => readAttribute(source, attribute)));
  ids.add(readAttributeValue(source, 0, 'id') ?? '');
  let word = '-copy-';
  const meets = (id: string): boolean => {
    const at = id.lastIndexOf(word);
    return at > 0 && /^\d+$/.test(id.slice(at + word.length)) && ids.has(id.slice(0, at));
  };
  while ([...ids].some(meets)) word = `-${word}`;
  return Array.from({ length: copies }, (_, i) => (i === 0 ? '' : `${word}${i + 1}`));
}

/** Rules of each style sheet that name ids, once more for the ids of the other copies. Escaped for XML. */
export function repeatIdRules(
  source: Source,
  suffixes: readonly string[],
): readonly { readonly media: string; readonly rules: string }[] {
  const rootId = readAttributeValue(source, 0, 'id') ?? '';
  return listStyles(source)
    .map(({ text, media }) => ({ media: escapeXml(media), rules: escapeXml(repeatRules(text, suffixes, rootId)) }))
    .filter(({ rules }) => rules !== '');
}

/** The topmost elements that draw nothing where they stand. */
function listUndrawn({ elements }: Source): readonly number[] {
  const undrawn = elements.names.map((name) => name.namespace === SVG_NAMESPACE && NEVER_DRAWN_NAMES.has(name.local));
  const rows: number[] = [];
  for (let row = 1; row < elements.count; ) {
    const isUndrawn = undrawn[elements.name[row]!]!;
    if (isUndrawn) rows.push(row);
    row = isUndrawn ? elements.next[row]! : row + 1;
  }
  return rows;
}

/** How much a copy behind the first takes: elements, and bytes without those of its suffixes. */
export function measureAgain({ source, structural }: { readonly source: Source; readonly structural: boolean }): {
  readonly elements: number;
  readonly bytes: number;
} {
  const { count, next, start, end, headEnd, tailStart } = source.elements;
  let elements = count;
  let bytes = tailStart[0]! - headEnd[0]!;
  for (const row of structural ? [] : listUndrawn(source)) {
    elements -= next[row]! - row;
    bytes -= end[row]! - start[row]!;
  }
  return { elements, bytes };
}

/**
 * What stands between the tags of the root, for a copy behind the first.
 *
 * Ids get the suffix, so that none stands twice. References stay as they are and find what the first copy defines: it looks the same
 * wherever it is referred to, since SVG measures it where it is used. So definitions and style sheets are not written again; where style
 * rules count elements they stay, and only the text of the sheets goes.
 *
 * @source SVG 2, sections 5.5 (never-rendered elements), 14.2 (gradients and patterns in the user space of what they paint); CSS Masking 1, section 3
 */
export function writeAgain(
  { source, structural }: { readonly source: Source; readonly structural: boolean },
  suffix: string,
): Uint8Array {
  const { elements, text } = source;
  const { valueEnd } = elements.attributes;
  const edits: Edit[] = listIds(source).map((a) => ({ start: valueEnd[a]!, end: valueEnd[a]!, replacement: suffix }));
  for (const row of structural ? listStyleRows(source) : listUndrawn(source)) {
    const span = structural
      ? [elements.headEnd[row]!, elements.tailStart[row]!]
      : [elements.start[row]!, elements.end[row]!];
    if (span[0]! < span[1]!) edits.push({ start: span[0]!, end: span[1]!, replacement: '' });
  }
  const pieces: Uint8Array[] = [];
  let at = elements.headEnd[0]!;
  for (const { start, end, replacement } of orderEdits(edits)) {
    pieces.push(text.subarray(at, start), encodeUtf8(replacement));
    at = end;
  }
  return joinPieces([...pieces, text.subarray(at, elements.tailStart[0]!)]);
}
