// The properties that computed styles hold.

/** Names of properties that children take over. */
export type InheritedProperty =
  | 'fill'
  | 'fill-opacity'
  | 'fill-rule'
  | 'stroke'
  | 'stroke-width'
  | 'stroke-opacity'
  | 'stroke-linecap'
  | 'stroke-linejoin'
  | 'stroke-miterlimit'
  | 'stroke-dasharray'
  | 'stroke-dashoffset'
  | 'color'
  | 'visibility'
  | 'font-size'
  | 'font-family'
  | 'text-anchor'
  | 'marker-start'
  | 'marker-mid'
  | 'marker-end'
  | 'clip-rule';

/** Names of properties that stay with their element. */
export type OwnProperty =
  | 'display'
  | 'opacity'
  | 'transform'
  | 'translate'
  | 'rotate'
  | 'scale'
  | 'transform-origin'
  | 'transform-box'
  | 'clip-path'
  | 'mask'
  | 'filter'
  | 'mix-blend-mode'
  | 'overflow'
  | 'vector-effect'
  | 'shape-inside'
  | 'shape-subtract'
  | 'x'
  | 'y'
  | 'width'
  | 'height'
  | 'cx'
  | 'cy'
  | 'r'
  | 'rx'
  | 'ry'
  | 'd';

/** Names of all properties that computed styles hold. */
export type PropertyName = InheritedProperty | OwnProperty;

/** One text per property. Where a property of its own is not set, the text is `UNSET` or the initial value. */
export type ComputedTexts = Readonly<Record<PropertyName, string>>;

/** No declaration: the caller falls back to attributes. */
export const UNSET = '';

/** @source SVG 2, sections 13.4 to 13.7, 14.2; CSS Color 4; CSS Fonts 4 */
export const INHERITED_INITIAL: Readonly<Record<InheritedProperty, string>> = {
  fill: '#000000',
  'fill-opacity': '1',
  'fill-rule': 'nonzero',
  stroke: 'none',
  'stroke-width': '1',
  'stroke-opacity': '1',
  'stroke-linecap': 'butt',
  'stroke-linejoin': 'miter',
  'stroke-miterlimit': '4',
  'stroke-dasharray': 'none',
  'stroke-dashoffset': '0',
  color: '#000000',
  visibility: 'visible',
  'font-size': '16',
  'font-family': '',
  'text-anchor': 'start',
  'marker-start': 'none',
  'marker-mid': 'none',
  'marker-end': 'none',
  'clip-rule': 'nonzero',
};

/** Initial values, `UNSET` where the absence of a declaration makes a difference. */
export const OWN_INITIAL: Readonly<Record<OwnProperty, string>> = {
  display: 'inline',
  opacity: '1',
  transform: UNSET,
  translate: 'none',
  rotate: 'none',
  scale: 'none',
  'transform-origin': UNSET,
  'transform-box': 'view-box',
  'clip-path': 'none',
  mask: 'none',
  filter: 'none',
  'mix-blend-mode': 'normal',
  overflow: UNSET,
  'vector-effect': 'none',
  'shape-inside': 'none',
  'shape-subtract': 'none',
  x: UNSET,
  y: UNSET,
  width: UNSET,
  height: UNSET,
  cx: UNSET,
  cy: UNSET,
  r: UNSET,
  rx: UNSET,
  ry: UNSET,
  d: UNSET,
};

/** What `initial` stands for where `UNSET` would let an attribute through. */
const STATED_INITIAL: Readonly<Partial<Record<PropertyName, string>>> = {
  transform: 'none',
  'transform-origin': '0 0',
  overflow: 'visible',
  x: '0',
  y: '0',
  width: 'auto',
  height: 'auto',
  cx: '0',
  cy: '0',
  r: '0',
  rx: 'auto',
  ry: 'auto',
  d: 'none',
};

/** Attributes that are no more than the property of their name would be, on every SVG element. @source SVG 2, section 6.6 */
const PRESENTATION: ReadonlySet<string> = new Set<PropertyName>([
  ...(Object.keys(INHERITED_INITIAL) as InheritedProperty[]),
  'display',
  'opacity',
  'transform-origin',
  'clip-path',
  'mask',
  'filter',
  'overflow',
  'vector-effect',
]);

/** Whether an SVG attribute is a presentation attribute that computed styles hold. */
export function isPresentationAttribute(local: string): boolean {
  return PRESENTATION.has(local);
}

/** Whether computed styles hold a property. */
export function isKnownProperty(name: string): name is PropertyName {
  return Object.hasOwn(INHERITED_INITIAL, name) || Object.hasOwn(OWN_INITIAL, name);
}

/** Whether children take a property over. */
export function isInherited(name: PropertyName): name is InheritedProperty {
  return Object.hasOwn(INHERITED_INITIAL, name);
}

/** The initial value as a declaration of `initial` states it. */
export function initialText(name: PropertyName): string {
  return STATED_INITIAL[name] ?? (isInherited(name) ? INHERITED_INITIAL[name] : OWN_INITIAL[name]);
}

/** All properties. */
export const PROPERTY_NAMES: readonly PropertyName[] = [
  ...(Object.keys(INHERITED_INITIAL) as InheritedProperty[]),
  ...(Object.keys(OWN_INITIAL) as OwnProperty[]),
];
