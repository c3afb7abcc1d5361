// What is in the drawing: layers as a tree, lines with their lengths, and where each goes.
import type { InspectedLayer, InspectedStroke } from '../model/inspection.js';
import type { Suggestion } from '../model/pass.js';
import { addShares, ChoosePass, sumUp } from './choose-pass.js';
import { findOuter, type Moved } from './edit-ticket.js';
import { sayReason } from './german-reasons.js';
import type { PartProps } from './page-state.js';
import { drawNumber } from './pass-mark.js';
import type { Shares } from './protocol.js';
import { fixed, sayRole, spellNumber } from './texts.js';
import { h, useState, type VNode } from './view-library.js';

/** Rows shown before the rest is asked for. */
const FIRST_ROWS = 200;

/** A row of a list: what it is, and what can be done with it. */
interface Row {
  readonly moved: Moved;
  readonly name: string;
  readonly depth: number;
  readonly facts: readonly string[];
  readonly suggestion: Suggestion | null;
  /** Goes with the layer around it, which says why. */
  readonly follows: boolean;
  readonly swatch: string | null;
  readonly shares: Shares;
}

function explain({ state: { language }, say }: PartProps, suggestion: Suggestion | null): string {
  if (suggestion === null) return say('noSuggestion');
  const { role, reason, sure } = suggestion;
  return say(sure ? 'suggested' : 'unsure', sayRole(language, role), language === 'de' ? sayReason(reason) : reason);
}

function isSame(a: Moved | null, b: Moved): boolean {
  return a !== null && JSON.stringify(a) === JSON.stringify(b);
}

function drawRow(props: PartProps, row: Row): VNode {
  const { state, acts } = props;
  const raise = (): void => acts.set({ raised: row.moved });
  const lower = (): void => acts.set({ raised: null });
  const now = sumUp(row.shares);
  const swatch =
    row.swatch === null
      ? null
      : h('span', { class: 'swatch', 'aria-hidden': 'true', style: { borderColor: row.swatch } });
  return h(
    'li',
    {
      key: JSON.stringify(row.moved),
      class: `row depth-${Math.min(row.depth, 6)}${isSame(state.raised, row.moved) ? ' row-raised' : ''}`,
      draggable: true,
      onDragStart: (event: DragEvent) => event.dataTransfer?.setData('application/x-pinbar', JSON.stringify(row.moved)),
      onMouseEnter: raise,
      onMouseLeave: lower,
      onFocusIn: raise,
      onFocusOut: lower,
    },
    h(
      'div',
      { class: 'row-head' },
      now === null || now === -9 ? null : drawNumber(now),
      swatch,
      h('span', { class: 'row-name' }, row.name),
    ),
    h(ChoosePass, { ...props, moved: row.moved, name: row.name, shares: row.shares }),
    h('span', { class: 'quiet row-facts' }, row.facts.join(' · ')),
    row.follows ? null : h('span', { class: 'quiet row-why' }, explain(props, row.suggestion)),
  );
}

function countShapes({ say }: PartProps, count: number): string {
  return count === 1 ? say('shape') : say('shapes', count);
}

/** A layer's own shapes, and where it has none those of the layers in it. */
function sharesOf({ state }: PartProps, layers: readonly InspectedLayer[], index: number): Shares {
  const shares = state.job?.layerShares ?? [];
  const own = shares[index] ?? [];
  if (own.length > 0) return own;
  const within: Shares[] = [];
  for (let at = index + 1; at < layers.length && layers[at]!.depth > layers[index]!.depth; at += 1)
    within.push(shares[at] ?? []);
  return addShares(within);
}

/** Shapes of a layer and of those in it. */
function countWithin(layers: readonly InspectedLayer[], index: number): number {
  let count = layers[index]!.shapes;
  for (let at = index + 1; at < layers.length && layers[at]!.depth > layers[index]!.depth; at += 1) {
    count += layers[at]!.shapes;
  }
  return count;
}

function listLayers(props: PartProps): readonly Row[] {
  const { state, say } = props;
  const { layers, looseShapes } = state.inspection!;
  const rows = layers.map(
    (layer, index): Row => ({
      moved: { kind: 'layer', path: layer.path },
      name: layer.name,
      depth: layer.depth,
      facts: [
        countShapes(props, countWithin(layers, index)),
        ...(layer.hidden ? [say('hidden')] : []),
        ...(layer.locked ? [say('locked')] : []),
      ],
      suggestion: layer.suggestion,
      follows: layer.suggestion !== null && layer.suggestion.role === findOuter(layers, index)?.suggestion?.role,
      swatch: null,
      shares: sharesOf(props, layers, index),
    }),
  );
  if (looseShapes === 0) return rows;
  const loose: Row = {
    moved: { kind: 'rest' },
    name: say('loose'),
    depth: 0,
    facts: [countShapes(props, looseShapes)],
    suggestion: null,
    follows: false,
    swatch: null,
    shares: state.job?.restShares ?? [],
  };
  return [...rows, loose];
}

/** A colour that a screen can show; device colours have none of their own. */
function showColour(key: string): string | null {
  return key.startsWith('#') ? key : null;
}

function describeStroke(props: PartProps, stroke: InspectedStroke): Row {
  const first = stroke.widthsMm.slice(0, 3).map((width) => spellNumber(width, props.state.language));
  const widths =
    stroke.widthsMm.length === 0 ? [] : [`${first.join(' / ')}${stroke.widthsMm.length > 3 ? ' …' : ''} mm`];
  return {
    moved: { kind: 'stroke', colour: stroke.colour },
    name: stroke.colour,
    depth: 0,
    facts: [props.say('mm', fixed(stroke.lengthMm, 1)), ...widths, countShapes(props, stroke.shapes)],
    suggestion: stroke.suggestion,
    follows: false,
    swatch: showColour(stroke.colour),
    shares: props.state.job?.strokeShares[stroke.colour] ?? [],
  };
}

function RowList(props: PartProps & { readonly rows: readonly Row[]; readonly heading: string }): VNode {
  const [most, setMost] = useState(FIRST_ROWS);
  const { rows, heading, say } = props;
  const rest = rows.length - most;
  return h(
    'div',
    {},
    h('h3', {}, heading),
    h(
      'ul',
      { class: 'rows' },
      rows.slice(0, most).map((row) => drawRow(props, row)),
    ),
    rest > 0
      ? h(
          'button',
          { type: 'button', onClick: () => setMost(most + FIRST_ROWS) },
          say('more', Math.min(rest, FIRST_ROWS)),
        )
      : null,
  );
}

/** Layers and lines. */
export function DrawnPart(props: PartProps): VNode | null {
  const { state, say } = props;
  if (state.inspection === null) return null;
  const { artboard, strokes } = state.inspection;
  return h(
    'section',
    { id: 'drawn', 'aria-labelledby': 'drawn-title' },
    h('h2', { id: 'drawn-title', tabIndex: -1 }, say('drawn')),
    h(
      'p',
      { class: 'quiet' },
      say('artboard', artboard.widthMm, artboard.heightMm),
      artboard.sizeIsSure ? '' : ` ${say('sizeUnsure')}`,
    ),
    h('p', { class: 'quiet' }, say('dragHint')),
    h(RowList, { ...props, rows: listLayers(props), heading: say('layers') }),
    h(RowList, { ...props, rows: strokes.map((stroke) => describeStroke(props, stroke)), heading: say('lines') }),
  );
}
