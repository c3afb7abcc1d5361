// Groups the shapes that could not be placed, and says so, one finding per kind and layer.
import type { Artwork, Shape } from '../model/artwork.js';
import { type Finding, type FindingCode, finding, type Json } from '../model/finding.js';
import type { LayerSuggestions } from './suggest.js';

/** Shapes with one trouble in one layer. */
interface Group {
  readonly code: FindingCode;
  readonly layer: number;
  readonly detail: string;
  readonly remedy: string;
  readonly data: { readonly [key: string]: Json };
  readonly shapes: number[];
}

/** What a shape's trouble is, besides its layer. */
export interface Trouble {
  /** Goes on after "N shapes in layer X ". */
  readonly detail: string;
  readonly remedy: string;
  readonly data?: { readonly [key: string]: Json };
}

/** Gathers troubles shape by shape. */
export interface TroubleLog {
  /** Adds a shape; `cause` is one object for all shapes of a layer whose trouble is the same, so that it is put in words once. */
  add(shape: Shape, code: FindingCode, cause: object, say: () => Trouble): void;
  readonly list: () => readonly Finding[];
}

const MOST_SHAPES = 1000;
const MOST_IDS = 20;

/** How a layer is called in a sentence. */
export function nameLayer(artwork: Artwork, layer: number): string {
  return layer < 0 ? 'outside every layer' : `in layer "${artwork.layers[layer]!.path}"`;
}

/** A layer as the command line writes it. */
export function quoteLayer(artwork: Artwork, layer: number): string {
  return `layer:"${artwork.layers[layer]!.path.replace(/"/g, '*')}"`;
}

/** The sentence for one shape alone. */
function inSingular(detail: string): string {
  return detail
    .replace(/^are /, 'is ')
    .replace(/^go /, 'goes ')
    .replace(/but have a /, 'but has a ');
}

function describeGroup(artwork: Artwork, group: Group): Finding {
  const count = group.shapes.length;
  const ids = group.shapes
    .map((index) => artwork.shapes[index]!.id)
    .filter((id) => id !== '')
    .slice(0, MOST_IDS);
  const named = ids.length === 0 ? '' : ` (${ids.slice(0, 5).join(', ')}${count > 5 ? ', ...' : ''})`;
  const layer = group.layer < 0 ? {} : { layerPath: artwork.layers[group.layer]!.path };
  const only = count === 1 && ids.length === 1 ? { id: ids[0]! } : {};
  return finding(group.code, {
    message: `${count} shape${count === 1 ? '' : 's'} ${nameLayer(artwork, group.layer)}${named} ${count === 1 ? inSingular(group.detail) : group.detail}`,
    remedy: group.remedy,
    place: { ...layer, ...only },
    data: { ...group.data, count, shapes: group.shapes.slice(0, MOST_SHAPES), ids },
  });
}

/** A log without entries. */
export function createTroubleLog(artwork: Artwork): TroubleLog {
  const groups = new Map<string, Group>();
  const byCause = new Map<FindingCode, Map<object, Map<number, Group>>>();
  const findGroup = (code: FindingCode, { layer }: Shape, trouble: Trouble): Group => {
    const key = `${code} ${layer} ${trouble.detail}`;
    const group = groups.get(key) ?? { ...trouble, code, data: trouble.data ?? {}, layer, shapes: [] };
    groups.set(key, group);
    return group;
  };
  return {
    add(shape, code, cause, say) {
      const causes = byCause.get(code) ?? new Map<object, Map<number, Group>>();
      byCause.set(code, causes);
      const layers = causes.get(cause) ?? new Map<number, Group>();
      causes.set(cause, layers);
      const group = layers.get(shape.layer) ?? findGroup(code, shape, say());
      layers.set(shape.layer, group);
      group.shapes.push(shape.index);
    },
    list: () => [...groups.values()].map((group) => describeGroup(artwork, group)),
  };
}

const MOST_TAKES = 20;

/**
 * What else an answer must say where names decide: rules take their place, so who gives one for a layer would lose the others.
 *
 * @param answered - The layer that the answer is for, or -1.
 */
export function keepNames(artwork: Artwork, answered: number, suggestions: LayerSuggestions): string {
  const takes = suggestions.layers
    .flatMap((suggestion, layer) =>
      suggestion?.sure === true && layer !== answered
        ? [`--take ${suggestion.role}=${quoteLayer(artwork, layer)}`]
        : [],
    )
    .sort();
  if (takes.length === 0) return '';
  const more = takes.length > MOST_TAKES ? `, and ${takes.length - MOST_TAKES} more` : '';
  return ` Rules take the place of layer names, so say the others too: ${takes.slice(0, MOST_TAKES).join(' ')}${more}.`;
}

/** A ready answer for shapes that nobody claims. */
export function answerUnclaimed(artwork: Artwork, layer: number, suggestions: LayerSuggestions): string {
  if (layer < 0) return 'Say which pass takes them, for instance --take print=rest.';
  const at = suggestions.nearest[layer]!;
  const role = at < 0 ? 'print' : suggestions.layers[at]!.role;
  return `Say which pass takes them, for instance --take ${role}=${quoteLayer(artwork, layer)}, or --take print=rest for all that is left.`;
}
