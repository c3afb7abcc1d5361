// Lines that tools run along.
import type { Outline } from '../geometry/outline.js';
import type { Shape } from './artwork.js';
import type { LineKind } from './faces.js';
import type { Role } from './pass.js';

/** One run of a shape in a tool pass. */
export interface ToolLine {
  readonly shape: Shape;
  /** Index into `Assignment.passes`. */
  readonly pass: number;
  readonly role: Role;
  readonly kind: LineKind;
  readonly outline: Outline;
}

/** What a role does to the board; null for roles that run along no lines. */
export function lineKind(role: Role): LineKind | null {
  switch (role) {
    case 'cutting':
      return 'cut';
    case 'creasing':
    case 'reverse-creasing':
      return 'crease';
    case 'perforating':
    case 'partial-cutting':
    case 'reverse-partial-cutting':
      return 'perforation';
    default:
      return null;
  }
}
