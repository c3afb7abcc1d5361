// Counts of compared pictures.

/** What came of a set of drawings. */
export interface PictureTally {
  files: number;
  passes: number;
  /** Pixels compared. */
  pixels: number;
  /** In no pixel different. */
  equal: number;
  /** Different where pinbar says so. */
  told: number;
  /** Equal although pinbar says that they may differ: what lies on top hides it, or an estimate was too wide. */
  toldEqual: number;
  /** Single pixels along edges of groups that a renderer draws as layers of their own. */
  grains: number;
  /** By reason. */
  readonly left: Map<string, number>;
  /** What is pinbar's fault, or nobody knows. */
  readonly broken: string[];
}

/** Nothing counted yet. */
export function createPictureTally(): PictureTally {
  return { files: 0, passes: 0, pixels: 0, equal: 0, told: 0, toldEqual: 0, grains: 0, left: new Map(), broken: [] };
}

/** Counts one that was not compared. */
export function leave(tally: PictureTally, reason: string): void {
  tally.left.set(reason, (tally.left.get(reason) ?? 0) + 1);
}

/** One line for the reader. */
export function printPictureTally(name: string, tally: PictureTally): string {
  const { left, broken, ...counts } = tally;
  const said = Object.entries(counts).map(([what, count]) => `${what} ${count}`);
  const not = [...left].map(([reason, count]) => `${count} x ${reason}`);
  return `${name}: ${said.join(', ')}; not compared: ${not.length === 0 ? 'none' : not.join('; ')}; broken: ${broken.length}\n`;
}
