// How long a head takes: it speeds up, runs, and slows down on each stretch between stops.

/** What a head can do. */
export interface Motion {
  readonly speedMmS: number;
  readonly travelMmS: number;
  readonly accelerationMmS2: number;
  readonly liftS: number;
}

/** What a run asks of a head. */
export interface Demand {
  readonly stretchesMm: readonly number[];
  readonly travelsMm: readonly number[];
  readonly lifts: number;
}

/**
 * Time of one stretch from stop to stop, with equal speeding up and slowing down.
 *
 * On a short stretch the head slows down before it has reached its speed: 2 * sqrt(L / a), else L / v + v / a.
 *
 * @unit s
 */
export function stretchTime(lengthMm: number, speedMmS: number, accelerationMmS2: number): number {
  if (lengthMm * accelerationMmS2 < speedMmS * speedMmS) return 2 * Math.sqrt(lengthMm / accelerationMmS2);
  return lengthMm / speedMmS + speedMmS / accelerationMmS2;
}

/** Time of all stretches and ways, without the lifts. @unit s */
export function movingTime({ stretchesMm, travelsMm }: Demand, motion: Omit<Motion, 'liftS'>): number {
  const { speedMmS, travelMmS, accelerationMmS2 } = motion;
  let time = 0;
  for (const length of stretchesMm) time += stretchTime(length, speedMmS, accelerationMmS2);
  for (const length of travelsMm) time += stretchTime(length, travelMmS, accelerationMmS2);
  return time;
}

/** Time once over all lines of a pass, without the start. @unit s */
export function motionTime(demand: Demand, motion: Motion): number {
  return movingTime(demand, motion) + demand.lifts * motion.liftS;
}
