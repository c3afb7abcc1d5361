// Faces of invented blanks, by closed forms.
import { describe, expect, it } from 'vitest';
import type { Faces } from '../../../src/model/faces.js';
import { type Drawn, drawFaces, SLEEVE } from './draw-faces.js';

function sizes(regions: readonly { readonly lengthMm: number; readonly widthMm: number }[]): readonly string[] {
  return regions.map(({ lengthMm, widthMm }) => `${lengthMm.toFixed(3)} x ${widthMm.toFixed(3)}`).sort();
}

function counts(faces: Faces): readonly number[] {
  return [faces.blanks.length, faces.panels.length, faces.islands.length];
}

const SQUARE: Drawn = ['cut', 'M0 0H100V100H0Z'];

describe('a sleeve', () => {
  const faces = drawFaces(SLEEVE);

  it('is one blank of six panels with their sizes and the area by hand', () => {
    expect(counts(faces)).toEqual([1, 6, 0]);
    expect(sizes(faces.panels)).toEqual([
      '60.000 x 38.000',
      '80.000 x 12.000',
      '80.000 x 40.000',
      '80.000 x 40.000',
      '80.000 x 60.000',
      '80.000 x 60.000',
    ]);
    expect(faces.blanks[0]!.areaMm2).toBeCloseTo(200 * 80 + 60 * 38 + 12 * 75, 6);
    expect(faces.extentMm!.map((value) => Number(value.toFixed(6)) + 0)).toEqual([0, -38, 212, 118]);
    expect(faces.wasteShare).toBeCloseTo(1 - 19180 / (212 * 118), 9);
    expect([faces.idle, faces.uncut, faces.gaps, faces.looseEnds, faces.rings]).toEqual([[], [], [], [], []]);
  });

  it('hangs as a tree from its largest panel, by creases of their length', () => {
    const root = faces.panels[faces.blanks[0]!.root]!;
    expect([root.parent, root.depth, root.hinge, root.areaMm2.toFixed(3)]).toEqual([-1, 0, null, '4800.000']);
    for (const panel of faces.panels.slice(1)) {
      expect(panel.depth).toBe(faces.panels[panel.parent]!.depth + 1);
      expect([...panel.hinge!.panels].sort()).toEqual([panel.index, panel.parent].sort());
    }
    expect(faces.panels.slice(1).map((panel) => panel.hinge!.lengthMm.toFixed(3))).toHaveLength(5);
    expect(faces.panels.flatMap((panel) => panel.hinge?.lengthMm.toFixed(2) ?? []).sort()).toEqual([
      '60.00',
      '80.00',
      '80.00',
      '80.00',
      '80.00',
    ]);
  });
});

describe('what falls out', () => {
  it('is told in the order of its lines, not by size: alike holes differ only by what an engine rounds', () => {
    const windows: readonly Drawn[] = [12, 10, 11].map((width, i) => [
      'cut',
      `M${10 + 30 * i} 10h${width}v10h${-width}z`,
    ]);
    const faces = drawFaces([SQUARE, ...windows]);
    const lefts = faces.blanks[0]!.holes.map((hole) => Math.min(...hole.filter((_, at) => at % 2 === 0)));
    expect(lefts.map((left) => Math.round((left * 25.4) / 96))).toEqual([10, 40, 70]);
  });

  it("a window is an island, its area is not the blank's", () => {
    const faces = drawFaces([SQUARE, ['crease', 'M50 0V100'], ['cut', 'M10 10H30V20H10Z']]);
    expect(counts(faces)).toEqual([1, 2, 1]);
    expect(faces.blanks[0]!.areaMm2).toBeCloseTo(9800, 6);
    expect(faces.blanks[0]!.holes).toHaveLength(1);
    expect(sizes(faces.islands)).toEqual(['20.000 x 10.000']);
    expect(faces.islands[0]!.shape).toBe(2);
    expect(faces.panels.map((panel) => panel.areaMm2.toFixed(3)).sort()).toEqual(['4800.000', '5000.000']);
  });

  it('a round hole has the area of its circle, within the flattening', () => {
    const faces = drawFaces([SQUARE, ['cut', 'M60 50A10 10 0 0 1 40 50A10 10 0 0 1 60 50Z']]);
    expect(Math.abs(faces.islands[0]!.areaMm2 - 100 * Math.PI)).toBeLessThan(20 * Math.PI * 0.005);
    expect(faces.islands[0]!.areaMm2).not.toBeCloseTo(100 * Math.PI, 6);
    expect(counts(faces)).toEqual([1, 1, 1]);
  });

  it('a window across a crease opens both panels and parts the crease', () => {
    const faces = drawFaces([SQUARE, ['crease', 'M50 0V100'], ['cut', 'M40 40H60V60H40Z']]);
    expect(counts(faces)).toEqual([1, 2, 1]);
    expect(faces.panels[1]!.hinge!.lengthMm).toBeCloseTo(80, 6);
    expect(faces.idle.map(({ panel, lengthMm }) => [panel, lengthMm.toFixed(6)])).toEqual([[-1, '20.000000']]);
    expect([faces.blanks[0]!.outerLines, faces.blanks[0]!.innerLines]).toEqual([[0], [2]]);
  });

  it('an offcut beside the blank is an island, a label of its own is a blank', () => {
    const blank: Drawn[] = [SQUARE, ['crease', 'M50 0V100']];
    expect(counts(drawFaces([...blank, ['cut', 'M100 10H110V20H100']]))).toEqual([1, 2, 1]);
    expect(counts(drawFaces([...blank, ['cut', 'M120 10H130V20H120Z']]))).toEqual([2, 3, 0]);
  });

  it('a piece among others in a hole is an island too, where it touches none of the rim', () => {
    const grid = [10, 20, 30, 40].flatMap((at): Drawn[] => [
      ['cut', `M10 ${at}H40`],
      ['cut', `M${at} 10V40`],
    ]);
    const faces = drawFaces([SQUARE, ['crease', 'M50 0V100'], ...grid]);
    expect(counts(faces)).toEqual([1, 2, 9]);
  });

  it('the rest of the sheet around folded blanks is neither', () => {
    const faces = drawFaces([SQUARE, ['crease', 'M50 0V100'], ['cut', 'M-10 -10H110V110H-10Z']]);
    expect(counts(faces)).toEqual([1, 2, 0]);
  });
});

