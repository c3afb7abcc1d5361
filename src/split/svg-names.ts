// Which elements of SVG a sheet may hold, and which of them never draw where they stand.

const DRAWN = 'path rect circle ellipse line polyline polygon text image use';
const CONTAINERS = 'svg g a switch';
const NEVER_DRAWN =
  'defs symbol clipPath mask pattern marker linearGradient radialGradient meshgradient meshrow meshpatch hatch hatchpath ' +
  'solidcolor solidColor stop filter style title desc font font-face font-face-src font-face-name glyph missing-glyph hkern vkern';
const TEXT_PARTS = 'tspan textPath tref altGlyph altGlyphDef altGlyphItem glyphRef';
const FILTERS =
  'feBlend feColorMatrix feComponentTransfer feComposite feConvolveMatrix feDiffuseLighting feDisplacementMap feDistantLight ' +
  'feDropShadow feFlood feFuncA feFuncB feFuncG feFuncR feGaussianBlur feImage feMerge feMergeNode feMorphology feOffset ' +
  'fePointLight feSpecularLighting feSpotLight feTile feTurbulence';

/** Elements whose content is not drawn where it stands (SVG 2, chapter 5: never-rendered elements, and text that is not drawn). */
export const NEVER_DRAWN_NAMES: ReadonlySet<string> = new Set(NEVER_DRAWN.split(' '));

/** Every element that may stand in a sheet: SVG 2 and SVG 1.1 without scripts, animation, foreignObject, metadata and views. */
export const KEPT_NAMES: ReadonlySet<string> = new Set(
  [DRAWN, CONTAINERS, NEVER_DRAWN, TEXT_PARTS, FILTERS].join(' ').split(' '),
);

/** Elements that change the drawing over time. */
export const ANIMATION_NAMES: ReadonlySet<string> = new Set(
  'animate animateColor animateMotion animateTransform set discard mpath'.split(' '),
);

/** Elements that run or listen. */
export const SCRIPT_NAMES: ReadonlySet<string> = new Set('script handler listener'.split(' '));
