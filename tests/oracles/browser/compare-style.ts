// Computed values: the browser's against ours.
import type { PaintSource } from '../../../src/model/artwork.js';
import type { ResolvedShape } from '../../../src/resolve/resolved-shape.js';
import { STYLE_NAMES, type StyleName } from './ask-browser.js';
import { type Comparing, differ } from './compare-place.js';

/** The browser prints six digits of a length. */
const PRINTED = 6e-6;

function printPaint(source: PaintSource): string {
  if (source.kind === 'none') return 'none';
  if (source.kind !== 'colour') return `url(${source.id})`;
  const { rgb, alpha } = source.colour;
  return alpha === 1 ? `rgb(${rgb.join(', ')})` : `rgba(${rgb.join(', ')}, ${Math.round(alpha * 255)}/255)`;
}

/** The browser's words for a paint, as ours: it keeps alpha in 255 steps, and both give a missing target by its id. */
function readPaint(text: string): string {
  const url = /^url\("#(.*?)"\)/.exec(text);
  if (url !== null) return `url(${url[1]})`;
  const rgba = /^rgba\((\d+), (\d+), (\d+), ([\d.]+)\)$/.exec(text);
  return rgba === null ? text : `rgba(${rgba.slice(1, 4).join(', ')}, ${Math.round(Number(rgba[4]) * 255)}/255)`;
}

function numbersOf(text: string): readonly number[] {
  return text === 'none' ? [] : text.split(/[\s,]+/).map((part) => Number(part.replace('px', '')));
}

function isNear(theirs: readonly number[], ours: readonly number[]): boolean {
  const size = Math.max(1e-3, ...ours.map(Math.abs));
  return theirs.length === ours.length && theirs.every((value, at) => Math.abs(value - ours[at]!) <= PRINTED * size);
}

/** `gone`: the browser found display: none on or around the shape. */
export function compareStyle(comparing: Comparing, shape: ResolvedShape, said: readonly string[], gone: boolean): void {
  const { paint, setting, element } = shape;
  const word = (name: StyleName): string => said[STYLE_NAMES.indexOf(name)]!;
  const compare = (what: string, theirs: string, ours: string): void => {
    comparing.tally.values += 1;
    if (theirs !== ours) differ(comparing, element, what, theirs, ours);
  };
  const measure = (what: StyleName, ours: readonly number[], theirs = numbersOf(word(what))): void => {
    comparing.tally.values += 1;
    if (!isNear(theirs, ours)) differ(comparing, element, what, word(what), ours.join(' '));
  };
  compare('fill', readPaint(word('fill')), printPaint(paint.fill));
  compare('stroke', readPaint(word('stroke')), printPaint(paint.stroke));
  measure('fill-opacity', [paint.fillOpacity]);
  measure('stroke-opacity', [paint.strokeOpacity]);
  measure('opacity', [setting.style.opacity]);
  compare('fill-rule', word('fill-rule'), paint.fillRule);
  compare('stroke-linecap', word('stroke-linecap'), paint.strokeLinecap);
  compare('stroke-linejoin', word('stroke-linejoin'), paint.strokeLinejoin);
  measure('stroke-miterlimit', [paint.strokeMiterlimit]);
  measure('stroke-width', [paint.strokeWidth]);
  const dashes = numbersOf(word('stroke-dasharray'));
  measure('stroke-dasharray', paint.strokeDasharray, dashes.every((dash) => dash === 0) ? [] : dashes);
  measure('stroke-dashoffset', [paint.strokeDashoffset]);
  const shown = (display: string): string => (display === 'none' ? 'none' : 'shown');
  compare('display', shown(word('display')), shown(setting.style.display));
  compare('visibility', word('visibility'), setting.style.visibility);
  compare('hidden', String(gone || word('visibility') !== 'visible'), String(shape.hidden));
}
