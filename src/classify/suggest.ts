// Which role each layer and stroke suggests, and whether the shapes look like it.
import type { Artwork, Layer, Shape } from '../model/artwork.js';
import { isToolpath, type Role, type Suggestion } from '../model/pass.js';
import { type NameReading, readName } from './role-words.js';

/** What the names of the layers suggest. */
export interface LayerSuggestions {
  /** By layer index; null where its own name says nothing. */
  readonly layers: readonly (Suggestion | null)[];
  /** By layer index: the nearest layer, itself or around it, whose name suggests a role; -1 for none. */
  readonly nearest: readonly number[];
  /** By layer index: why the nearest name that speaks of roles decides nothing, or ''. */
  readonly doubts: readonly string[];
}

/** Suggestions for a whole artwork. */
export interface Suggestions extends LayerSuggestions {
  /** By colour key, for strokes that stand only in layers of one suggested role. */
  readonly strokes: ReadonlyMap<string, Suggestion>;
}

/** Whether a paint leaves anything on the sheet. */
export function hasFill(shape: Shape): boolean {
  const { fill, fillOpacity } = shape.paint;
  if (shape.kind === 'line') return false;
  if (fill.kind === 'none' || fillOpacity === 0) return false;
  if (fill.kind === 'missing') return fill.fallback !== null;
  return fill.kind !== 'colour' || fill.colour.alpha > 0;
}

/** Whether a shape is drawn as a line. */
export function hasStroke(shape: Shape): boolean {
  const { stroke, strokeOpacity, strokeWidth } = shape.paint;
  if (stroke.kind === 'none' || strokeOpacity === 0 || strokeWidth === 0) return false;
  if (stroke.kind === 'missing') return stroke.fallback !== null;
  return stroke.kind !== 'colour' || stroke.colour.alpha > 0;
}

/** Whether a tool could follow a shape: stroke alone, no fill, no type, no picture. */
export function looksLikeLine(shape: Shape): boolean {
  return hasStroke(shape) && !hasFill(shape) && shape.kind !== 'text' && shape.kind !== 'image';
}

/** The nearest layer whose name speaks of roles at all. */
function findSpeaking(artwork: Artwork, readings: readonly NameReading[]): readonly number[] {
  return artwork.layers.map((layer) => {
    for (let at = layer.index; at >= 0; at = artwork.layers[at]!.parent) {
      if (readings[at]!.roles.length > 0) return at;
    }
    return -1;
  });
}

function explainDoubt(reading: NameReading, layer: Layer): string {
  if (reading.doubt === null) return '';
  const words = reading.words.join(', ');
  return reading.doubt === 'several'
    ? `the name of layer "${layer.path}" says "${words}", which is for ${reading.roles.join(' and for ')}`
    : `the name of layer "${layer.path}" says "${words}", but with a word such as "not" before it`;
}

interface LayerCount {
  shapes: number;
  lines: number;
}

/** Shapes whose role a layer's name decides, and how many of them look like lines. */
function countShapes(artwork: Artwork, nearest: readonly number[]): readonly LayerCount[] {
  const counts = artwork.layers.map(() => ({ shapes: 0, lines: 0 }));
  for (const shape of artwork.shapes) {
    if (shape.layer < 0 || !shape.draws) continue;
    const at = nearest[shape.layer]!;
    if (at < 0) continue;
    counts[at]!.shapes += 1;
    if (looksLikeLine(shape)) counts[at]!.lines += 1;
  }
  return counts;
}

/** Words that say in so many words that a layer is not for print. */
const NOT_PRINTED = /print|druck|imprim|stamp|drukow|印刷/;

function describe(reading: NameReading, role: Role, count: LayerCount, layer: Layer): Suggestion {
  const words = `the name says "${reading.words.join(', ')}"`;
  const plain = role === 'ignore' && (!layer.printable || NOT_PRINTED.test(reading.words.join(' ')));
  if (plain || (!isToolpath(role) && role !== 'ignore')) return { role, reason: words, sure: true };
  if (count.lines === count.shapes)
    return { role, reason: `${words}, and its shapes are lines without fill`, sure: true };
  const others = count.shapes - count.lines;
  return {
    role,
    reason: `${words}, but ${others} of its ${count.shapes} shapes are not lines without fill`,
    sure: false,
  };
}

function suggestStrokes(
  artwork: Artwork,
  suggestions: readonly (Suggestion | null)[],
  nearest: readonly number[],
): ReadonlyMap<string, Suggestion> {
  const roles = new Map<string, Set<Role | null>>();
  for (const shape of artwork.shapes) {
    if (!shape.draws || shape.paint.stroke.kind !== 'colour') continue;
    const at = shape.layer < 0 ? -1 : nearest[shape.layer]!;
    const { key } = shape.paint.stroke.colour;
    const known = roles.get(key) ?? new Set();
    known.add(at < 0 ? null : suggestions[at]!.role);
    roles.set(key, known);
  }
  const strokes = new Map<string, Suggestion>();
  for (const [key, found] of roles) {
    const [role] = found;
    if (found.size !== 1 || role === null || role === undefined) continue;
    strokes.set(key, { role, reason: 'it stands only in layers whose names say so', sure: true });
  }
  return strokes;
}

/** Suggestions as a person reads them: a layer whose own name says nothing goes with the one around it. */
export function explainLayers(artwork: Artwork, suggestions: LayerSuggestions): readonly (Suggestion | null)[] {
  return artwork.layers.map((layer) => {
    const at = suggestions.nearest[layer.index]!;
    if (at < 0 || at === layer.index) return suggestions.layers[layer.index]!;
    const outer = suggestions.layers[at]!;
    return { ...outer, reason: `it stands in layer "${artwork.layers[at]!.path}"` };
  });
}

/** Roles that the names of layers suggest. */
export function suggestLayers(artwork: Artwork): LayerSuggestions {
  const readings = artwork.layers.map((layer) => readName(layer.name));
  const speaking = findSpeaking(artwork, readings);
  // A name in doubt hides the names around it: what is called "cut and crease" inside "Print" is not print.
  const nearest = speaking.map((at) => (at >= 0 && readings[at]!.role !== null ? at : -1));
  const doubts = speaking.map((at) => (at < 0 ? '' : explainDoubt(readings[at]!, artwork.layers[at]!)));
  const counts = countShapes(artwork, nearest);
  const layers = readings.map((reading, i) =>
    reading.role === null ? null : describe(reading, reading.role, counts[i]!, artwork.layers[i]!),
  );
  return { layers, nearest, doubts };
}

/** Roles that layers and strokes suggest. A colour never means a role by itself. */
export function suggestRoles(artwork: Artwork): Suggestions {
  const layers = suggestLayers(artwork);
  return { ...layers, strokes: suggestStrokes(artwork, layers.layers, layers.nearest) };
}
