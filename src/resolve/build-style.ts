// Styles from declarations in the order of the cascade.
import type { Colour, EffectKind, Paint } from '../model/artwork.js';
import { readColour } from './colour.js';
import { computeText, type ValueContext } from './compute-text.js';
import {
  type CustomProperties,
  computeCustomProperties,
  hasVariable,
  substituteVariables,
} from './custom-properties.js';
import { isWideKeyword, type Longhand } from './expand-declaration.js';
import { MEDIUM_FONT_SIZE } from './length.js';
import { BLACK, idOfUrl, listUrls, readPaint, readStrokePercent } from './paint.js';
import type { CssGeometry, Style } from './style.js';
import {
  type ComputedTexts,
  INHERITED_INITIAL,
  initialText,
  isInherited,
  OWN_INITIAL,
  type PropertyName,
  UNSET,
} from './style-properties.js';

/** A declaration with its rank: readable on its own, or holding var(). */
export interface RankedLonghand extends Longhand {
  readonly isAttribute: boolean;
  /** Computed value where it hangs on nothing, else null. */
  readonly settled: string | null;
}

/** A style with what its children need of it. */
export interface StyleRecord extends Style {
  readonly texts: ComputedTexts;
  readonly custom: CustomProperties;
  /** What a child that sets nothing starts from; made when first asked for. */
  readonly childTexts: () => ComputedTexts;
}

/** What all styles of a file share. */
export interface StyleShop {
  /** Whether an id is that of a gradient or pattern. */
  readonly isServer: (id: string) => boolean;
  readonly paints: Map<string, Paint>;
}

const ROOT_TEXTS: ComputedTexts = { ...INHERITED_INITIAL, ...OWN_INITIAL };
const NO_GEOMETRY: CssGeometry = {
  x: null,
  y: null,
  width: null,
  height: null,
  cx: null,
  cy: null,
  r: null,
  rx: null,
  ry: null,
  d: null,
};
const GEOMETRY_NAMES = Object.keys(NO_GEOMETRY) as (keyof CssGeometry)[];
const NO_CUSTOM: CustomProperties = new Map();
const NO_REFERENCES: readonly string[] = [];
const NO_EFFECTS: readonly EffectKind[] = [];
const REFERRING: readonly PropertyName[] = [
  'fill',
  'stroke',
  'marker-start',
  'marker-mid',
  'marker-end',
  'clip-path',
  'mask',
  'filter',
  'shape-inside',
  'shape-subtract',
];

/**
 * The style of an element from its declarations, the strongest last.
 *
 * @param clips - Whether the user agent cuts the element to its viewport.
 */
export function buildStyle(
  shop: StyleShop,
  parent: StyleRecord | null,
  declared: readonly RankedLonghand[],
  clips: boolean,
): StyleRecord {
  const winners = new Map<PropertyName, RankedLonghand>();
  const customDeclared = new Map<string, string>();
  for (const longhand of declared) {
    if (longhand.name.startsWith('--')) customDeclared.set(longhand.name, longhand.text);
    else winners.set(longhand.name as PropertyName, longhand);
  }
  const custom = computeCustomProperties(parent?.custom ?? NO_CUSTOM, customDeclared);
  const texts: Record<PropertyName, string> = { ...(parent?.childTexts() ?? ROOT_TEXTS) };
  const parentSize = parent?.fontSize ?? MEDIUM_FONT_SIZE;
  const rootSize = parent?.rootFontSize ?? MEDIUM_FONT_SIZE;
  const settle = (longhand: RankedLonghand, fontSize: number, rootFontSize: number): void => {
    if (longhand.settled !== null) {
      texts[longhand.name as PropertyName] = longhand.settled;
      return;
    }
    const context = { fontSize, rootFontSize, isAttribute: longhand.isAttribute };
    texts[longhand.name as PropertyName] = settleText(longhand, { parent, custom }, context);
  };
  const size = winners.get('font-size');
  if (size !== undefined) settle(size, parentSize, rootSize);
  const fontSize = Number(texts['font-size']);
  const rootFontSize = parent === null ? fontSize : rootSize;
  for (const longhand of winners.values()) if (longhand !== size) settle(longhand, fontSize, rootFontSize);
  return finishStyle(shop, parent, { texts, custom, fontSize, rootFontSize, clips });
}

interface Surroundings {
  readonly parent: StyleRecord | null;
  readonly custom: CustomProperties;
}

function settleText(longhand: RankedLonghand, surroundings: Surroundings, context: ValueContext): string {
  const { parent, custom } = surroundings;
  const name = longhand.name as PropertyName;
  const text = hasVariable(longhand.text) ? substituteVariables(longhand.text, custom) : longhand.text;
  // What a variable leaves unreadable counts as not set.
  const wide = text === null || isWideKeyword(text) ? (text ?? 'unset').toLowerCase() : null;
  if (wide === null) {
    // `color: currentcolor` is none for the reader of colours, and takes over the parent's as it should.
    return computeText(name, text!, context) ?? unsetText(name, parent);
  }
  if (wide === 'initial') return initialText(name);
  if (wide === 'inherit') return parent === null ? initialText(name) : inheritText(name, parent);
  // What the user agent clips stays clipped when the author steps back.
  if (wide.startsWith('revert') && name === 'overflow') return UNSET;
  return unsetText(name, parent);
}

