// The ticket's rules made ready for many shapes.
import type { Artwork, Colour, Layer, Shape } from '../model/artwork.js';
import { namePass, type Reason, ROLES } from '../model/pass.js';
import { strokeWidthMm } from '../model/stroke-width.js';
import type { PassRequest, Rule, Ticket } from '../model/ticket.js';
import { PinbarError } from '../model/trouble.js';
import { compileLayer, compilePattern, NO_LAYER } from './layer-pattern.js';
import { hasFill, hasStroke } from './suggest.js';

/** Nearness of what a rule looks at: 0 on the shape itself, 1 the innermost layer, and so on outwards. */
const ON_SHAPE = 0;

/** A rule ready to be asked. */
export interface CompiledRule {
  /** Position in the ticket. */
  readonly index: number;
  readonly pass: PassRequest;
  readonly hasName: boolean;
  readonly hasPaint: boolean;
  readonly isRest: boolean;
  /** Whether it looks at the stroke's colour. */
  readonly byStroke: boolean;
  readonly byFill: boolean;
  /** How the rule is told. */
  readonly text: string;
  /** One object per rule, so that the manifest lists it once. */
  readonly reason: Reason;
  /** Distance by layer index; -1 where the rule does not hold there. Index 0 is for shapes without a layer. */
  readonly distances: Int16Array;
  /** Whether paint and kind fit; the same for all shapes that share both. */
  readonly fitsPaint: Test;
  /** Whether id, class and line width fit; null where the rule looks at none of them. */
  readonly fitsShape: Test | null;
}

type Test = (shape: Shape) => boolean;

/**
 * Distance from each layer to the nearest one around it, itself included, that a rule's pattern names; 0 where the rule looks at
 * the shape's own id or class.
 */
function measureLayers(layers: readonly Layer[], rule: Rule): Int16Array {
  const pattern = rule.layer;
  const onShape = rule.id !== undefined || rule.class !== undefined;
  const distances = new Int16Array(layers.length + 1).fill(pattern === undefined ? ON_SHAPE : -1);
  if (pattern === undefined) return distances;
  if (pattern === NO_LAYER) distances[0] = onShape ? ON_SHAPE : 1;
  const named = layers.map(compileLayer(pattern));
  for (const layer of layers) {
    let steps = 1;
    for (let at = layer.index; at >= 0; at = layers[at]!.parent) {
      if (named[at]) {
        distances[layer.index + 1] = onShape ? ON_SHAPE : steps;
        break;
      }
      steps += 1;
    }
  }
  return distances;
}

/** Reads a CSS colour; handed in by the road, since rooms do not know each other. */
export type ColourReader = (text: string) => Colour | null;

/** What the tests of one rule need. */
interface TestContext {
  readonly rule: Rule;
  readonly index: number;
  readonly mmPerPx: number;
  readonly readColour: ColourReader;
}

/** Whether a shape's fill or stroke has the colour that the rule spells. */
function colourTest(context: TestContext, part: 'fill' | 'stroke'): Test {
  const spelled = context.rule[part]!;
  const wanted = context.readColour(spelled);
  if (wanted === null) {
    throw new PinbarError('ticket/wrong', {
      message: `rules[${context.index}].${part} is "${spelled}", which is no colour.`,
      remedy: 'Allowed are the colours of CSS: #e5007d, rgb(229 0 125), a name, device-cmyk(0 1 0 0).',
      data: { path: `rules[${context.index}].${part}` },
    });
  }
  const tolerance = context.rule.colourTolerance ?? 0;
  return (shape) => {
    const paint = shape.paint[part];
    if (paint.kind !== 'colour') return false;
    if (tolerance === 0) return paint.colour.key === wanted.key;
    return paint.colour.rgb.every((channel, i) => Math.abs(channel - wanted.rgb[i]!) <= tolerance);
  };
}

/** Line width on the artboard counts as the asked one within this, mm. */
const WIDTH_TOLERANCE_MM = 0.01;

function fillTest(context: TestContext): Test {
  if (context.rule.fill === 'none') return (shape) => !hasFill(shape);
  if (context.rule.fill === 'any') return hasFill;
  const equal = colourTest(context, 'fill');
  return (shape) => hasFill(shape) && equal(shape);
}

function strokeTest(context: TestContext): Test {
  const equal = colourTest(context, 'stroke');
  return (shape) => hasStroke(shape) && equal(shape);
}

