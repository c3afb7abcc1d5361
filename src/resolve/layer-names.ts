// What a group is called: the places a name can stand in, and how escapes in it are read.
import type { NameSource } from '../model/artwork.js';
import { elementName, isSvgElement, readAttribute, readText } from '../source/read-attribute.js';
import { type Source, XLINK_NAMESPACE, XML_NAMESPACE, XMLNS_NAMESPACE } from '../source/source.js';

/** Name and marks of a group, as its attributes and its title say them. */
export interface GroupNaming {
  /** `''` where no place holds a name. */
  readonly name: string;
  readonly nameSource: NameSource;
  /** Whether the file itself calls the group a layer. */
  readonly isMarked: boolean;
  /** Whether `visible="no"` stands on it. */
  readonly isSwitchedOff: boolean;
  readonly isLocked: boolean;
  readonly isPrintable: boolean;
}

const NOT_EDITORS: ReadonlySet<string> = new Set(['', XLINK_NAMESPACE, XML_NAMESPACE, XMLNS_NAMESPACE]);

/** What programs call a group before anybody names it. */
const DEFAULTS =
  'g|grp|group|groupe|gruppe|grupo|gruppo|layer|path|svg|clip-?path|clip-?group|shape|object|element|node|id';
const NUMBERED = `${DEFAULTS}|gr|rect|rectangle|svgid|xmlid|use|polygon|polyline|line|circle|ellipse|text|tspan|image|img|symbol|clip|mask|defs|surface|glyph|cls|st|fil|str|fnt|[a-z]`;
const HASH = '[0-9a-f]{8}(?:-?[0-9a-f]{4}){3}-?[0-9a-f]{12}|[a-z]{0,4}[0-9a-f]*\\d[0-9a-f]{7,}';
const MACHINE = new RegExp(`^(?:(?:${NUMBERED})?[-_. ]*\\d[-_.\\d]*|[-_.]+|(?:${DEFAULTS})[-_ ]*|<.*>|${HASH})$`, 'i');

/** Whether a name looks as if no person had written it: `g123`, `path12`, `Group_12`, `group-4-2`, `st0 st1`. */
export function isMachineName(name: string): boolean {
  return MACHINE.test(name) || (name.includes(' ') && name.split(' ').every((word) => MACHINE.test(word)));
}

/**
 * An id as the person wrote the name it was made from.
 *
 * `_x30_` and `_x0020_` stand for the character of that number; `_1_` at the end tells a copy from its original.
 */
export function decodeName(id: string): string {
  const decode = (text: string): string =>
    text.replace(/_x([0-9A-Fa-f]{4}|[0-9A-Fa-f]{2})_/g, (_, hex) => String.fromCharCode(Number.parseInt(hex, 16)));
  const bare = id.replace(/_\d+_$/, '');
  return tidyName(decode(bare)) || tidyName(decode(id));
}

/** Control characters and runs of white space as single blanks. */
function tidyName(text: string): string {
  return text.replace(/[\s\u0000-\u001f\u007f]+/g, ' ').trim();
}

interface Places {
  label: string;
  dataName: string;
  foreignId: string;
  id: string;
  className: string;
  groupMode: boolean;
  layerYes: boolean;
  off: boolean;
  locked: boolean;
  printable: boolean;
}

/** The namespaces that mark a group as a layer, so that a label and its mark are of one hand, are not told apart. */
function readForeign(places: Places, local: string, value: string): void {
  if (local === 'label') places.label ||= tidyName(value);
  else if (local === 'id') places.foreignId ||= decodeName(value);
  else if (local === 'groupmode') places.groupMode ||= value.trim() === 'layer';
  else if (local === 'layer') places.layerYes ||= value.trim() === 'yes';
  else if (local === 'visible') places.off ||= value.trim() === 'no';
  else if (local === 'printed') places.printable &&= value.trim() !== 'no';
  else if (local === 'editable') places.locked ||= value.trim() === 'no';
  else if (local === 'insensitive') places.locked ||= value.trim() === 'true';
}

const FOREIGN_LOCALS: ReadonlySet<string> = new Set(
  'label id groupmode layer visible printed editable insensitive'.split(' '),
);

function readPlaces(source: Source, row: number): Places {
  const { attributeStart, attributes } = source.elements;
  const places: Places = {
    label: '',
    dataName: '',
    foreignId: '',
    id: '',
    className: '',
    groupMode: false,
    layerYes: false,
    off: false,
    locked: false,
    printable: true,
  };
  for (let a = attributeStart[row]!; a < attributeStart[row + 1]!; a += 1) {
    const { local, namespace } = attributes.names[attributes.name[a]!]!;
    if (namespace === '') {
      if (local === 'id') places.id = decodeName(readAttribute(source, a));
      else if (local === 'data-name') places.dataName = tidyName(readAttribute(source, a));
      else if (local === 'class') places.className = decodeName(readAttribute(source, a));
    } else if (FOREIGN_LOCALS.has(local) && !NOT_EDITORS.has(namespace)) {
      readForeign(places, local, readAttribute(source, a));
    }
  }
  return places;
}

function readTitle(source: Source, row: number): string {
  const { next } = source.elements;
  for (let child = row + 1; child < next[row]!; child = next[child]!) {
    if (isSvgElement(source, child, 'title')) return tidyName(readText(source, child));
  }
  return '';
}

/**
 * Reads the name of a group and what the file says of it as a layer.
 *
 * A label comes before `data-name`, then an id in a foreign namespace, a title, the id, a class. Where a group is marked by
 * `layer="yes"` its id comes before its title, since such files write the name there.
 *
 * @throws Never.
 */
export function readNaming(source: Source, row: number): GroupNaming {
  const places = readPlaces(source, row);
  const title = places.label === '' && places.dataName === '' ? readTitle(source, row) : '';
  const id: readonly [NameSource, string] = ['id', places.id];
  const candidates: readonly (readonly [NameSource, string])[] = [
    ['label', places.label],
    ['data-name', places.dataName],
    ['foreign-id', places.foreignId],
    ...(places.layerYes ? [id] : []),
    ['title', title],
    id,
    ['class', places.className],
  ];
  const [nameSource, name] = candidates.find(([, text]) => text !== '') ?? ['position', ''];
  return {
    name,
    nameSource,
    isMarked: places.groupMode || places.layerYes,
    isSwitchedOff: places.off,
    isLocked: places.locked,
    isPrintable: places.printable,
  };
}

/** The qualified name of a group's element, for a layer that has no name. */
export function plainNameOf(source: Source, row: number): string {
  const { local } = elementName(source, row);
  return local === 'g' ? 'group' : local;
}
