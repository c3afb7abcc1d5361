// What is made of the finished passes where the ticket asks: another order of the lines, then ties.
import type { Finding } from '../model/finding.js';
import type { RoadOptions } from '../model/job.js';
import { isToolpath, namesPass, type Pass } from '../model/pass.js';
import type { SequenceReport } from '../model/sequence.js';
import { joinPieces, type OutputFile } from '../model/sheet.js';
import type { Ticket } from '../model/ticket.js';
import { findTieRequest, type TieReport } from '../model/ties.js';
import { shapeOutline } from '../resolve/shape-outline.js';
import { finishBytes } from '../write/finish-files.js';
import { enterStage } from './enter-stage.js';
import { listRuns } from './list-work.js';
import { resolveSource, scanBytes } from './read-artwork.js';
import { sequencePass } from './sequence-pass.js';
import { tiePass } from './tie-pass.js';

/** Passes derived from the plain ones, in the same order, and passes of the ties alone. */
export interface DerivedPasses {
  readonly files: readonly OutputFile[];
  readonly tieFiles: readonly OutputFile[];
  /** By file of ties: index of the pass it belongs to. */
  readonly tiePasses: readonly number[];
  readonly sequence: readonly SequenceReport[];
  readonly ties: readonly TieReport[];
  readonly findings: readonly Finding[];
}

/** Ends of all creases on the artboard, px: x, y pairs. */
function listCreaseEnds(plain: readonly OutputFile[], passes: readonly Pass[], options: RoadOptions): Float64Array {
  const ends = plain.flatMap((file, index) => {
    if (!passes[index]!.role.endsWith('creasing')) return [];
    const source = scanBytes(joinPieces(file.pieces), options);
    const artwork = resolveSource(source, options, null);
    const outlines = artwork.shapes.flatMap((shape) =>
      shape.draws && !shape.hidden ? shapeOutline(source, artwork, shape) : [],
    );
    return listRuns(outlines).flatMap(({ x0, y0, x1, y1 }) => [x0, y0, x1, y1]);
  });
  return Float64Array.from(ends);
}

/** Derives what the ticket asks for; without that the files come back as they are. */
export async function derivePasses(
  plain: readonly OutputFile[],
  passes: readonly Pass[],
  ticket: Ticket,
  options: RoadOptions,
): Promise<DerivedPasses> {
  const files: OutputFile[] = [];
  const tieFiles: OutputFile[] = [];
  const tiePasses: number[] = [];
  const sequence: SequenceReport[] = [];
  const ties: TieReport[] = [];
  const findings: Finding[] = [];
  const { sequence: order, ties: requests = [] } = ticket;
  if (order === undefined && requests.length === 0)
    return { files: plain, tieFiles, tiePasses, sequence, ties, findings };
  await enterStage('derive', options);
  const creaseEnds = requests.length === 0 ? new Float64Array() : listCreaseEnds(plain, passes, options);
  const scale = ticket.sheet?.scale ?? 1;
  for (const [index, file] of plain.entries()) {
    const pass = passes[index]!;
    const before = joinPieces(file.pieces);
    let bytes = before;
    if (order !== undefined && isToolpath(pass.role) && namesPass(order.passes, pass)) {
      const ordered = sequencePass({ name: file.name, pass, bytes, scale }, order, options);
      sequence.push(ordered.report);
      findings.push(...ordered.findings);
      bytes = ordered.bytes;
    }
    const request = findTieRequest(requests, pass);
    if (request !== undefined) {
      const tied = tiePass({ name: file.name, pass, bytes, scale }, request, creaseEnds, options);
      ties.push(tied.report);
      findings.push(...tied.findings);
      bytes = tied.bytes;
      if (tied.ties !== null) {
        tieFiles.push(await finishBytes(tied.report.tiesFile!, tied.ties));
        tiePasses.push(index);
      }
    }
    files.push(bytes === before ? file : await finishBytes(file.name, bytes));
  }
  return { files, tieFiles, tiePasses, sequence, ties, findings };
}
