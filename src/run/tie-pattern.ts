// A line shared out into whole stretches of cut with ties between them.

/** Cuts and ties of one line, mm. */
export interface TiePattern {
  readonly cuts: number;
  readonly ties: number;
  /** Length of each cut and of each tie, both grown or shrunk alike. */
  readonly cutMm: number;
  readonly tieMm: number;
  /** By how much, 1 for not at all. */
  readonly stretch: number;
}

/**
 * The pattern with the whole number of cuts that changes the asked lengths least; an open line begins and ends with a cut, a
 * closed one has as many ties as cuts. A line too short for one tie is one cut.
 */
export function planTies(lengthMm: number, closed: boolean, cutMm: number, tieMm: number): TiePattern {
  const unit = cutMm + tieMm;
  const cuts = Math.max(1, Math.round((closed ? lengthMm : lengthMm + tieMm) / unit));
  const ties = closed ? (cuts > 1 ? cuts : 0) : cuts - 1;
  const stretch = lengthMm / (cuts * cutMm + ties * tieMm);
  return { cuts, ties, cutMm: cutMm * stretch, tieMm: tieMm * stretch, stretch };
}
