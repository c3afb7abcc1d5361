// What is in a file, as text.

import type { InspectedLayer, InspectedStroke, Inspection } from '../model/inspection.js';
import type { Suggestion } from '../model/pass.js';
import { sayCount } from '../model/say-count.js';
import { countFindings, printFindings } from './print-findings.js';

function size(widthMm: number, heightMm: number): string {
  return `${Number(widthMm.toFixed(3))} x ${Number(heightMm.toFixed(3))} mm`;
}

function describeSize(inspection: Inspection): string {
  const { artboard } = inspection;
  const now = size(artboard.widthMm, artboard.heightMm);
  if (artboard.atPerInch === null) return now;
  const { 96: css, 72: point } = artboard.atPerInch;
  return `${now}, not sure: ${size(css.widthMm, css.heightMm)} at 96 units to the inch, ${size(point.widthMm, point.heightMm)} at 72`;
}

function describeSuggestion(suggestion: Suggestion | null): string {
  if (suggestion === null) return 'no suggestion';
  return `${suggestion.role}${suggestion.sure ? '' : ' (to be asked)'}: ${suggestion.reason}`;
}

/** Rows as aligned columns; the last column is not padded. */
export function alignColumns(rows: readonly (readonly string[])[]): string {
  const widths: number[] = [];
  for (const row of rows) {
    row.slice(0, -1).forEach((cell, i) => {
      widths[i] = Math.max(widths[i] ?? 0, cell.length);
    });
  }
  return rows
    .map((row) => `  ${row.map((cell, i) => (i < row.length - 1 ? cell.padEnd(widths[i]!) : cell)).join('  ')}\n`)
    .join('');
}

function layerRow(layer: InspectedLayer): readonly string[] {
  const states = [layer.hidden ? 'hidden' : '', layer.locked ? 'locked' : '', layer.printable ? '' : 'not for print'];
  const state = states.filter((word) => word !== '').join(', ');
  const name = '  '.repeat(layer.depth) + layer.name;
  return [name, sayCount(layer.shapes, 'shape'), state, describeSuggestion(layer.suggestion)];
}

function strokeRow(stroke: InspectedStroke): readonly string[] {
  const widths = stroke.widthsMm.slice(0, 3).join(', ') + (stroke.widthsMm.length > 3 ? ', ...' : '');
  const dashed = stroke.dashed === 0 ? '' : `${stroke.dashed} dashed`;
  return [
    stroke.colour,
    sayCount(stroke.shapes, 'shape'),
    `${stroke.lengthMm.toFixed(1)} mm long`,
    `${widths} mm wide`,
    dashed,
    describeSuggestion(stroke.suggestion),
  ];
}

const MOST_ROWS = 60;

function table<T>(items: readonly T[], row: (item: T) => readonly string[]): string {
  const more = items.length > MOST_ROWS ? `  and ${items.length - MOST_ROWS} more (see --json)\n` : '';
  return alignColumns(items.slice(0, MOST_ROWS).map(row)) + more;
}

/** The inspection as text. */
export function printInspection(inspection: Inspection): string {
  const { file } = inspection;
  const kinds = Object.entries(inspection.kinds)
    .map(([kind, count]) => `${count} ${kind}`)
    .join(', ');
  const { looseShapes } = inspection;
  const loose =
    looseShapes === 0
      ? ''
      : `  ${sayCount(looseShapes, 'shape')} ${looseShapes === 1 ? 'stands' : 'stand'} in no layer\n`;
  return [
    `${file.name}: ${describeSize(inspection)}\n`,
    `${sayCount(inspection.shapes, 'shape')} (${kinds || 'none'})`,
    inspection.hiddenShapes === 0 ? '' : `, ${inspection.hiddenShapes} of them hidden`,
    inspection.drawsNothing === 0 ? '' : `; ${inspection.drawsNothing} more without paint or size`,
    `\n\nLayers\n`,
    table(inspection.layers, layerRow),
    loose,
    `\nStrokes\n`,
    table(inspection.strokes, strokeRow) || '  none\n',
    `\n${countFindings(inspection.findings)}\n`,
    printFindings(inspection.findings, true),
  ].join('');
}
