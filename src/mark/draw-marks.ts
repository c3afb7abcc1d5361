// Draws the planned marks as one group, in a pass's own stroke.
import { printNumber } from '../geometry/print-number.js';
import { drawLetters, measureLetters } from '../geometry/stroke-letters.js';
import type { MarkPlan, PointMm } from '../model/marks.js';
import { isToolpath, namesPass, type Pass } from '../model/pass.js';
import type { MarksRequest } from '../model/ticket.js';

/** How one pass draws the marks. */
export interface MarkStyle {
  readonly pass: Pass;
  /** Colour of the lines (and of the discs on surface passes), as CSS. */
  readonly colour: string;
  readonly label: string;
}

const LABEL_HEIGHT_MM = 3;
/** Half the angle an arc of a toolpath disc spans: the gaps between the four arcs hold the disc in the sheet. */
const COS_30 = 0.8660254037844386;
const SIN_30 = 0.5;

function n(value: number): string {
  return printNumber(value, 4);
}

/** L-shaped open lines at the four corners of the frame. */
function cornerPath(plan: MarkPlan, length: number): string {
  const [left, top, right, bottom] = plan.frameMm;
  const corner = (x: number, y: number, dx: number, dy: number): string => `M${n(x)} ${n(y + dy)}V${n(y)}H${n(x + dx)}`;
  return [
    corner(left, top, length, length),
    corner(right, top, -length, length),
    corner(right, bottom, -length, -length),
    corner(left, bottom, length, -length),
  ].join('');
}

function crossPath(centres: readonly PointMm[], size: number): string {
  const half = size / 2;
  return centres
    .map(([x, y]) => `M${n(x - half)} ${n(y)}H${n(x + half)}M${n(x)} ${n(y - half)}V${n(y + half)}`)
    .join('');
}

/** Full discs for a surface pass. */
function discPath(centres: readonly PointMm[], radius: number): string {
  const r = n(radius);
  return centres
    .map(
      ([x, y]) =>
        `M${n(x - radius)} ${n(y)}A${r} ${r} 0 0 1 ${n(x + radius)} ${n(y)}A${r} ${r} 0 0 1 ${n(x - radius)} ${n(y)}Z`,
    )
    .join('');
}

/** The rim of each disc as four open arcs with gaps between: open lines, nothing falls out, same extent as the disc. */
function rimPath(centres: readonly PointMm[], radius: number): string {
  const r = n(radius);
  const far = radius * COS_30;
  const near = radius * SIN_30;
  const arc = (x: number, y: number, from: PointMm, to: PointMm): string =>
    `M${n(x + from[0])} ${n(y + from[1])}A${r} ${r} 0 0 1 ${n(x + to[0])} ${n(y + to[1])}`;
  return centres
    .map(
      ([x, y]) =>
        arc(x, y, [far, -near], [far, near]) +
        arc(x, y, [near, far], [-near, far]) +
        arc(x, y, [-far, near], [-far, -near]) +
        arc(x, y, [-near, -far], [near, -far]),
    )
    .join('');
}

/** The label's strokes, made smaller where the room is short; '' where it would not be legible. */
function labelPath(plan: MarkPlan, label: string): string {
  const { at, width } = plan.labelMm;
  const full = measureLetters(label, LABEL_HEIGHT_MM);
  const height = full <= width ? LABEL_HEIGHT_MM : (LABEL_HEIGHT_MM * width) / full;
  if (label === '' || height < 1.2) return '';
  return drawLetters(label, at[0], at[1] - height / 2, height)
    .map((stroke) => stroke.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${n(x)} ${n(y)}`).join(''))
    .join('');
}

/** Every property that a style sheet or the root could set on a mark, pinned. */
function styleOf(fill: string, stroke: string, width: string): string {
  const pinned = {
    fill,
    'fill-opacity': '1',
    'fill-rule': 'nonzero',
    stroke,
    'stroke-width': width,
    'stroke-opacity': '1',
    'stroke-dasharray': 'none',
    'stroke-linecap': 'butt',
    'stroke-linejoin': 'miter',
    'stroke-miterlimit': '4',
    opacity: '1',
    display: 'inline',
    visibility: 'visible',
    transform: 'none',
    filter: 'none',
    mask: 'none',
    'clip-path': 'none',
    'marker-start': 'none',
    'marker-mid': 'none',
    'marker-end': 'none',
    'vector-effect': 'none',
  };
  return Object.entries(pinned)
    .map(([property, value]) => `${property}:${value}!important`)
    .join(';');
}

/** The group's own place and look, pinned; the attribute serves readers that know no CSS transforms, and both say the same. */
function groupAttributes(matrix: MarkPlan['matrix']): string {
  const numbers = matrix.map((value) => printNumber(value, 12));
  const pinned = [
    `transform:matrix(${numbers.join(',')})`,
    'transform-origin:0 0',
    'transform-box:view-box',
    'display:inline',
    'visibility:visible',
    'opacity:1',
    'filter:none',
    'mask:none',
    'clip-path:none',
  ];
  const style = pinned.map((declaration) => `${declaration}!important`).join(';');
  return `transform="matrix(${numbers.join(' ')})" style="${style}"`;
}

/**
 * The group of marks of one sheet.
 *
 * Coordinates are mm from the artboard's top left. Corner marks stand on every pass and give all sheets the same
 * extent; register marks stand on the passes asked for. A toolpath pass gets open lines alone, no fill, no label.
 */
export function drawMarks(plan: MarkPlan, marks: MarksRequest, style: MarkStyle): string {
  const line = styleOf('none', style.colour, n(marks.lineWidthMm));
  const path = (name: string, d: string, css: string): string => `<path data-mark="${name}" d="${d}" style="${css}"/>`;
  const tool = isToolpath(style.pass.role);
  const parts = [path('corner', cornerPath(plan, marks.cornerLengthMm), line)];
  if (namesPass(marks.passes, style.pass)) {
    parts.push(path('cross', crossPath(plan.crossesMm, marks.crossSizeMm), line));
    const radius = marks.discDiameterMm / 2;
    parts.push(
      tool
        ? path('disc', rimPath(plan.discsMm, radius - marks.lineWidthMm / 2), line)
        : path('disc', discPath(plan.discsMm, radius), styleOf(style.colour, 'none', '0')),
    );
  }
  if (plan.copyCrosses !== undefined)
    parts.push(path('copy', crossPath(plan.copyCrosses.atMm, plan.copyCrosses.sizeMm), line));
  const letters = tool || !marks.label ? '' : labelPath(plan, style.label);
  if (letters !== '') parts.push(path('label', letters, line));
  return `\n<g id="pinbar-marks" ${groupAttributes(plan.matrix)}>${parts.join('')}</g>`;
}
