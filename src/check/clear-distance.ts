// How far some points that a line joins stay from a straight piece, and on which sides of it they lie.
import { distanceToPiece, type PieceEnds } from '../geometry/segment.js';

/** Distance of art from a piece, and how far it reaches over it. */
export interface Clearance {
  /** 0 where the art crosses the piece. */
  readonly distance: number;
  /** How far the art reaches beyond the piece's line on the side where it reaches less; 0 where it is all on one side. */
  readonly over: number;
}

function side([x0, y0, x1, y1]: PieceEnds, x: number, y: number): number {
  return (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0);
}

/** Whether two pieces cross: each has its ends on both sides of the other. */
function cross(p: PieceEnds, q: PieceEnds): boolean {
  return side(p, q[0], q[1]) > 0 !== side(p, q[2], q[3]) > 0 && side(q, p[0], p[1]) > 0 !== side(q, p[2], p[3]) > 0;
}

/** The clearance of art, given as straight pieces (x0, y0, x1, y1 each), from one piece. */
export function clearDistance(art: readonly number[], piece: PieceEnds): Clearance {
  const [x0, y0, x1, y1] = piece;
  const length = Math.hypot(x1 - x0, y1 - y0);
  let distance = Infinity;
  let [left, right] = [0, 0];
  for (let at = 0; at < art.length; at += 4) {
    const own: PieceEnds = [art[at]!, art[at + 1]!, art[at + 2]!, art[at + 3]!];
    const away = side(piece, own[0], own[1]) / length;
    left = Math.max(left, away);
    right = Math.max(right, -away);
    if (cross(piece, own)) distance = 0;
    if (distance === 0) continue;
    distance = Math.min(
      distance,
      distanceToPiece(x0, y0, x1, y1, own[0], own[1]),
      distanceToPiece(x0, y0, x1, y1, own[2], own[3]),
      distanceToPiece(own[0], own[1], own[2], own[3], x0, y0),
      distanceToPiece(own[0], own[1], own[2], own[3], x1, y1),
    );
  }
  return { distance, over: Math.min(left, right) };
}
