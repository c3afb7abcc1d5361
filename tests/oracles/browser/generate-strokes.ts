// Stroked paths of every kind of join, cap and bend.
import svgpath from 'svgpath';
import { createDice, type Dice } from './dice.js';

/** A stroked path. */
export interface Stroke {
  readonly element: string;
  /** The same, `MAGNIFIED` times as large. */
  readonly magnified: string;
  /** From its user units to those of the board. */
  readonly transform: string;
  /** Whether it is made of straight lines alone. */
  readonly isStraight: boolean;
}

/** How many there are. */
const STROKES = 160;
/** The browser outlines curves to a fixed fraction of a unit. */
export const MAGNIFIED = 1024;
/** The longer side of the board, units; no stroke reaches its rim. */
export const BOARD = 200;

function drawPath(dice: Dice, isStraight: boolean): string {
  const at = (): string => `${dice.between(75, 125)} ${dice.between(75, 125)}`;
  const step = (): string => {
    switch (isStraight ? dice.whole(0, 2) : dice.whole(0, 6)) {
      case 0:
      case 1:
        return `L${at()}`;
      case 2:
        return dice.happens(0.5) ? `h${dice.between(-20, 20)}` : `v${dice.between(-20, 20)}`;
      case 3:
        return `C${at()} ${at()} ${at()}`;
      case 4:
        return `Q${at()} ${at()}`;
      case 5:
        return `T${at()}`;
      default:
        return `A${dice.between(5, 25)} ${dice.between(5, 25)} ${dice.between(-90, 90)} ${dice.whole(0, 1)} ${dice.whole(0, 1)} ${at()}`;
    }
  };
  const first = isStraight ? '' : `C${at()} ${at()} ${at()}`;
  const rest = Array.from({ length: dice.whole(isStraight ? 1 : 0, 4) }, step).join('');
  // A dot now and then: a subpath without length shows its cap.
  const dot = dice.happens(0.1) ? `M${at()}z` : '';
  return `M${at()}${first}${rest}${dice.happens(0.4) ? 'z' : ''}${dot}`;
}

function drawTransform(dice: Dice): string {
  if (dice.happens(0.4)) return '';
  const turn = `rotate(${dice.between(-180, 180)} 100 100)`;
  const lean = `translate(100 100) skewX(${dice.between(-30, 30)}) scale(${dice.between(0.4, 1.1)} ${dice.pick([1, -1]) * dice.between(0.4, 1.1)}) translate(-100 -100)`;
  return dice.pick([turn, lean, `${turn} ${lean}`]);
}

/** All of them, the same every time. */
export function generateStrokes(): readonly Stroke[] {
  const dice = createDice(20_011);
  return Array.from({ length: STROKES }, (_, at) => {
    const isStraight = at % 2 === 0;
    const data = drawPath(dice, isStraight);
    const width = dice.between(0.5, 9);
    const joins = [
      `stroke-linejoin="${dice.pick(['miter', 'miter', 'round', 'bevel'])}"`,
      `stroke-linecap="${dice.pick(['butt', 'round', 'square'])}"`,
      `stroke-miterlimit="${dice.between(1, 8)}"`,
    ].join(' ');
    const write = (times: number): string =>
      `<path d="${svgpath(data).scale(times).toString()}" stroke-width="${width * times}" ${joins} fill="none" stroke="black"/>`;
    return { element: write(1), magnified: write(MAGNIFIED), transform: drawTransform(dice), isStraight };
  });
}

/** A document of one stroke, `perUnit` px to the unit of the board. */
export function writeStroke({ element, transform }: Stroke, perUnit: number): string {
  const side = BOARD * perUnit;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${side}" height="${side}" viewBox="0 0 ${BOARD} ${BOARD}"><g transform="${transform}">${element}</g></svg>`;
}
