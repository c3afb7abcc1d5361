// The ticket of a run: the file, with what the command line says laid over it.

import { readTicketText } from '../disk/read-input.js';
import {
  type Json,
  PinbarError,
  parseTake,
  readTicket,
  type SheetRequest,
  type Ticket,
  writeTicket,
} from '../index.js';
import type { PassLengths } from './parse-value.js';

/** Options of the command line that change the ticket. */
export interface TicketFlags {
  readonly ticket?: string;
  readonly take: readonly string[];
  readonly hidden?: Ticket['hidden'];
  readonly partPaint?: boolean;
  readonly embed?: boolean;
  readonly linkedPictures?: Ticket['linkedPictures'];
  readonly marks?: boolean;
  readonly margin?: number;
  readonly userUnitsPerInch?: number;
  readonly sheet?: readonly [number, number];
  readonly gripper?: { readonly mm: number; readonly side: SheetRequest['gripperSide'] | null };
  readonly sheetMargin?: number;
  readonly gutter?: readonly [number, number];
  readonly ups?: SheetRequest['ups'];
  readonly turn?: NonNullable<SheetRequest['turn']>;
  readonly place?: SheetRequest['place'];
  readonly scale?: number;
  readonly copyMark?: boolean;
  readonly copies?: SheetRequest['copies'];
  readonly compact?: boolean;
  readonly sequence?: boolean;
  readonly restartContours?: boolean;
  readonly perforate?: readonly PassLengths[];
  readonly hold?: readonly PassLengths[];
  readonly tiesPass?: boolean;
  readonly witness?: Ticket['witness'];
}

/** What the command line asks of the order; nothing where it asks nothing. */
function sequenceOf(flags: TicketFlags, base: Ticket): { readonly sequence?: Json } {
  if (!flags.sequence && !flags.restartContours) return {};
  const extra = flags.restartContours ? { restartContours: true } : {};
  return { sequence: { ...(base.sequence === undefined ? {} : { ...base.sequence }), ...extra } };
}

/** What the command line says of the sheet, laid over what the ticket says; null where neither asks for one. */
function mergeSheet(flags: TicketFlags, base: SheetRequest | undefined): Partial<SheetRequest> | null {
  const { sheet, gripper, sheetMargin, gutter, ups, turn, place, scale, copyMark, copies } = flags;
  const said = {
    ...(sheet === undefined ? {} : { widthMm: sheet[0], heightMm: sheet[1] }),
    ...(gripper === undefined ? {} : { gripperMm: gripper.mm }),
    ...(gripper === undefined || gripper.side === null ? {} : { gripperSide: gripper.side }),
    ...(sheetMargin === undefined ? {} : { marginsMm: sheetMargin }),
    ...(gutter === undefined ? {} : { gutterMm: gutter[0], gutterXMm: gutter[0], gutterYMm: gutter[1] }),
    ...(ups === undefined ? {} : { ups }),
    ...(turn === undefined ? {} : { turn }),
    ...(place === undefined ? {} : { place }),
    ...(scale === undefined ? {} : { scale }),
    ...(copyMark ? { copyMark } : {}),
    ...(copies === undefined ? {} : { copies }),
  };
  if (base === undefined && Object.keys(said).length > 0 && sheet === undefined) {
    throw new PinbarError('use/wrong', {
      message: 'The command line says how copies lie, but not on which sheet.',
      remedy: 'Add --sheet WIDTHxHEIGHT, for instance --sheet 700x500, or take the other options out.',
    });
  }
  return base === undefined && sheet === undefined ? null : { ...base, ...said };
}

/** Ties of the command line take the place of those that the ticket asks of the same pass. */
function tiesOf(flags: TicketFlags, base: Ticket): { readonly ties?: readonly Json[] } {
  const extra = flags.tiesPass ? { tiesPass: true } : {};
  const asked: Json[] = [
    ...(flags.perforate ?? []).map(
      ({ pass, lengthsMm: [cutMm, tieMm] }): Json => ({ pass, mode: 'pattern', cutMm: cutMm!, tieMm: tieMm! }),
    ),
    ...(flags.hold ?? []).map(({ pass, lengthsMm: [tieMm] }): Json => ({ pass, mode: 'hold', tieMm: tieMm! })),
  ];
  const names = [...(flags.perforate ?? []), ...(flags.hold ?? [])].map(({ pass }) => pass);
  const kept = (base.ties ?? []).filter(({ pass }) => !names.includes(pass)).map((tie): Json => ({ ...tie }));
  const ties = [...kept, ...asked].map((tie): Json => ({ ...(tie as { readonly [key: string]: Json }), ...extra }));
  return ties.length === 0 ? {} : { ties };
}

/** The ticket of the file, with what the command line says laid over it. */
export async function makeTicket(flags: TicketFlags): Promise<Ticket> {
  const base = readTicket(flags.ticket === undefined ? { pinbar: 1 } : await readTicketText(flags.ticket));
  const rules = flags.take.map(parseTake);
  const linkedPictures = flags.embed ? 'embed' : flags.linkedPictures;
  const sheet = mergeSheet(flags, base.sheet);
  const merged = {
    ...base,
    ...(rules.length === 0 ? {} : { rules }),
    ...(flags.hidden === undefined ? {} : { hidden: flags.hidden }),
    ...(flags.partPaint ? { partPaint: true } : {}),
    ...(linkedPictures === undefined ? {} : { linkedPictures }),
    ...(flags.marks === false ? { marks: { ...base.marks, wanted: false } } : {}),
    ...(flags.margin === undefined ? {} : { marginMm: flags.margin }),
    ...(flags.userUnitsPerInch === undefined ? {} : { userUnitsPerInch: flags.userUnitsPerInch }),
    ...(sheet === null ? {} : { sheet }),
    ...(flags.compact ? { compact: true } : {}),
    ...(flags.witness === undefined ? {} : { witness: flags.witness }),
  };
  // Read once more, so that rules of the command line are held to what the ticket allows.
  const written = writeTicket(merged as Ticket) as { readonly [key: string]: Json };
  return readTicket({ ...written, ...sequenceOf(flags, base), ...tiesOf(flags, base) });
}
