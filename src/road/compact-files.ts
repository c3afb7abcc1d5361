// Smaller files, where the ticket wants them and nothing moved.
import type { Finding } from '../model/finding.js';
import type { RoadOptions } from '../model/job.js';
import { joinPieces, type OutputFile } from '../model/sheet.js';
import type { Ticket } from '../model/ticket.js';
import { judgeCompaction } from '../verify/judge-compaction.js';
import { compactSvg } from '../write/compact-svg.js';
import { finishText } from '../write/finish-files.js';
import { enterStage } from './enter-stage.js';
import { resolveSource, scanBytes } from './read-artwork.js';

/** The files, compacted where that is asked for; one that moved or lost anything is thrown away with a finding. */
export async function compactFiles(
  files: readonly OutputFile[],
  ticket: Ticket,
  options: RoadOptions,
): Promise<{ readonly files: readonly OutputFile[]; readonly findings: readonly Finding[] }> {
  if (!ticket.compact) return { files, findings: [] };
  await enterStage('compact', options);
  const findings: Finding[] = [];
  const compacted: OutputFile[] = [];
  for (const file of files) {
    const before = joinPieces(file.pieces);
    const result = await compactSvg(before, file.name);
    findings.push(...result.findings);
    if (result.text === null) {
      compacted.push(file);
      continue;
    }
    const after = await finishText(file.name, 'image/svg+xml', result.text);
    const problems = judgeCompaction({ before, after: joinPieces(after.pieces), file: file.name }, (bytes) =>
      resolveSource(scanBytes(bytes, options), options, null),
    );
    findings.push(...problems);
    compacted.push(problems.length === 0 ? after : file);
  }
  return { files: compacted, findings };
}