describe('creases and cuts that part nothing', () => {
  it('a slit is open by right: one panel, two loose ends within it', () => {
    const faces = drawFaces([SQUARE, ['cut', 'M20 20H40']]);
    expect(counts(faces)).toEqual([1, 1, 0]);
    expect(faces.looseEnds.map((end) => [end.kind, end.panel])).toEqual([
      ['cut', 0],
      ['cut', 0],
    ]);
    expect(new Set(faces.looseEnds.map((end) => end.chain)).size).toBe(1);
    expect(faces.looseEnds.map((end) => end.dx).sort()).toEqual([-1, 1]);
  });

  it('a crease that ends in the panel is idle', () => {
    const faces = drawFaces([SQUARE, ['crease', 'M50 0V60']]);
    expect(counts(faces)).toEqual([1, 1, 0]);
    expect(faces.idle.map(({ panel, lengthMm }) => [panel, lengthMm.toFixed(6)])).toEqual([[0, '60.000000']]);
  });

  it('creases that cross make a ring of four panels', () => {
    const faces = drawFaces([SQUARE, ['crease', 'M50 0V100M0 50H100']]);
    expect(counts(faces)).toEqual([1, 4, 0]);
    expect(faces.rings).toHaveLength(1);
    expect(faces.panels.map((panel) => panel.depth).sort()).toEqual([0, 1, 1, 2]);
  });

  it('a fold on the rim without a cut leaves no blank', () => {
    const faces = drawFaces([
      ['cut', 'M0 0H100V100H0'],
      ['crease', 'M0 0V100'],
    ]);
    expect(counts(faces)).toEqual([0, 0, 0]);
    expect(faces.uncut).toHaveLength(1);
  });
});

