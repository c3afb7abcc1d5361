// What is made of the finished passes where the ticket asks: another order of the lines.
import type { Finding } from '../model/finding.js';
import type { RoadOptions } from '../model/job.js';
import { isToolpath, type Pass } from '../model/pass.js';
import type { SequenceReport } from '../model/sequence.js';
import { joinPieces, type OutputFile } from '../model/sheet.js';
import type { Ticket } from '../model/ticket.js';
import { finishBytes } from '../write/finish-files.js';
import { enterStage } from './enter-stage.js';
import { sequencePass } from './sequence-pass.js';

/** Passes derived from the plain ones, in the same order. */
export interface DerivedPasses {
  readonly files: readonly OutputFile[];
  readonly sequence: readonly SequenceReport[];
  readonly findings: readonly Finding[];
}

/** Whether a list of passes names a pass, by its name or role; an empty list names all. */
function namesPass(names: readonly string[], pass: Pass): boolean {
  return names.length === 0 || names.includes(pass.name) || names.includes(pass.role);
}

/** Derives what the ticket asks for; without that the files come back as they are. */
export async function derivePasses(
  plain: readonly OutputFile[],
  passes: readonly Pass[],
  ticket: Ticket,
  options: RoadOptions,
): Promise<DerivedPasses> {
  const { sequence: request } = ticket;
  if (request === undefined) return { files: plain, sequence: [], findings: [] };
  await enterStage('derive', options);
  const files: OutputFile[] = [];
  const sequence: SequenceReport[] = [];
  const findings: Finding[] = [];
  for (const [index, file] of plain.entries()) {
    const pass = passes[index]!;
    if (!isToolpath(pass.role) || !namesPass(request.passes, pass)) {
      files.push(file);
      continue;
    }
    const ordered = sequencePass({ name: file.name, pass, bytes: joinPieces(file.pieces) }, request, options);
    sequence.push(ordered.report);
    findings.push(...ordered.findings);
    files.push(ordered.report.moved === 0 ? file : await finishBytes(file.name, ordered.bytes));
  }
  return { files, sequence, findings };
}
