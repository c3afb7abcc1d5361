// What every check gets, and what a check is.
import type { Outline } from '../geometry/outline.js';
import type { Artwork, Shape } from '../model/artwork.js';
import type { ClipPart, PictureFacts, ServerFacts, ShapeEffects, TextFacts } from '../model/drawn-facts.js';
import type { Faces } from '../model/faces.js';
import type { Finding } from '../model/finding.js';
import type { Layout } from '../model/layout.js';
import type { MarkPlan } from '../model/marks.js';
import type { Assignment } from '../model/pass.js';
import type { Ticket } from '../model/ticket.js';
import type { ToolLine } from '../model/tool-line.js';
import type { Chain } from './chain-lines.js';
import type { ToolPieces } from './tool-pieces.js';

/** The artwork as it would be split, the job's numbers (`ticket.checks`), and what the road reads of the source. */
export interface CheckFacts {
  readonly artwork: Artwork;
  readonly assignment: Assignment;
  readonly ticket: Ticket;
  /** What clip paths around a shape let through: each is the union of its parts. */
  readonly clipsOf: (shape: Shape) => readonly (readonly ClipPart[])[];
  /** Opacity, filters and masks on a shape and on the groups around it. */
  readonly effectsOf: (shape: Shape) => ShapeEffects;
  /** The picture that an image shows. */
  readonly pictureOf: (shape: Shape) => PictureFacts;
  /** How a text is set. */
  readonly textOf: (shape: Shape) => TextFacts;
  /** What the gradient or pattern with an id gives. */
  readonly serverOf: (id: string) => ServerFacts;
  /** Copies on a sheet; null where the passes are as large as the drawing. */
  readonly layout: Layout | null;
  /** The marks that the sheets get; null where they get none. With a layout, mm on its sheet. */
  readonly marks: MarkPlan | null;
  /** The runs of a shape's geometry on the artboard, none of type; read once. */
  readonly outlineOf: (shape: Shape) => readonly Outline[];
  /** Why the tool lines are too many or too tangled to be looked at: then they are left out here; else null. */
  readonly tangle: 'pieces' | 'meetings' | null;
  /** The lines of all tool passes, pass by pass in the order of the runs, within a pass in paint order. */
  readonly toolLines: readonly ToolLine[];
  /** The same, those that run into each other end to end as one. */
  readonly chains: readonly Chain[];
  /** Their straight pieces. */
  readonly toolPieces: ToolPieces;
  /** What cut and crease lines enclose; null where no pass cuts. */
  readonly faces: Faces | null;
}

/** One question to the artwork. Findings carry the measured and the allowed value, a place in mm, and what to do. */
export type Check = (facts: CheckFacts) => readonly Finding[];
