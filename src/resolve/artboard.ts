// The drawing area: what the root says of its size.
import { IDENTITY } from '../geometry/matrix.js';
import { MM_PER_INCH, MM_PER_PX, PT_PER_INCH, PX_PER_INCH } from '../geometry/units.js';
import type { Artboard } from '../model/artwork.js';
import { type Finding, finding } from '../model/finding.js';
import { placeOf } from '../source/locate.js';
import { findAttribute, readAttributeValue } from '../source/read-attribute.js';
import { DEFAULT_LIMITS, type Source } from '../source/source.js';
import { createCascade } from './cascade.js';
import { MEDIUM_FONT_SIZE, readPercentLength } from './length.js';
import type { Style } from './style.js';
import { fitViewBox, readViewBox, type ViewBox } from './view-box.js';

/** Size of a drawing that says none (CSS 2.2, section 10.3.2). */
const FALLBACK = { width: 300, height: 150 } as const;

/** One side as the root says it. */
interface Side {
  readonly stated: string;
  /** `physical`: in mm, cm, Q, in, pt or pc. `px`: px, no unit, or a unit of type. */
  readonly kind: 'physical' | 'px' | 'percent' | 'missing';
  /** px; for percent the share of the viewBox or of the fallback. */
  readonly value: number;
}

interface Size {
  readonly width: number;
  readonly height: number;
  /** Whether a side is in px, in percent or not said. */
  readonly doubt: 'none' | 'unsure' | 'missing';
  /** Whether either side has a physical unit, so that px are 1/96 inch. */
  readonly anchored: boolean;
}

function readSide(text: string | null, fontSize: number): Side {
  const stated = text ?? '';
  const length = readPercentLength(stated, { fontSize, rootFontSize: fontSize });
  if (length === null || !Number.isFinite(length.px + length.fraction)) return { stated, kind: 'missing', value: 0 };
  if (length.fraction !== 0) {
    const usable = length.px === 0 && length.fraction > 0;
    return { stated, kind: usable ? 'percent' : 'missing', value: usable ? length.fraction : 0 };
  }
  if (length.px <= 0) return { stated, kind: 'missing', value: 0 };
  return { stated, kind: /\d\s*(?:mm|cm|q|in|pt|pc)\s*$/i.test(stated) ? 'physical' : 'px', value: length.px };
}

/** A side as written: the attribute, or what CSS says, in the unit of the style attribute where that is what counts. */
function findStated(source: Source, name: 'width' | 'height', css: string | null, fontSize: number): string | null {
  if (css === null) return readAttributeValue(source, 0, name);
  const style = readAttributeValue(source, 0, 'style') ?? '';
  const written = new RegExp(`(?:^|;)\\s*${name}\\s*:\\s*([^;!]+)`, 'i').exec(style)?.[1]?.trim();
  if (written === undefined) return css;
  const px = readPercentLength(css, { fontSize })?.px;
  return readPercentLength(written, { fontSize, rootFontSize: fontSize })?.px === px ? written : css;
}

function isLength(side: Side): boolean {
  return side.kind === 'physical' || side.kind === 'px';
}

/** A side that is a length is that; one of the two alone takes the other along by the viewBox. */
function sizeOf(width: Side, height: Side, viewBox: ViewBox | null): Size {
  const whole = viewBox?.[2] ?? FALLBACK.width;
  const tall = viewBox?.[3] ?? FALLBACK.height;
  const complete = (side: Side, other: Side, full: number, otherFull: number): number => {
    if (isLength(side)) return side.value;
    if (viewBox !== null && isLength(other)) return (other.value * full) / otherFull;
    return side.kind === 'percent' ? side.value * full : full;
  };
  const bothKnown = isLength(width) && isLength(height);
  const physical = width.kind === 'physical' && height.kind === 'physical';
  return {
    width: complete(width, height, whole, tall),
    height: complete(height, width, tall, whole),
    doubt: physical ? 'none' : bothKnown ? 'unsure' : 'missing',
    anchored: width.kind === 'physical' || height.kind === 'physical',
  };
}

function printMm(value: number): string {
  return String(Number(value.toFixed(2)));
}

/** What a size comes to in mm at a number of user units to the inch. */
function sizeAt(size: Size, perInch: number): string {
  return `${printMm((size.width * MM_PER_INCH) / perInch)} x ${printMm((size.height * MM_PER_INCH) / perInch)} mm`;
}

function say(side: Side): string {
  return side.stated === '' ? 'not given' : `"${side.stated}"`;
}

