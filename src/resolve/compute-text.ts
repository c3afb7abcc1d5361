// Computed values of single properties, as texts that depend on nothing.
import { readColour } from './colour.js';
import { readCssTransform } from './css-transform.js';
import { type LengthContext, readLength, readPercentLength } from './length.js';
import type { PropertyName } from './style-properties.js';
import { readTransformOrigin } from './transform-origin.js';

/** What a value is relative to. For `font-size` itself, `fontSize` is that of the parent. */
export interface ValueContext {
  readonly fontSize: number;
  readonly rootFontSize: number;
  /** A presentation attribute: lengths need no unit. */
  readonly isAttribute: boolean;
}

/** What a text that is no value of its property is taken for in a finding. */
export type ValueKind = 'colour' | 'length' | 'word';

type Compute = (text: string, context: ValueContext) => string | null;

const URL_REFERENCE = /^url\(\s*(?:"[^"]*"|'[^']*'|[^\s"'()]*)\s*\)/i;
const SIZE_WORDS: ReadonlyMap<string, number> = new Map([
  ['xx-small', 9 / 16],
  ['x-small', 10 / 16],
  ['small', 13 / 16],
  ['medium', 1],
  ['large', 18 / 16],
  ['x-large', 24 / 16],
  ['xx-large', 32 / 16],
  ['xxx-large', 48 / 16],
]);
const BOX_WORDS = 'content-box|border-box|fill-box|stroke-box|view-box';

/** One word or several of them. @source CSS Display 3, section 2 */
const DISPLAY_WORD =
  'block|inline|run-in|flow|flow-root|table|flex|grid|ruby|math|list-item|contents|none|table-[a-z-]+|ruby-[a-z-]+|inline-block|inline-table|inline-flex|inline-grid|-webkit-[a-z-]+';
const DISPLAY_WORDS = `(?:${DISPLAY_WORD})(?: (?:${DISPLAY_WORD})){0,2}`;
/** @source Compositing and Blending 1, section 5 */
const BLEND_WORDS =
  'normal|multiply|screen|overlay|darken|lighten|color-dodge|color-burn|hard-light|soft-light|difference|exclusion|hue|saturation|color|luminosity|plus-darker|plus-lighter';
/** @source SVG 2, section 8.13 */
const EFFECT_WORDS = 'non-scaling-stroke|non-scaling-size|non-rotation|fixed-position|viewport|screen';

const computePaint: Compute = (text) => {
  const lower = text.toLowerCase();
  if (lower === 'none' || lower === 'context-fill' || lower === 'context-stroke') return 'none';
  if (lower === 'currentcolor') return 'currentcolor';
  const url = URL_REFERENCE.exec(text);
  if (url === null) return readColour(text) === null ? null : text;
  const fallback = text.slice(url[0].length).trim();
  if (fallback === '' || /^(?:none|currentcolor)$/i.test(fallback)) return `${url[0]} ${fallback.toLowerCase()}`.trim();
  return readColour(fallback) === null ? null : `${url[0]} ${fallback}`;
};

const computeColour: Compute = (text) => (readColour(text) === null ? null : text);

const computeUnit: Compute = (text) => {
  const match = /^([+-]?(?:\d*\.)?\d+(?:e[+-]?\d+)?)(%?)$/i.exec(text);
  const value = match === null ? computeCalcNumber(text) : Number(match[1]) / (match[2] === '%' ? 100 : 1);
  return value === null || Number.isNaN(value) ? null : String(Math.min(1, Math.max(0, value)) + 0);
};

/** calc() of plain numbers. */
function computeCalcNumber(text: string): number | null {
  if (!/^calc\([\d\s.+*/()-]*\)$/i.test(text)) return null;
  return readLength(text, { fontSize: 0, percentBase: 0 });
}

const computeMiterlimit: Compute = (text) => {
  const value = /^[+-]?(?:\d*\.)?\d+(?:e[+-]?\d+)?$/i.test(text) ? Number(text) : computeCalcNumber(text);
  return value === null || !(value >= 0) || !Number.isFinite(value) ? null : String(value + 0);
};

function computeStrokeLength(text: string, context: ValueContext, least: number): string | null {
  const length = readPercentLength(text, context);
  if (length === null || length.px < least || length.fraction < least) return null;
  return length.fraction === 0 ? String(length.px) : `${length.px},${length.fraction}`;
}

const computeDasharray: Compute = (text, context) => {
  if (text.toLowerCase() === 'none') return 'none';
  const parts = text.match(/(?:[^\s,()]|\((?:[^()]|\([^()]*\))*\))+/g) ?? [];
  const commas = /^\s*,|,\s*,|,\s*$/.test(text);
  const lengths = parts.map((part) => computeStrokeLength(part, context, 0));
  return commas || parts.length === 0 || lengths.includes(null) ? null : lengths.join(' ');
};

const computeFontSize: Compute = (text, context) => {
  const lower = text.toLowerCase();
  const step = SIZE_WORDS.get(lower);
  if (step !== undefined) return String(16 * step);
  if (lower === 'smaller') return String(context.fontSize / 1.2);
  if (lower === 'larger') return String(context.fontSize * 1.2);
  const lengthContext: LengthContext = {
    fontSize: context.fontSize,
    rootFontSize: context.rootFontSize,
    percentBase: context.fontSize,
    bareNumbers: context.isAttribute,
  };
  const size = readLength(text, lengthContext);
  return size === null || size < 0 ? null : String(size);
};

const computeReference: Compute = (text) => {
  if (text.toLowerCase() === 'none') return 'none';
  return /^[a-z-]+\(/i.test(text) ? text : null;
};

/** A clip path stands alone; basic shapes and boxes clip nothing here. @source CSS Masking 1, section 3.5 */
const computeClip: Compute = (text, context) => {
  if (new RegExp(`^(?:${BOX_WORDS})$`, 'i').test(text)) return 'none';
  const url = URL_REFERENCE.exec(text);
  return url === null || url[0].length === text.length ? computeReference(text, context) : null;
};

const computeTransform: Compute = (text, context) =>
  readCssTransform(text, { width: 100, height: 100 }, context.fontSize) === null ? null : text;

const computeOrigin: Compute = (text, context) => {
  if (!context.isAttribute && /(?:^|\s)[+-]?(?=[\d.]*[1-9])(?:\d+\.?\d*|\.\d+)(?=\s|$)/.test(text)) return null;
  const box = { x: 0, y: 0, width: 100, height: 100 };
  return readTransformOrigin(text, box, context.fontSize) === null ? null : text;
};

/** `translate`, `rotate` and `scale` have blanks where the functions have commas. @source CSS Transforms 2, section 5 */
function computeSingleTransform(name: 'translate' | 'rotate' | 'scale'): Compute {
  return (text, context) => {
    const lower = text.toLowerCase();
    if (lower === 'none') return 'none';
    const parts = lower.match(/(?:[^\s()]|\((?:[^()]|\([^()]*\))*\))+/g) ?? [];
    const written =
      name === 'rotate' ? writeRotate(parts) : `${name}${parts.length === 3 ? '3d' : ''}(${parts.join(',')})`;
    return written === null ? null : computeTransform(written, context);
  };
}

function writeRotate(parts: readonly string[]): string | null {
  if (parts.length === 1) return `rotate(${parts[0]})`;
  if (parts.length === 4) {
    const isLast = /[a-z]$/.test(parts[3]!);
    return `rotate3d(${(isLast ? parts : [...parts.slice(1), parts[0]!]).join(',')})`;
  }
  if (parts.length !== 2) return null;
  const axis = parts.find((part) => /^[xyz]$/.test(part));
  const angle = parts.find((part) => !/^[xyz]$/.test(part));
  return axis === undefined || angle === undefined ? null : `rotate${axis}(${angle})`;
}

const computeGeometry: Compute = (text, context) => {
  if (text.toLowerCase() === 'auto') return 'auto';
  const length = readPercentLength(text, { ...context, bareNumbers: false });
  if (length === null) return null;
  // Sizes relative to type are settled here: the caller knows the viewport alone.
  if (length.fraction === 0) return `${length.px}px`;
  return length.px === 0 ? `${length.fraction * 100}%` : `calc(${length.px}px + ${length.fraction * 100}%)`;
};

const computePathData: Compute = (text) =>
  /^none$/i.test(text) || /^path\(\s*(?:"[^"]*"|'[^']*')\s*\)$/i.test(text) ? text : null;

/** One of the words, in lower case. */
function computeWord(words: string): Compute {
  const known = new RegExp(`^(?:${words})$`);
  return (text) => {
    const lower = text.toLowerCase();
    return known.test(lower) ? lower : null;
  };
}

const strokeLength: Compute = (text, context) => computeStrokeLength(text, context, 0);
const strokeOffset: Compute = (text, context) => computeStrokeLength(text, context, Number.NEGATIVE_INFINITY);

const COMPUTE: Readonly<Record<PropertyName, readonly [ValueKind, Compute]>> = {
  fill: ['colour', computePaint],
  stroke: ['colour', computePaint],
  color: ['colour', computeColour],
  'fill-opacity': ['length', computeUnit],
  'stroke-opacity': ['length', computeUnit],
  opacity: ['length', computeUnit],
  'fill-rule': ['word', computeWord('nonzero|evenodd')],
  'clip-rule': ['word', computeWord('nonzero|evenodd')],
  'stroke-width': ['length', strokeLength],
  'stroke-dashoffset': ['length', strokeOffset],
  'stroke-dasharray': ['length', computeDasharray],
  'stroke-miterlimit': ['length', computeMiterlimit],
  'stroke-linecap': ['word', computeWord('butt|round|square')],
  'stroke-linejoin': ['word', computeWord('miter|round|bevel')],
  visibility: ['word', computeWord('visible|hidden|collapse')],
  'font-size': ['length', computeFontSize],
  'font-family': ['word', (text) => text],
  'text-anchor': ['word', computeWord('start|middle|end')],
  'marker-start': ['word', computeReference],
  'marker-mid': ['word', computeReference],
  'marker-end': ['word', computeReference],
  display: ['word', computeWord(DISPLAY_WORDS)],
  transform: ['length', computeTransform],
  translate: ['length', computeSingleTransform('translate')],
  rotate: ['length', computeSingleTransform('rotate')],
  scale: ['length', computeSingleTransform('scale')],
  'transform-origin': ['length', computeOrigin],
  'transform-box': ['word', computeWord(BOX_WORDS)],
  'clip-path': ['word', computeClip],
  mask: ['word', (text) => computeReference(text, NO_CONTEXT) ?? 'none'],
  filter: ['word', computeReference],
  'mix-blend-mode': ['word', computeWord(BLEND_WORDS)],
  overflow: [
    'word',
    computeWord('(?:visible|hidden|clip|scroll|auto|overlay)(?: (?:visible|hidden|clip|scroll|auto|overlay))?'),
  ],
  'vector-effect': ['word', computeWord(`none|(?:${EFFECT_WORDS})(?: (?:${EFFECT_WORDS}))*`)],
  'shape-inside': ['word', (text) => text],
  'shape-subtract': ['word', (text) => text],
  x: ['length', computeGeometry],
  y: ['length', computeGeometry],
  width: ['length', computeGeometry],
  height: ['length', computeGeometry],
  cx: ['length', computeGeometry],
  cy: ['length', computeGeometry],
  r: ['length', computeGeometry],
  rx: ['length', computeGeometry],
  ry: ['length', computeGeometry],
  d: ['word', computePathData],
};

const NO_CONTEXT: ValueContext = { fontSize: 16, rootFontSize: 16, isAttribute: false };

/**
 * The computed value of a property as a text in which nothing is relative any more.
 *
 * Lengths of strokes come as `px` or `px,fraction` (of the viewport's diagonal), font sizes in px, geometry in px and percent.
 *
 * @param text - Trimmed, without comments, `!important`, var() and the keywords that every property knows.
 * @returns Null where the text is no value of the property.
 * @throws Never.
 */
export function computeText(name: PropertyName, text: string, context: ValueContext): string | null {
  return COMPUTE[name][1](text, context);
}

/** Whether a value is computed without looking at the size of type, for all we know. */
export function standsAlone(text: string): boolean {
  return !HANGS_ON_TYPE.test(text);
}

const HANGS_ON_TYPE = /em|ex|ch|%|larger|smaller/i;

/** What kind of value a property takes. */
export function valueKind(name: PropertyName): ValueKind {
  return COMPUTE[name][0];
}
