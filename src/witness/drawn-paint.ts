// What paints a shape in a foreign file, as far as attributes, inline styles and plain rules say.
import { attributeOf, type WitnessElement } from './read-tree.js';
import { classesOf, matchRules, readDeclarations, type StyleBook } from './style-rules.js';

/** Inherited paint, values as written. */
export interface PaintState {
  readonly fill: string;
  readonly stroke: string;
  readonly color: string;
  readonly strokeWidth: string;
  readonly strokeLinecap: string;
  readonly strokeLinejoin: string;
  readonly strokeMiterlimit: string;
  readonly visibility: string;
}

/** Paint of the root's parent: the initial values of SVG 2. */
export const INITIAL_PAINT: PaintState = {
  fill: '#000000',
  stroke: 'none',
  color: '#000000',
  strokeWidth: '1',
  strokeLinecap: 'butt',
  strokeLinejoin: 'miter',
  strokeMiterlimit: '4',
  visibility: 'visible',
};

const FIELDS: Readonly<Record<string, keyof PaintState>> = {
  fill: 'fill',
  stroke: 'stroke',
  color: 'color',
  'stroke-width': 'strokeWidth',
  'stroke-linecap': 'strokeLinecap',
  'stroke-linejoin': 'strokeLinejoin',
  'stroke-miterlimit': 'strokeMiterlimit',
  visibility: 'visibility',
};

/** The basic colour words of CSS 2.2, enough to see that a program has spelled a colour anew. */
const WORDS: Readonly<Record<string, string>> = {
  black: '#000000',
  white: '#ffffff',
  red: '#ff0000',
  lime: '#00ff00',
  blue: '#0000ff',
  yellow: '#ffff00',
  cyan: '#00ffff',
  aqua: '#00ffff',
  magenta: '#ff00ff',
  fuchsia: '#ff00ff',
  gray: '#808080',
  grey: '#808080',
  silver: '#c0c0c0',
  maroon: '#800000',
  green: '#008000',
  navy: '#000080',
  olive: '#808000',
  purple: '#800080',
  teal: '#008080',
  orange: '#ffa500',
};

function hexByte(text: string): string {
  const value = text.endsWith('%') ? (Number(text.slice(0, -1)) * 255) / 100 : Number(text);
  return Math.max(0, Math.min(255, Math.round(value)))
    .toString(16)
    .padStart(2, '0');
}

/** One spelling for the common ways to write a colour; anything else as written. */
export function spellColour(text: string): string {
  const value = text.trim().toLowerCase();
  const short = /^#([0-9a-f])([0-9a-f])([0-9a-f])$/.exec(value);
  if (short !== null) return `#${short[1]}${short[1]}${short[2]}${short[2]}${short[3]}${short[3]}`;
  const rgb = /^rgb\(\s*([\d.]+%?)[\s,]+([\d.]+%?)[\s,]+([\d.]+%?)\s*\)$/.exec(value);
  if (rgb !== null) return `#${hexByte(rgb[1]!)}${hexByte(rgb[2]!)}${hexByte(rgb[3]!)}`;
  if (value.startsWith('url(')) return text.trim().replace(/["'\s]/g, '');
  return WORDS[value] ?? value;
}

/** What an element itself declares of some properties, the winning value of each. */
function declareOwn(element: WitnessElement, book: StyleBook): ReadonlyMap<string, string> {
  const own = new Map<string, string>();
  for (let i = 0; i < element.attributeNames.length; i += 1) {
    const name = element.attributeNames[i]!;
    if (name in FIELDS || name === 'display') own.set(name, element.attributeValues[i]!);
  }
  const rules = matchRules(book, element);
  for (const rule of rules) for (const [property, { value }] of rule.declarations) own.set(property, value);
  const style = attributeOf(element, 'style');
  const inline = style === null ? null : readDeclarations(style);
  if (inline !== null) for (const [property, { value }] of inline) own.set(property, value);
  for (const rule of rules) {
    for (const [property, { value, important }] of rule.declarations) {
      if (important && inline?.get(property)?.important !== true) own.set(property, value);
    }
  }
  return own;
}

/** Paint of an element and whether display takes it away. */
export function paintElement(
  element: WitnessElement,
  parent: PaintState,
  book: StyleBook,
): { readonly paint: PaintState; readonly isGone: boolean } {
  const own = declareOwn(element, book);
  if (own.size === 0) return { paint: parent, isGone: false };
  const paint: { -readonly [Key in keyof PaintState]: string } = { ...parent };
  for (const [property, value] of own) {
    const field = Object.hasOwn(FIELDS, property) ? FIELDS[property]! : undefined;
    if (field !== undefined && value.trim() !== 'inherit') paint[field] = value.trim();
  }
  return { paint, isGone: own.get('display')?.trim() === 'none' };
}

/** Fill and stroke in one spelling; with the classes and the sheet's text where rules are not all understood. */
export function signPaint(
  paint: PaintState,
  element: WitnessElement,
  book: StyleBook,
): { readonly fill: string; readonly stroke: string; readonly rest: string } {
  const spell = (value: string): string => spellColour(value.toLowerCase() === 'currentcolor' ? paint.color : value);
  const stroke = spell(paint.stroke);
  const isOpaque = book.opaqueProperties.has('fill') || book.opaqueProperties.has('stroke');
  return {
    fill: spell(paint.fill),
    stroke,
    rest: isOpaque ? `${classesOf(element).join(' ')} ${book.text}` : '',
  };
}
