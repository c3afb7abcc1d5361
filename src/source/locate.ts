// Offsets back to places in the file as delivered.
import type { Place } from '../model/finding.js';
import { countCharacters, findLineColumn, type LineColumn } from './malformed.js';
import { elementName, readAttributeValue } from './read-attribute.js';
import type { Source } from './source.js';

/** Line and column of an offset in the delivered file; inside a written-out entity: of its reference. */
export function locate(source: Source, offset: number): LineColumn {
  if (source.expansions.length === 0) return findLineColumn(source.text, offset);
  let line = 1;
  let lineStart = 0;
  let shift = 0;
  let at = 0;
  const count = (end: number): void => {
    for (
      let next = source.text.indexOf(0x0a, at);
      next >= 0 && next < end;
      next = source.text.indexOf(0x0a, next + 1)
    ) {
      line += 1;
      lineStart = next + 1;
      shift = 0;
    }
    at = end;
  };
  for (const expansion of source.expansions) {
    if (expansion.start >= offset) break;
    count(expansion.start);
    const inside = offset < expansion.end;
    if (inside) return { line, column: columnOf(source, lineStart, expansion.start) + shift };
    shift += expansion.referenceLength - countCharacters(source.text, expansion.start, expansion.end);
    at = expansion.end;
  }
  count(offset);
  return { line, column: columnOf(source, lineStart, offset) + shift };
}

function columnOf(source: Source, lineStart: number, offset: number): number {
  return countCharacters(source.text, lineStart, offset) + 1;
}

/** Line, column, name and id of an element. */
export function placeOf(source: Source, row: number): Place {
  const { line, column } = locate(source, source.elements.start[row]!);
  const id = readAttributeValue(source, row, 'id');
  return { line, column, element: elementName(source, row).qualified, ...(id === null ? {} : { id }) };
}