/** What a rule asks of paint and kind. */
function listPaintTests(context: TestContext): readonly Test[] {
  const { rule } = context;
  const tests: Test[] = [];
  if (rule.element !== undefined) tests.push((shape) => shape.kind === rule.element);
  if (rule.stroke !== undefined) tests.push(strokeTest(context));
  if (rule.fill !== undefined) tests.push(fillTest(context));
  if (rule.dashed !== undefined) {
    tests.push((shape) => hasStroke(shape) && shape.paint.strokeDasharray.length > 0 === rule.dashed);
  }
  return tests;
}

/** What a rule asks of the single shape. */
function listShapeTests({ rule, mmPerPx }: TestContext): readonly Test[] {
  const tests: Test[] = [];
  if (rule.widthMm !== undefined) {
    const wanted = rule.widthMm;
    tests.push((shape) => hasStroke(shape) && Math.abs(strokeWidthMm(shape, mmPerPx) - wanted) <= WIDTH_TOLERANCE_MM);
  }
  if (rule.id !== undefined) {
    const matches = compilePattern(rule.id);
    tests.push((shape) => shape.id !== '' && matches(shape.id));
  }
  if (rule.class !== undefined) {
    const matches = compilePattern(rule.class);
    tests.push((shape) => shape.classes.some(matches));
  }
  return tests;
}

const CONDITIONS = ['layer', 'id', 'class', 'element', 'stroke', 'fill', 'widthMm', 'dashed'] as const;

function tellRule(rule: Rule, index: number): string {
  if (rule.rest) return `rule ${index + 1}: the rest`;
  const parts = CONDITIONS.filter((key) => rule[key] !== undefined).map((key) => {
    if (key === 'dashed') return rule.dashed ? 'dashed' : 'solid';
    if (key === 'widthMm') return `width ${rule.widthMm} mm`;
    return `${key} "${rule[key]}"`;
  });
  return `rule ${index + 1}: ${parts.join(', ')}`;
}

/** Whether a shape fulfils every condition of a rule. */
export function fitsRule(rule: CompiledRule, shape: Shape): boolean {
  return rule.distances[shape.layer + 1]! >= 0 && rule.fitsPaint(shape) && (rule.fitsShape?.(shape) ?? true);
}

/** The pass that a rule speaks of: one of the ticket by name, else by role, else a new one for the role. */
export function findPass(word: string, requests: readonly PassRequest[]): PassRequest {
  const declared = requests.find((pass) => pass.name === word) ?? requests.find((pass) => pass.role === word);
  if (declared !== undefined) return declared;
  const role = ROLES.find((known) => known === word);
  if (role === undefined) {
    throw new PinbarError('ticket/wrong', {
      message: `A rule speaks of the pass "${word}", which is neither a pass of the ticket nor a role.`,
      remedy: `Roles are: ${ROLES.join(', ')}.`,
      data: { pass: word },
    });
  }
  const name = namePass(role);
  // A pass of another role may bear that name.
  return { name: requests.some((pass) => pass.name === name) ? role : name, role };
}

/** Every rule of a ticket, ready to be asked. */
export function compileRules(artwork: Artwork, ticket: Ticket, readColour: ColourReader): readonly CompiledRule[] {
  const passes = new Map<string, PassRequest>();
  return ticket.rules.map((rule, index) => {
    const found = findPass(rule.pass, ticket.passes);
    const pass = passes.get(found.name) ?? found;
    passes.set(pass.name, pass);
    const context = { rule, index, mmPerPx: artwork.artboard.mmPerPx, readColour };
    const paintTests = listPaintTests(context);
    const shapeTests = listShapeTests(context);
    const paints = [rule.stroke, rule.fill, rule.widthMm, rule.dashed, rule.element];
    return {
      index,
      pass,
      hasName: rule.layer !== undefined || rule.id !== undefined || rule.class !== undefined,
      hasPaint: paints.some((value) => value !== undefined),
      isRest: rule.rest === true,
      byStroke: rule.stroke !== undefined || rule.widthMm !== undefined || rule.dashed !== undefined,
      byFill: rule.fill !== undefined,
      text: tellRule(rule, index),
      reason: { rule: index, text: tellRule(rule, index) },
      distances: measureLayers(artwork.layers, rule),
      fitsPaint: (shape) => paintTests.every((test) => test(shape)),
      fitsShape: shapeTests.length === 0 ? null : (shape) => shapeTests.every((test) => test(shape)),
    };
  });
}
