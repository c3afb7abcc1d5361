// How large the files of a job are.
import type { Artwork } from '../model/artwork.js';
import type { Layout } from '../model/layout.js';
import type { Ticket } from '../model/ticket.js';

/** Width and height, mm. */
export interface SizeMm {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Size of every pass file: of the sheet where there are copies, else of the drawing with its margin. */
export function measureFiles({
  artwork,
  ticket,
  layout,
}: {
  readonly artwork: Artwork;
  readonly ticket: Ticket;
  readonly layout: Layout | null;
}): SizeMm {
  if (layout !== null) return { widthMm: layout.widthMm, heightMm: layout.heightMm };
  const { width, height, mmPerPx } = artwork.artboard;
  return { widthMm: width * mmPerPx + 2 * ticket.marginMm, heightMm: height * mmPerPx + 2 * ticket.marginMm };
}
