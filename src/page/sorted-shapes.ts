// Which shape went where.

/** Which shape went where, as columns. */
export interface SortedShapes {
  /** Per shape: index of the pass of its stroke or of all of it; -1 open, -2 left out. */
  readonly passes: Int16Array;
  /** Per shape: index of the pass of its fill where that is another; else -3. */
  readonly fillPasses: Int16Array;
  /** Per shape: index into `reasons`, or -1. */
  readonly reasons: Int32Array;
}
