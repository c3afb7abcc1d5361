// What lines enclose does not hang on how they lie, in which order they come, or where they are parted; areas as a second library has them.
import { areaD, FillRule, unionD } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildFaces } from '../../src/faces/build-faces.js';
import type { FaceLine } from '../../src/faces/edge-table.js';
import type { Faces, LineKind } from '../../src/model/faces.js';

const OPTIONS = { mmPerPx: 1, snapMm: 0.2, gapMm: 0.05, creaseReachMm: 1 };

type Point = readonly [number, number];
type Line = readonly [LineKind, readonly Point[], boolean];

function build(lines: readonly Line[]): Faces {
  const faceLines = lines.map(([kind, points, closed], shape): FaceLine => {
    const count = closed ? points.length : points.length - 1;
    const outline = {
      closed,
      points: Float64Array.from(points.flat()),
      starts: Uint32Array.from({ length: count }, (_, i) => i),
      curved: new Uint8Array(count),
    };
    return { outline, kind, shape: { index: shape } };
  });
  return buildFaces(faceLines, OPTIONS);
}

/** What must stay the same, in an order that does not hang on the lines'. */
function describeFaces(faces: Faces): readonly unknown[] {
  const areas = (regions: readonly { readonly areaMm2: number }[]): readonly string[] =>
    regions
      .map(({ areaMm2 }) => areaMm2)
      .sort((a, b) => a - b)
      .map((area) => area.toFixed(3));
  const hinges = faces.panels.flatMap(({ hinge }) => (hinge === null ? [] : [hinge.lengthMm]));
  return [
    areas(faces.blanks),
    areas(faces.panels),
    areas(faces.islands),
    hinges.sort((a, b) => a - b).map((length) => length.toFixed(3)),
    [faces.idle.length, faces.uncut.length, faces.gaps.length, faces.rings.length],
  ];
}

/** A row of panels with creases between them, a window in some, and a flap. */
const carton = fc
  .tuple(
    fc.array(fc.integer({ min: 20, max: 90 }), { minLength: 2, maxLength: 6 }),
    fc.integer({ min: 40, max: 120 }),
    fc.array(fc.boolean(), { minLength: 6, maxLength: 6 }),
  )
  .map(([widths, height, windows]): readonly Line[] => {
    const edges = [0];
    for (const width of widths) edges.push(edges.at(-1)! + width);
    const right = edges.at(-1)!;
    const flap = widths[0]! - 8;
    const outline: readonly Point[] = [
      [0, 0],
      [4, -15],
      [4 + flap, -15],
      [widths[0]!, 0],
      [right, 0],
      [right, height],
      [0, height],
    ];
    const creases = edges.slice(1, -1).map((x): Line => ['crease', [[x, 0] as const, [x, height] as const], false]);
    const holes = widths.flatMap((width, i): readonly Line[] => {
      const [x, y] = [edges[i]! + width / 2, height / 2];
      return windows[i] === true
        ? [
            [
              'cut',
              [
                [x - 5, y - 5],
                [x + 5, y - 5],
                [x, y + 6],
              ] as readonly Point[],
              true,
            ],
          ]
        : [];
    });
    return [
      ...holes,
      ['crease', [[0, 0] as const, [widths[0]!, 0] as const], false],
      ...creases,
      ['cut', outline, true],
    ];
  });

function mapLines(lines: readonly Line[], map: (point: Point) => Point): readonly Line[] {
  return lines.map(([kind, points, closed]) => [kind, points.map(map), closed]);
}