interface Root {
  readonly source: Source;
  readonly width: Side;
  readonly height: Side;
  readonly viewBox: ViewBox | null;
}

function sayUnsure(root: Root, size: Size): Finding {
  const at96 = sizeAt(size, PX_PER_INCH);
  const at72 = sizeAt(size, PT_PER_INCH);
  const stated = `The width of the drawing is ${say(root.width)} and its height ${say(root.height)}`;
  const comes = `At 96 to the inch it comes to ${at96} (taken), at 72 to the inch to ${at72}.`;
  const from = root.viewBox === null ? 'a default of 300 x 150 px stands in' : 'the viewBox stands in';
  const unsure = size.doubt === 'unsure';
  return finding(unsure ? 'resolve/size-unsure' : 'resolve/size-missing', {
    message: unsure
      ? `${stated}: px are no sure size. ${comes}`
      : `${stated}: a length is wanted for both, and ${from}. ${comes}`,
    remedy: 'Give width and height of the drawing in mm, or say how many user units make an inch (96 or 72).',
    place: placeOf(root.source, 0),
    data: {
      width: root.width.stated,
      height: root.height.stated,
      widthMm: size.width * MM_PER_PX,
      heightMm: size.height * MM_PER_PX,
      at96,
      at72,
    },
  });
}

/**
 * Reads the artboard from `width`, `height`, `viewBox` and `preserveAspectRatio` of the root.
 *
 * A side that is missing or in percent follows the other by the viewBox, or is the viewBox's own; without a viewBox it is 300 or 150 px.
 *
 * @param userUnitsPerInch - For a size without a physical unit; null takes 96 and says so in a finding.
 * @param style - Computed style of the root, where CSS may set width and height; computed here where it is left out.
 * @throws Never.
 * @unit px (96 to the inch, or what the caller says), y down
 * @source SVG 2, sections 8.2, 8.6 and 8.7; CSS Images 3, section 5 (default sizing)
 */
export function readArtboard(
  source: Source,
  userUnitsPerInch: number | null,
  style: Style | null = styleOfRoot(source),
): { readonly artboard: Artboard; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const viewBox = readRootBox(source, findings);
  const fontSize = style?.fontSize ?? MEDIUM_FONT_SIZE;
  const width = readSide(findStated(source, 'width', style?.geometry.width ?? null, fontSize), fontSize);
  const height = readSide(findStated(source, 'height', style?.geometry.height ?? null, fontSize), fontSize);
  const size = sizeOf(width, height, viewBox);
  const perInch = size.anchored || userUnitsPerInch === null ? PX_PER_INCH : userUnitsPerInch;
  const guessed = size.doubt === 'missing' && viewBox === null;
  if (size.doubt !== 'none' && (size.anchored || guessed || userUnitsPerInch === null)) {
    findings.push(sayUnsure({ source, width, height, viewBox }, size));
  }
  const preserveAspectRatio = readAttributeValue(source, 0, 'preserveAspectRatio') ?? 'xMidYMid meet';
  const artboard: Artboard = {
    width: size.width,
    height: size.height,
    viewBox,
    preserveAspectRatio,
    matrix: viewBox === null ? IDENTITY : fitViewBox(viewBox, size, preserveAspectRatio),
    statedWidth: width.stated,
    statedHeight: height.stated,
    sizeIsSure: size.doubt === 'none',
    mmPerPx: MM_PER_INCH / perInch,
  };
  return { artboard, findings };
}

/** The root's style where a style sheet or attribute may set its size. */
function styleOfRoot(source: Source): Style | null {
  const hasSheet = source.elements.names.some((name) => name.local === 'style');
  if (!hasSheet && findAttribute(source, 0, 'style') < 0) return null;
  return createCascade(source, DEFAULT_LIMITS).computeStyle(0, null);
}

function readRootBox(source: Source, findings: Finding[]): ViewBox | null {
  const text = readAttributeValue(source, 0, 'viewBox');
  if (text === null) return null;
  const reading = readViewBox(text);
  if (reading.kind === 'box') return reading.box;
  findings.push(
    finding('resolve/view-box-invalid', {
      message: `The viewBox of the drawing is "${text.slice(0, 80)}" and is ignored: it takes four numbers, the last two above zero.`,
      remedy: 'Write the viewBox as x, y, width and height, for instance "0 0 210 297", or leave it out.',
      place: placeOf(source, 0),
      data: { viewBox: text.slice(0, 80) },
    }),
  );
  return null;
}
