// A reverse pass as the machine needs it: mirrored about the axis that the sheet is turned over.
import type { Matrix } from '../geometry/matrix.js';
import type { RoadOptions } from '../model/job.js';
import type { SheetTurn, TurnedPass } from '../model/run-sheet.js';
import { type PassFile, wrapPass } from './correct-pass.js';

const GROUP_ID = 'pinbar-turned';

/** From where a point is seen from the front to where it is seen from the reverse, mm from the top left. */
function mirror({ axis, axisMm }: SheetTurn): Matrix {
  return axis === 'vertical' ? [-1, 0, 0, 1, 2 * axisMm, 0] : [1, 0, 0, -1, 0, 2 * axisMm];
}

/**
 * A pass mirrored about an axis: all it holds, marks too, in one group, read again and held against the pass.
 *
 * @returns The file `NAME.turned.svg` and how far any shape came out from its mirror image.
 * @throws PinbarError as `wrapPass` does.
 */
export async function turnPass(file: PassFile, turn: SheetTurn, options: RoadOptions = {}): Promise<TurnedPass> {
  const wrapping = { groupId: GROUP_ID, what: 'turned', matrixMm: mirror(turn) };
  const made = await wrapPass(file, wrapping, options);
  return { ...made, name: `${file.name.replace(/\.svg$/, '')}.turned.svg`, of: file.name, turn };
}