describe('the faces of a carton', () => {
  // Doubles as they come would nearly all be next to nothing.
  const angle = fc.integer({ min: 0, max: 360e6 }).map((part) => (part * Math.PI) / 180e6);

  it('are its panels, a flap and its windows, with the area by hand', () => {
    fc.assert(
      fc.property(carton, (lines) => {
        const creases = lines.filter(([kind]) => kind === 'crease').length;
        const windows = lines.filter(([kind]) => kind === 'cut').length - 1;
        const [, outline] = lines.at(-1)!;
        const [width, height] = [outline[4]![0], outline[5]![1]];
        const flap = (15 * (outline[3]![0] + outline[2]![0] - outline[1]![0])) / 2;
        const faces = build(lines);
        expect([faces.blanks.length, faces.panels.length, faces.islands.length]).toEqual([1, creases + 1, windows]);
        expect(faces.blanks[0]!.areaMm2).toBeCloseTo(width * height + flap - 55 * windows, 6);
      }),
      { numRuns: 150 },
    );
  });

  it('are the same however it lies: turned, mirrored, ten metres away', () => {
    fc.assert(
      fc.property(
        carton,
        angle,
        fc.boolean(),
        fc.integer({ min: -10_000, max: 10_000 }),
        (lines, turn, isMirrored, far) => {
          const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
          const moved = mapLines(lines, ([x, y]) => {
            const across = isMirrored ? -x : x;
            return [cos * across - sin * y + far, sin * across + cos * y - far];
          });
          expect(describeFaces(build(moved))).toEqual(describeFaces(build(lines)));
        },
      ),
      { numRuns: 150 },
    );
  });

  it('are the same in any order, drawn from either end', () => {
    fc.assert(
      fc.property(carton, fc.infiniteStream(fc.integer({ min: 0, max: 1_000_000 })), (lines, dice) => {
        const keys = lines.map(() => dice.next().value as number);
        const shuffled = lines
          .map((line, i) => [line, keys[i]!] as const)
          .sort((a, b) => a[1] - b[1])
          .map(([[kind, points, closed], key]): Line => [kind, key % 2 === 0 ? points : points.toReversed(), closed]);
        expect(describeFaces(build(shuffled))).toEqual(describeFaces(build(lines)));
      }),
      { numRuns: 150 },
    );
  });

  it('are the same when every line is parted in two', () => {
    fc.assert(
      fc.property(carton, fc.double({ min: 0.2, max: 0.8, noNaN: true }), (lines, share) => {
        const parted = lines.flatMap(([kind, points, closed]): readonly Line[] => {
          const ends = closed ? [...points, points[0]!] : points;
          return ends.slice(1).flatMap((to, i): readonly Line[] => {
            const from = ends[i]!;
            const at: Point = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
            return [
              [kind, [from, at], false],
              [kind, [at, to], false],
            ];
          });
        });
        expect(describeFaces(build(parted))).toEqual(describeFaces(build(lines)));
      }),
      { numRuns: 150 },
    );
  });
});

describe('a thousand random outlines', () => {
  it('enclose the area that a second library gives them', () => {
    // Radii about a middle: a simple outline, with dents as deep as may be.
    const radii = fc.array(fc.double({ min: 10, max: 200, noNaN: true }), { minLength: 5, maxLength: 24 });
    fc.assert(
      fc.property(radii, (list) => {
        const points = list.map((radius, i): Point => {
          const angle = (2 * Math.PI * i) / list.length;
          return [radius * Math.cos(angle), radius * Math.sin(angle)];
        });
        const faces = build([['cut', points, true]]);
        const path = points.map(([x, y]) => ({ x, y }));
        const area = unionD([path], FillRule.NonZero).reduce((sum, ring) => sum + Math.abs(areaD(ring)), 0);
        expect(faces.blanks).toHaveLength(1);
        // The second library rounds points to a hundredth.
        expect(Math.abs(faces.blanks[0]!.areaMm2 - area)).toBeLessThan(0.01 * 200 * list.length);
        const [x0, y0] = [Math.min(...points.map(([x]) => x)), Math.min(...points.map(([, y]) => y))];
        expect(faces.extentMm!.slice(0, 2)).toEqual([expect.closeTo(x0, 9), expect.closeTo(y0, 9)]);
      }),
      { numRuns: 1000 },
    );
  });
});
