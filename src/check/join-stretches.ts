// Stretches of lines, joined where they touch.

/** A stretch from one length along a line to another, px. */
export type Stretch = readonly [number, number];

/** Stretches in order, those that touch within a tolerance as one. */
export function joinStretches(stretches: readonly Stretch[], tolerance: number): readonly Stretch[] {
  const joined: [number, number][] = [];
  for (const [from, to] of stretches.toSorted((a, b) => a[0] - b[0])) {
    const last = joined.at(-1);
    if (last !== undefined && from <= last[1] + tolerance) last[1] = Math.max(last[1], to);
    else joined.push([from, to]);
  }
  return joined;
}

/** Length of all stretches. */
export function stretchLength(stretches: readonly Stretch[]): number {
  return stretches.reduce((sum, [from, to]) => sum + to - from, 0);
}