function unsetText(name: PropertyName, parent: StyleRecord | null): string {
  if (isInherited(name)) return parent === null ? INHERITED_INITIAL[name] : parent.texts[name];
  return initialText(name);
}

function inheritText(name: PropertyName, parent: StyleRecord): string {
  if (name === 'overflow') return parent.overflow;
  return parent.texts[name] === UNSET ? initialText(name) : parent.texts[name];
}

interface StyleParts {
  readonly texts: ComputedTexts;
  readonly custom: CustomProperties;
  readonly fontSize: number;
  readonly rootFontSize: number;
  readonly clips: boolean;
}

function finishStyle(shop: StyleShop, parent: StyleRecord | null, parts: StyleParts): StyleRecord {
  const { texts } = parts;
  let childTexts: ComputedTexts | undefined;
  const color = texts.color === parent?.texts.color ? parent.color : (readColour(texts.color) ?? BLACK);
  return {
    texts,
    custom: parts.custom,
    childTexts() {
      childTexts ??= { ...texts, ...OWN_INITIAL };
      return childTexts;
    },
    paint: sharePaint(shop, texts, color),
    strokePercent: readStrokePercent(texts),
    color,
    visibility: texts.visibility as Style['visibility'],
    fontSize: parts.fontSize,
    rootFontSize: parts.rootFontSize,
    fontFamily: texts['font-family'],
    textAnchor: texts['text-anchor'],
    markers: {
      start: firstId(texts['marker-start']),
      mid: firstId(texts['marker-mid']),
      end: firstId(texts['marker-end']),
    },
    clipRule: texts['clip-rule'] as Style['clipRule'],
    display: texts.display,
    opacity: Number(texts.opacity),
    transform: orNull(texts.transform),
    transformBefore: joinTransforms(texts),
    transformOrigin: orNull(texts['transform-origin']),
    transformBox: texts['transform-box'],
    clipPath: firstId(texts['clip-path']),
    mask: firstId(texts.mask),
    filter: firstId(texts.filter),
    effects: listEffects(texts),
    overflow: texts.overflow === UNSET ? (parts.clips ? 'hidden' : 'visible') : texts.overflow,
    vectorEffect: texts['vector-effect'],
    geometry: readGeometry(texts),
    references: listReferences(texts),
  };
}

function orNull(text: string): string | null {
  return text === UNSET ? null : text;
}

function firstId(text: string): string | null {
  if (text === 'none') return null;
  for (const url of listUrls(text)) {
    const id = idOfUrl(url);
    if (id !== null) return id;
  }
  return null;
}

function joinTransforms(texts: ComputedTexts): string | null {
  const list = [texts.translate, texts.rotate, texts.scale].filter((text) => text !== 'none');
  return list.length === 0 ? null : list.join(' ');
}

function readGeometry(texts: ComputedTexts): CssGeometry {
  if (GEOMETRY_NAMES.every((name) => texts[name] === UNSET)) return NO_GEOMETRY;
  const geometry: Record<keyof CssGeometry, string | null> = { ...NO_GEOMETRY };
  for (const name of GEOMETRY_NAMES) geometry[name] = orNull(texts[name]);
  return geometry;
}

function listReferences(texts: ComputedTexts): readonly string[] {
  const ids = new Set<string>();
  for (const name of REFERRING) {
    if (texts[name] === 'none') continue;
    for (const url of listUrls(texts[name])) {
      const id = idOfUrl(url);
      if (id !== null) ids.add(id);
    }
  }
  return ids.size === 0 ? NO_REFERENCES : [...ids];
}

function listEffects(texts: ComputedTexts): readonly EffectKind[] {
  const effects: EffectKind[] = [];
  if (texts.opacity !== '1') effects.push('opacity');
  if (firstId(texts.mask) !== null) effects.push('mask');
  if (texts.filter !== 'none') effects.push('filter');
  if (texts['mix-blend-mode'] !== 'normal') effects.push('blend');
  return effects.length === 0 ? NO_EFFECTS : effects;
}

/** Shapes that are painted alike share one object, whatever else is set on them. */
function sharePaint(shop: StyleShop, texts: ComputedTexts, color: Colour): Paint {
  const key = [
    texts.fill,
    texts.stroke,
    color.key,
    color.alpha,
    texts['fill-opacity'],
    texts['stroke-opacity'],
    texts['fill-rule'],
    texts['stroke-width'],
    texts['stroke-linecap'],
    texts['stroke-linejoin'],
    texts['stroke-miterlimit'],
    texts['stroke-dasharray'],
    texts['stroke-dashoffset'],
    texts['vector-effect'],
  ].join('\u0000');
  const known = shop.paints.get(key);
  if (known !== undefined) return known;
  const paint = readPaint(texts, color, shop.isServer);
  shop.paints.set(key, paint);
  return paint;
}