describe('sloppy lines', () => {
  it('an end is led to the line before it, not to the short pieces of its own curve', () => {
    const faces = drawFaces([SQUARE, ['crease', 'M50 0V99.93V99.945V99.96']]);
    expect([counts(faces), faces.idle, faces.looseEnds]).toEqual([[1, 2, 0], [], []]);
  });

  it('a gap below the snap is closed silently, one above it is told', () => {
    const snapped = drawFaces([['cut', 'M0 0H100V100H0V0.04']]);
    expect([counts(snapped), snapped.gaps]).toEqual([[1, 1, 0], []]);
    const gap = drawFaces([['cut', 'M0 0H100V100H0V0.4']]);
    expect(counts(gap)).toEqual([1, 1, 0]);
    expect(gap.gaps.map((item) => item.gapMm.toFixed(6))).toEqual(['0.400000']);
    const open = drawFaces([['cut', 'M0 0H100V100H0V3']]);
    expect([counts(open), open.gaps]).toEqual([[0, 0, 0], []]);
    expect(open.looseEnds.map((end) => end.panel)).toEqual([-1, -1]);
  });

  it('a gap lies between the cuts that end at it, also where edges are split anew after it was bridged', () => {
    const faces = drawFaces([
      ['crease', 'M30 0V100'],
      ['cut', 'M30.03 40V60'],
      ['cut', 'M12 100H0V0H100V40'],
      ['cut', 'M100 40V100H12.4'],
    ]);
    expect(faces.gaps.map((item) => item.shapes.toSorted())).toEqual([[2, 3]]);
  });

  it('a crease that stops short by less than its reach folds all the same; one that runs over too', () => {
    for (const crease of ['M50 1V99', 'M50 -0.5V100.5', 'M50 0.03V99.97', 'M50 0V98.5']) {
      expect(counts(drawFaces([SQUARE, ['crease', crease]]))).toEqual([1, 2, 0]);
    }
    expect(counts(drawFaces([SQUARE, ['crease', 'M50 3V100']]))).toEqual([1, 1, 0]);
  });

  it('a slit that nearly lies on a crease leaves it no idle stretch', () => {
    const faces = drawFaces([SQUARE, ['crease', 'M50 0V100'], ['cut', 'M49.97 20V60']]);
    expect([counts(faces), faces.uncut, faces.idle]).toEqual([[1, 2, 0], [], []]);
  });

  it('dashes drawn one by one fold as the line they lie on, also along a bend; what stands beside it is another', () => {
    const straight = Array.from({ length: 10 }, (_, at) => `M50 ${1 + 10 * at}v8.2`).join('');
    const circle = Array.from({ length: 18 }, (_, at) => {
      const [from, to] = [at * 5, at * 5 + 3.5].map((degrees) => (degrees * Math.PI) / 180);
      const place = (angle: number): string => `${100 - 30 * Math.cos(angle)} ${100 - 30 * Math.sin(angle)}`;
      return `M${place(from!)}A30 30 0 0 1 ${place(to!)}`;
    }).join('');
    for (const angle of [0, 0.3, 0.5236, 1, 2, 4]) {
      const turn = [Math.cos(angle), Math.sin(angle), -Math.sin(angle), Math.cos(angle), 0, 0] as const;
      for (const dashes of [straight, circle]) {
        const faces = drawFaces([SQUARE, ['perforation', dashes]], turn);
        expect([counts(faces), faces.idle, faces.looseEnds]).toEqual([[1, 2, 0], [], []]);
      }
    }
    const beside = drawFaces([SQUARE, ['perforation', 'M50 0v48.5M50.2 50v50']]);
    expect(counts(beside)).toEqual([1, 1, 0]);
  });

  it('a curve drawn twice, in other pieces and the other way round, is one curve', () => {
    const arc = 'M0 0A100 100 0 0 1 100 100';
    const parts = 'M100 100A100 100 0 0 0 70.71067811865476 29.28932188134524A100 100 0 0 0 0 0';
    const faces = drawFaces([
      ['cut', `${arc}H0Z`],
      ['cut', parts],
    ]);
    expect(counts(faces)).toEqual([1, 1, 0]);
    expect(faces.blanks[0]!.areaMm2 / (2500 * Math.PI)).toBeCloseTo(1, 3);
  });

  it('a cut beats a crease that lies on it', () => {
    const faces = drawFaces([SQUARE, ['crease', 'M0 0H100V100']]);
    expect([counts(faces), faces.uncut, faces.idle]).toEqual([[1, 1, 0], [], []]);
  });

  it('of lines that lie on each other in parts, the cut draws the outline', () => {
    const faces = drawFaces([
      ['crease', 'M0 0H100'],
      ['crease', 'M0 0H50'],
      ['cut', 'M0 0H50'],
      ['cut', 'M50 0H100V100H0V0'],
    ]);
    expect(faces.blanks.map(({ outerLines }) => outerLines.toSorted())).toEqual([[2, 3]]);
  });

  it('creases that nearly lie on each other fold as one, in whatever order and number', () => {
    const creases: readonly Drawn[] = [49.987, 50, 50.013].map((x) => ['crease', `M${x} 0V100`]);
    const [left, middle, right] = creases as [Drawn, Drawn, Drawn];
    for (const drawn of [
      [left, right],
      [left, middle, right],
      [middle, left, right],
      [right, middle, left],
    ]) {
      const faces = drawFaces([SQUARE, ...drawn]);
      expect([counts(faces), faces.uncut, faces.idle]).toEqual([[1, 2, 0], [], []]);
    }
  });

  it('a strip too thin to be board goes with what it hangs on, not over a cut', () => {
    const inside: Drawn = ['crease', 'M0.02 0V60'];
    for (const drawn of [
      [inside, SQUARE],
      [SQUARE, inside],
    ]) {
      const faces = drawFaces(drawn);
      expect([counts(faces), faces.uncut, faces.idle]).toEqual([[1, 1, 0], [], []]);
    }
    // A crease that touches a round hole does not hold it.
    const hole: Drawn = ['cut', 'M60 50A10 10 0 0 1 40 50A10 10 0 0 1 60 50Z'];
    for (const x of [40.004, 40, 39.99]) {
      for (const drawn of [
        [SQUARE, hole, ['crease', `M${x} 0V100`]],
        [['crease', `M${x} 0V100`], hole, SQUARE],
      ] as const) {
        expect(counts(drawFaces(drawn as readonly Drawn[]))).toEqual([1, 2, 1]);
      }
    }
  });

  it('nothing gives nothing', () => {
    const faces = drawFaces([]);
    expect([counts(faces), faces.extentMm, faces.wasteShare]).toEqual([[0, 0, 0], null, 0]);
  });
});
