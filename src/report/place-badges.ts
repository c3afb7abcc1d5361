// Where the numbers stand in a picture: at their places, pushed apart where they would cover each other.

/** A number at a place. */
export interface Badge {
  readonly number: number;
  /** What it points at. */
  readonly at: readonly [number, number];
}

/** A number where it is drawn. */
export interface PlacedBadge extends Badge {
  /** Its centre; not `at` where others were in the way. */
  readonly centre: readonly [number, number];
}

/** Directions that are tried around a place. */
const DIRECTIONS = 12;
const MOST_RINGS = 8;

/** Centres in reach of a place, the nearest first. */
function listCentres([x, y]: readonly [number, number], step: number): readonly (readonly [number, number])[] {
  const centres: (readonly [number, number])[] = [[x, y]];
  for (let ring = 1; ring <= MOST_RINGS; ring += 1) {
    for (let i = 0; i < DIRECTIONS; i += 1) {
      const angle = (2 * Math.PI * i) / DIRECTIONS;
      centres.push([x + ring * step * Math.cos(angle), y + ring * step * Math.sin(angle)]);
    }
  }
  return centres;
}

/**
 * Places badges of one size so that none covers another, as long as there is room near by.
 *
 * @param size - Diameter of a badge.
 */
export function placeBadges(badges: readonly Badge[], size: number): readonly PlacedBadge[] {
  const cells = new Map<string, (readonly [number, number])[]>();
  const cellOf = (x: number, y: number): string => `${Math.floor(x / size)} ${Math.floor(y / size)}`;
  const isFree = ([x, y]: readonly [number, number]): boolean => {
    for (let dx = -size; dx <= size; dx += size) {
      for (let dy = -size; dy <= size; dy += size) {
        const taken = cells.get(cellOf(x + dx, y + dy)) ?? [];
        if (taken.some(([a, b]) => Math.hypot(a - x, b - y) < size)) return false;
      }
    }
    return true;
  };
  return badges.map((badge) => {
    const centre = listCentres(badge.at, size * 0.75).find(isFree) ?? badge.at;
    const cell = cellOf(centre[0], centre[1]);
    const list = cells.get(cell);
    if (list === undefined) cells.set(cell, [centre]);
    else list.push(centre);
    return { ...badge, centre };
  });
}
