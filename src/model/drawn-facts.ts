// What is read of the source for a shape when somebody asks: clips, pictures, type, gradients.
import type { Outline } from '../geometry/outline.js';

/** What a shape and the groups around it do to its paint. */
export interface ShapeEffects {
  /** Product of all, from 0 to 1; without those of fill, stroke and colours. */
  readonly opacity: number;
  readonly filter: boolean;
  readonly mask: boolean;
}

/** One shape of a clip path. */
export interface ClipPart {
  readonly outlines: readonly Outline[];
  readonly rule: 'nonzero' | 'evenodd';
}

/** Size of a picture's grid of pixels, or why it is not known. */
export type PictureSize =
  | { readonly kind: 'pixels'; readonly widthPx: number; readonly heightPx: number; readonly mediaType: string }
  /** Lines and areas: has no pixels. */
  | { readonly kind: 'drawing' }
  /** A file of its own that was not read. */
  | { readonly kind: 'linked'; readonly address: string }
  | { readonly kind: 'unreadable'; readonly why: string };

/** A picture as it is placed. */
export interface PictureFacts {
  readonly size: PictureSize;
  /** The rectangle it is fitted into, user units of the shape. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** `none` stretches, `meet` fits it in, `slice` fills the rectangle. */
  readonly fit: 'none' | 'meet' | 'slice';
}

/** How a text is set. */
export interface TextFacts {
  /** As written, most wanted first; '' where none is named. */
  readonly families: readonly string[];
  /** Smallest size of its type, user units of the shape. */
  readonly fontSize: number;
  readonly characters: number;
}

/** What a gradient or pattern gives. */
export type ServerFacts = 'paints' | 'no-stops' | 'no-content' | 'no-size' | 'circle' | 'not-there';
