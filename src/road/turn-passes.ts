// Which passes lie on the reverse, about which axis their files are mirrored, and the mirrored files.
import { type Finding, finding } from '../model/finding.js';
import type { RoadOptions } from '../model/job.js';
import { GRIPPER_SIDE } from '../model/layout.js';
import { type Pass, sideOf } from '../model/pass.js';
import type { SheetTurn, TurnedPass } from '../model/run-sheet.js';
import { joinPieces, type OutputFile } from '../model/sheet.js';
import { PinbarError } from '../model/trouble.js';
import type { SizeMm } from './measure-files.js';
import type { ManifestTicket } from './read-manifest.js';
import { turnPass } from './turn-pass.js';

/** A size as the manifest says it: 240 mm are not 240.00000000000003. */
export function roundMm(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}

/** How the sheet is turned for a pass on the reverse: as the pass says, else as the checks do; null on the front, and where nobody says. */
export function findTurn(
  { name, role }: Pick<Pass, 'name' | 'role'>,
  ticket: ManifestTicket,
  { widthMm, heightMm }: SizeMm,
): SheetTurn | null {
  const asked = ticket.passes?.find((pass) => pass.name === name);
  if (sideOf(role, asked?.side) === 'front') return null;
  const said = ticket.checks?.turnAxis ?? 'not-said';
  const way = asked?.turn ?? null;
  // The edge that the machine holds stays where it is when the sheet is turned, and changes places when it is tumbled.
  const gripper = ticket.sheet?.gripperSide ?? ticket.checks?.gripperSide ?? GRIPPER_SIDE;
  const upright = (gripper === 'top' || gripper === 'bottom') === (way === 'work-and-turn');
  const axis = way !== null ? (upright ? 'vertical' : 'horizontal') : said === 'not-said' ? null : said;
  if (axis === null) return null;
  return { axis, axisMm: asked?.axisMm ?? roundMm((axis === 'vertical' ? widthMm : heightMm) / 2), way };
}

/** A file and the pass that it is of; a file of ties is of the pass that they are in. */
export interface FileOfPass {
  readonly file: OutputFile;
  readonly pass: Pass;
}

function tellNotTurned(error: PinbarError, name: string): Finding {
  return finding('turn/not-made', {
    message: `${name} is on the reverse, but no mirrored file is made of it: ${error.message}`,
    remedy: `Mirror it at the machine, or take the cause away. ${error.findings.at(-1)!.remedy}`,
    place: { file: name },
  });
}

/** Mirrors the files of all passes on the reverse whose turn is known; each is read again. */
export async function turnPasses(
  files: readonly FileOfPass[],
  ticket: ManifestTicket,
  size: SizeMm,
  options: RoadOptions,
): Promise<{ readonly turnedFiles: readonly TurnedPass[]; readonly findings: readonly Finding[] }> {
  const turnedFiles: TurnedPass[] = [];
  const findings: Finding[] = [];
  for (const { file, pass } of files) {
    const turn = findTurn(pass, ticket, size);
    if (turn === null) continue;
    try {
      turnedFiles.push(await turnPass({ name: file.name, bytes: joinPieces(file.pieces) }, turn, options));
    } catch (error) {
      if (!(error instanceof PinbarError) || error.code !== 'register/not-kept') throw error;
      findings.push(tellNotTurned(error, file.name));
    }
  }
  return { turnedFiles, findings };
}
