// Where the numbers stand in a picture: at their places, pushed apart where they would cover each other.

/** A number at a place. */
export interface Badge {
  readonly number: number;
  /** What it points at. */
  readonly at: readonly [number, number];
}

/** A number where it is drawn. */
export interface PlacedBadge extends Badge {
  /** Its centre: beside `at`, or where there is room. */
  readonly centre: readonly [number, number];
}

/** Directions that are tried around a place. */
const DIRECTIONS = 12;
const MOST_RINGS = 8;

/** Centres in reach of a place, the nearest first, beginning right and up. */
function listCentres([x, y]: readonly [number, number], beside: number): readonly (readonly [number, number])[] {
  const centres: (readonly [number, number])[] = [];
  for (let ring = 0; ring < MOST_RINGS; ring += 1) {
    const reach = beside * (1 + 0.75 * ring);
    for (let i = 0; i < DIRECTIONS; i += 1) {
      const angle = (2 * Math.PI * i) / DIRECTIONS - Math.PI / 4;
      centres.push([x + reach * Math.cos(angle), y + reach * Math.sin(angle)]);
    }
  }
  return centres;
}

/**
 * Places badges of one size so that none covers another, as long as there is room near by.
 *
 * @param size - Diameter of a badge.
 * @param beside - Distance from what it points at.
 */
export function placeBadges(badges: readonly Badge[], size: number, beside: number): readonly PlacedBadge[] {
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
  const take = (place: readonly [number, number]): void => {
    const cell = cellOf(place[0], place[1]);
    const list = cells.get(cell);
    if (list === undefined) cells.set(cell, [place]);
    else list.push(place);
  };
  return badges.map((badge) => {
    const centre = listCentres(badge.at, beside).find(isFree) ?? badge.at;
    take(centre);
    return { ...badge, centre };
  });
}
