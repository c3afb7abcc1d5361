// The computed style of an element.
import type { Colour, EffectKind, Paint } from '../model/artwork.js';

/** Ids of the markers of a line, or null. */
export interface Markers {
  readonly start: string | null;
  readonly mid: string | null;
  readonly end: string | null;
}

/** Stroke lengths that hold a percentage of the viewport's diagonal; null where the length in `Style.paint` is final. */
export interface StrokePercent {
  /** Length in user units plus fraction of the diagonal. */
  readonly width: PercentLength | null;
  readonly dashoffset: PercentLength | null;
  readonly dasharray: readonly PercentLength[] | null;
}

/** `px + fraction * base`. */
export interface PercentLength {
  readonly px: number;
  readonly fraction: number;
}

/** Geometry that CSS sets; null where it does not. Attributes are not looked at here. */
export interface CssGeometry {
  readonly x: string | null;
  readonly y: string | null;
  readonly width: string | null;
  readonly height: string | null;
  readonly cx: string | null;
  readonly cy: string | null;
  readonly r: string | null;
  readonly rx: string | null;
  readonly ry: string | null;
  /** `path("...")`, or `none`. */
  readonly d: string | null;
}

/**
 * Computed values: nothing is inherited, nothing relative to a font, no custom property is left.
 *
 * Elements that are styled alike share one object, and shapes that are painted alike share `paint`.
 *
 * @unit user units (px) for every number that is a length
 */
export interface Style {
  /** Percentages in stroke lengths are left out here: see `strokePercent` and `paintWithin`. */
  readonly paint: Paint;
  /** Null for nearly every style. */
  readonly strokePercent: StrokePercent | null;
  readonly color: Colour;
  readonly visibility: 'visible' | 'hidden' | 'collapse';
  readonly fontSize: number;
  /** Font size of the outermost svg, for `rem`. */
  readonly rootFontSize: number;
  /** As written, `''` where none is set. */
  readonly fontFamily: string;
  /** `start`, `middle` or `end`. */
  readonly textAnchor: string;
  readonly markers: Markers;
  readonly clipRule: 'nonzero' | 'evenodd';

  /** `none`, `inline`, or what else is written. */
  readonly display: string;
  /** From 0 to 1. */
  readonly opacity: number;
  /** CSS `transform` (style sheet or style attribute), null where CSS sets none; the `transform` attribute is not looked at. */
  readonly transform: string | null;
  /** CSS `translate`, `rotate` and `scale` as one list of transforms that goes before `transform`, or null. */
  readonly transformBefore: string | null;
  /** CSS or presentation attribute. */
  readonly transformOrigin: string | null;
  /** `view-box` where nothing else is said. */
  readonly transformBox: string;
  /** Id, or null; basic shapes count as none. */
  readonly clipPath: string | null;
  readonly mask: string | null;
  /** First id that the filter names, or null; filter functions alone count as none. */
  readonly filter: string | null;
  /** What it does to all it holds at once; a shared empty list for nearly every style. */
  readonly effects: readonly EffectKind[];
  /** The user agent's `hidden` for nested svg, symbol, image, marker, pattern and foreignObject included. */
  readonly overflow: string;
  readonly vectorEffect: string;
  /** Shared empty object where CSS sets none. */
  readonly geometry: CssGeometry;
  /** Ids that computed fill, stroke, markers, clip-path, mask, filter and text shapes name, each once. */
  readonly references: readonly string[];
}
