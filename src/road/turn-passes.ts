// Which passes lie on the reverse, about which axis their files are mirrored, and the mirrored files.
import { type Finding, finding } from '../model/finding.js';
import type { RoadOptions } from '../model/job.js';
import { GRIPPER_SIDE } from '../model/layout.js';
import { type Pass, sideOf } from '../model/pass.js';
import type { ExtentMm } from '../model/proof.js';
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
  /** What it draws, marks too; null where nobody measured it. */
  readonly drawnMm: ExtentMm | null;
}

function tellNotTurned(error: PinbarError, name: string): Finding {
  return finding('turn/not-made', {
    message: `${name} is on the reverse, but no mirrored file is made of it: ${error.message}`,
    remedy: `Mirror it at the machine, or take the cause away. ${error.findings.at(-1)!.remedy}`,
    place: { file: name },
  });
}

/** Less than this beyond the artboard is none, mm. */
const TOUCH_MM = 0.01;

/** How far a mirrored extent reaches beyond the artboard where the extent itself does not, mm. */
function reachOut({ x, y, width, height }: ExtentMm, { axis, axisMm }: SheetTurn, size: SizeMm): number {
  const [from, to, end] = axis === 'vertical' ? [x, x + width, size.widthMm] : [y, y + height, size.heightMm];
  if (from < -TOUCH_MM || to > end + TOUCH_MM) return 0;
  return Math.max(0, to - 2 * axisMm, 2 * axisMm - from - end);
}

function tellOffArtboard({ name, turn }: TurnedPass, outMm: number, size: SizeMm): Finding {
  const [from, end] = turn.axis === 'vertical' ? ['left', size.widthMm] : ['top', size.heightMm];
  const measuredMm = Math.round(outMm * 1000) / 1000;
  return finding('turn/off-artboard', {
    message: `${name} draws up to ${Math.round(outMm * 100) / 100} mm beyond the artboard: it is mirrored about an axis ${turn.axisMm} mm from the ${from}.`,
    remedy: `Say under axisMm how far the axis lies from the ${from} of the files; left out, it is their middle, ${roundMm(end / 2)} mm.`,
    place: { file: name },
    data: { measuredMm, allowedMm: 0, axisMm: turn.axisMm },
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
  for (const { file, pass, drawnMm } of files) {
    const turn = findTurn(pass, ticket, size);
    if (turn === null) continue;
    try {
      const turned = await turnPass({ name: file.name, bytes: joinPieces(file.pieces) }, turn, options);
      turnedFiles.push(turned);
      const outMm = drawnMm === null ? 0 : reachOut(drawnMm, turn, size);
      if (outMm > TOUCH_MM) findings.push(tellOffArtboard(turned, outMm, size));
    } catch (error) {
      if (!(error instanceof PinbarError) || error.code !== 'register/not-kept') throw error;
      findings.push(tellNotTurned(error, file.name));
    }
  }
  return { turnedFiles, findings };
}
