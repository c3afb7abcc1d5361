// What the checks judge: lines of the tool passes, and what they enclose.
import { boundSlack } from '../check/beyond-bound.js';
import { chainLines } from '../check/chain-lines.js';
import type { CheckFacts } from '../check/check-facts.js';
import { areTooMany, isTangled } from '../check/measure-tangle.js';
import { listToolPieces } from '../check/tool-pieces.js';
import { buildFaces } from '../faces/build-faces.js';
import type { Outline } from '../geometry/outline.js';
import type { Shape } from '../model/artwork.js';
import type { Faces } from '../model/faces.js';
import { placementsByPass } from '../model/pass.js';
import type { Ticket } from '../model/ticket.js';
import { lineKind, type ToolLine } from '../model/tool-line.js';
import { shapeOutline } from '../resolve/shape-outline.js';
import type { PreparedJob } from './prepare-job.js';
import { createDrawnReaders } from './read-drawn.js';

type OutlineOf = CheckFacts['outlineOf'];

/** Reads each shape's outline once. */
function keepOutlines({ source, artwork }: PreparedJob): OutlineOf {
  const kept: (readonly Outline[] | null)[] = artwork.shapes.map(() => null);
  return (shape: Shape) => {
    kept[shape.index] ??= shapeOutline(source, artwork, shape);
    return kept[shape.index]!;
  };
}

function listToolLines({ artwork, assignment }: PreparedJob, outlineOf: OutlineOf): readonly ToolLine[] {
  const lines: ToolLine[] = [];
  for (const [pass, placements] of placementsByPass(assignment).entries()) {
    const { role } = assignment.passes[pass]!;
    const kind = lineKind(role);
    if (kind === null) continue;
    for (const placement of placements) {
      const shape = artwork.shapes[placement.shape]!;
      if (placement.part === 'fill' || shape.kind === 'image' || shape.kind === 'foreignObject') continue;
      for (const outline of outlineOf(shape)) lines.push({ shape, pass, role, kind, outline });
    }
  }
  return lines;
}

function findFaces(lines: readonly ToolLine[], mmPerPx: number, { checks }: Ticket): Faces | null {
  if (!lines.some((line) => line.kind === 'cut')) return null;
  const { snapMm, gapMm, creaseReachMm } = checks;
  const reach = (mm: number): number => mm + boundSlack(mm);
  const options = { snapMm: reach(snapMm), gapMm: reach(gapMm), creaseReachMm: reach(creaseReachMm) };
  return buildFaces(lines, { mmPerPx, ...options });
}

/** The tool lines, or none of them where they are a tangle. */
function lookAtLines(
  lines: readonly ToolLine[],
  mmPerPx: number,
): Pick<CheckFacts, 'tangle' | 'toolLines' | 'chains' | 'toolPieces'> {
  const without = (tangle: 'pieces' | 'meetings') => {
    return { tangle, toolLines: [], chains: [], toolPieces: listToolPieces([]) };
  };
  if (areTooMany(lines)) return without('pieces');
  const toolPieces = listToolPieces(lines);
  if (isTangled(toolPieces)) return without('meetings');
  return { tangle: null, toolLines: lines, chains: chainLines(lines, mmPerPx), toolPieces };
}

/** The facts of a prepared job. */
export function gatherFacts(job: PreparedJob, ticket: Ticket): CheckFacts {
  const { artwork, assignment, marks } = job;
  const outlineOf = keepOutlines(job);
  const { mmPerPx } = artwork.artboard;
  const lines = lookAtLines(listToolLines(job, outlineOf), mmPerPx);
  const faces = findFaces(lines.toolLines, mmPerPx, ticket);
  const drawn = createDrawnReaders(job.source, artwork, job.pictures);
  return { artwork, assignment, ticket, layout: null, marks: marks.plan, outlineOf, ...lines, faces, ...drawn };
}
