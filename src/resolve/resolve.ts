// Nothing implied is left: styles, units, transforms, uses, boxes and layers worked out.
import { createPathReader } from '../geometry/path-data.js';
import { pathLength } from '../geometry/path-length.js';
import type { Artwork, GroupEffect, Shape } from '../model/artwork.js';
import type { CancelSignal } from '../model/platform.js';
import { invariant, PinbarError } from '../model/trouble.js';
import { readAttribute, readAttributeValue } from '../source/read-attribute.js';
import { DEFAULT_LIMITS, type Limits, type Source, SVG_NAMESPACE } from '../source/source.js';
import { readArtboard } from './artboard.js';
import { createAttributeSlots, SLOT } from './attribute-slots.js';
import { createCascade } from './cascade.js';
import type { Drawing } from './drawing.js';
import { codeNames, FOREIGN_OBJECT, GROUP, IMAGE, TEXT } from './element-codes.js';
import { createFindingLog } from './finding-log.js';
import { listLayers } from './layers.js';
import { createObjectMeasurer } from './object-boxes.js';
import { definitionsUsePercent } from './percent-definitions.js';
import { listIds, readStyles } from './read-styles.js';
import { isResolvedShape } from './resolved-shape.js';
import { SAYINGS } from './say-findings.js';
import { readGeometry } from './shape-geometry.js';
import { hasConditions } from './switch-choice.js';
import { planUses } from './uses.js';
import { walkArtwork } from './walk-artwork.js';

/** Id of the group of marks that pinbar draws. */
const MARKS_ID = 'pinbar-marks';

/** Options of `resolve`. */
export interface ResolveOptions {
  /** User units to the inch for a root whose size is not sure; null takes 96 with a warning. */
  readonly userUnitsPerInch?: number | null;
  readonly limits?: Partial<Limits>;
  readonly signal?: CancelSignal;
}

/** The group of marks: a child of the root with pinbar's id, or -1. */
function findMarks(source: Source, codes: Uint8Array): number {
  const { count, next, name } = source.elements;
  for (let row = 1; row < count; row = next[row]!) {
    if (codes[name[row]!] === GROUP && readAttributeValue(source, row, 'id') === MARKS_ID) return row;
  }
  return -1;
}

function stopIfAsked(signal: CancelSignal | undefined): void {
  if (signal?.aborted === true) throw new PinbarError('cancelled', { message: 'Stopped by the caller.' });
}

/** Elements that do something to all they hold at once. */
function listEffects({ source, styles }: Drawing): readonly GroupEffect[] {
  const { count, next, name, names } = source.elements;
  const isSvg = names.map(({ namespace }) => namespace === SVG_NAMESPACE);
  const effects: GroupEffect[] = [];
  for (let row = 0; row < count; row += 1) {
    const kinds = styles[row]!.effects;
    if (kinds.length > 0 && isSvg[name[row]!]) effects.push({ element: row, end: next[row]!, kinds });
  }
  return effects;
}

/** What is ready before the walk. */
interface Prepared {
  readonly drawing: Drawing;
  readonly references: Artwork['references'];
  readonly hiders: Artwork['hiders'];
}

function prepare(source: Source, limits: Limits): Prepared {
  const slots = createAttributeSlots(source);
  const codes = codeNames(source);
  const log = createFindingLog(source);
  const cascade = createCascade(source, limits);
  // Few files refer to ids: they are listed when the first is looked for.
  let listed: ReadonlyMap<string, number> | undefined;
  const grounds = {
    source,
    slots,
    codes,
    cascade,
    get ids(): ReadonlyMap<string, number> {
      listed ??= listIds(source, slots);
      return listed;
    },
  };
  const { styles, references, hiders } = readStyles(grounds, log);
  const { targets, circular } = planUses(grounds, limits);
  for (const use of circular) log.note('resolve/reference-cycle', String(use), use);
  const measure = createObjectMeasurer();
  const drawing: Drawing = {
    source,
    limits,
    slots,
    codes,
    cascade,
    styles,
    get ids() {
      return grounds.ids;
    },
    targets,
    log,
    reader: createPathReader(),
    marks: findMarks(source, codes),
    hasConditions: hasConditions(slots),
    transforms: new Map(),
    notes: { usesPercent: false, measured: 0 },
    measureObject: (row, setting, extent) => measure(drawing, row, setting, extent),
  };
  noteRootTransform(drawing);
  return { drawing, references, hiders };
}

function noteRootTransform(drawing: Drawing): void {
  const style = drawing.styles[0]!;
  const attribute = drawing.slots.find(0, SLOT.transform);
  const text =
    style.transform ?? style.transformBefore ?? (attribute < 0 ? '' : readAttribute(drawing.source, attribute));
  if (text.trim() !== '' && text !== 'none') drawing.log.note('resolve/root-transform', text, 0);
}

/**
 * Resolves a scanned file: every drawn shape with its final paint, its matrix to the artboard and its boxes, and the layers.
 *
 * @returns The artwork; what is odd about it is in its findings.
 * @throws PinbarError with a `limit/` code when uses or style sheets ask for more than allowed, `cancelled` when the caller stops.
 * @unit px on the artboard (96 to the inch unless `mmPerPx` says otherwise), y down
 * @source SVG 2
 */
export function resolve(source: Source, options: ResolveOptions = {}): Artwork {
  const limits: Limits = { ...DEFAULT_LIMITS, ...options.limits };
  stopIfAsked(options.signal);
  const { drawing, references, hiders } = prepare(source, limits);
  const { styles, codes, slots, marks, log } = drawing;
  const { artboard, findings } = readArtboard(source, options.userUnitsPerInch ?? null, styles[0]!);
  const tree = listLayers({ source, slots, codes, styles, marks, log });
  stopIfAsked(options.signal);
  const shapes = walkArtwork(drawing, artboard, tree);
  const artwork: ResolvedArtwork = {
    artboard,
    layers: tree.layers,
    shapes,
    get ids() {
      return drawing.ids;
    },
    references,
    structural: drawing.cascade.structural,
    usesPercent: drawing.notes.usesPercent || definitionsUsePercent(drawing),
    marks,
    hiders,
    effects: listEffects(drawing),
    findings: [...findings, ...drawing.cascade.findings, ...log.list(SAYINGS)],
    geometry: drawing,
  };
  return artwork;
}

/** An artwork with what its shapes can be read again with. */
export interface ResolvedArtwork extends Artwork {
  readonly geometry: Drawing;
}

/** Whether an artwork was made by `resolve`, so that its shapes can be read again. */
export function isResolved(artwork: Artwork): artwork is ResolvedArtwork {
  return 'geometry' in artwork;
}

/**
 * The length of a shape's lines on the artboard; 0 for type, pictures and foreign objects.
 *
 * @param artwork - Made from `source` by `resolve`, and the shape is one of its own.
 * @unit px
 * @accuracy That of `pathLength`.
 */
export function shapeLength(source: Source, artwork: Artwork, shape: Shape): number {
  invariant(isResolved(artwork) && isResolvedShape(shape), 'a shape is measured that was not resolved here');
  const { geometry } = artwork;
  const code = geometry.codes[source.elements.name[shape.element]!]!;
  if (code === TEXT || code === IMAGE || code === FOREIGN_OBJECT) return 0;
  return pathLength(readGeometry(geometry, shape.element, code, shape.setting), shape.matrix);
}
