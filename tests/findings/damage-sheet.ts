// Sheets as pinbar makes them, damaged by changes of their text, before a judge of your choice.
import { classify } from '../../src/classify/classify.js';
import { type Finding, joinPieces, type Ticket } from '../../src/index.js';
import { markSheets } from '../../src/mark/mark-sheets.js';
import { planMarks } from '../../src/mark/plan-marks.js';
import { decodeUtf8, encodeUtf8 } from '../../src/model/platform.js';
import { readArtboard } from '../../src/resolve/artboard.js';
import { readColour } from '../../src/resolve/colour.js';
import { resolveSource, scanBytes } from '../../src/road/read-artwork.js';
import { prepareSplit, split } from '../../src/split/split.js';
import { compareSheets, type Original, readBack } from '../../src/verify/verify.js';
import { judgeSheets } from '../../src/witness/judge-sheets.js';
import { changeText, type Variant } from './sample.js';

interface Written {
  readonly pass: string;
  readonly file: string;
  readonly bytes: Uint8Array;
  readonly rows: Int32Array;
}

function writeSheets(bytes: Uint8Array, ticket: Ticket): { original: Original; written: readonly Written[] } {
  const source = scanBytes(bytes, {});
  const artwork = resolveSource(source, {}, null);
  const { assignment } = classify(artwork, ticket, readColour);
  const { plan, rootSize } = planMarks(artwork, assignment, ticket);
  if (plan === null) throw new Error('the sample has no room for marks');
  const sanitised = prepareSplit(source);
  const parts = split(source, artwork, assignment, { ticket, sanitised, pictures: new Map(), rootSize });
  const sheets = markSheets(parts.sheets, plan, { artwork, assignment, marks: ticket.marks, stem: 'carton' });
  const written = sheets.map(({ pass, pieces, rows }) => {
    return { pass: pass.name, file: `${pass.name}.svg`, bytes: joinPieces(pieces), rows };
  });
  const { cleanedRows, removed } = sanitised;
  const { marginMm } = ticket;
  const rootMayChange = false;
  return {
    original: { source, artwork, assignment, marginMm, rootMayChange, cleanedRows, removed },
    written,
  };
}

function damage(sheet: Written, variant: Variant): Written {
  let text = decodeUtf8(sheet.bytes);
  for (const [pass, from, to] of variant.change ?? []) if (pass === sheet.pass) text = changeText(text, from!, to!);
  const rows = [...sheet.rows];
  for (const [pass, start, gone, ...put] of variant.rows ?? [])
    if (pass === sheet.pass) rows.splice(start, gone, ...put);
  return { ...sheet, bytes: encodeUtf8(text), rows: Int32Array.from(rows) };
}

function askReadBack(original: Original, written: readonly Written[]): readonly Finding[] {
  const readings = written.map((sheet, index) =>
    readBack(original, sheet, index, {
      scan: (bytes) => scanBytes(bytes, {}),
      resolveArtboard: (sheetSource) => readArtboard(sheetSource, null).artboard,
      resolve: (sheetSource) => resolveSource(sheetSource, {}, null),
    }),
  );
  return [...readings.flatMap((reading) => reading.findings), ...compareSheets(readings, true)];
}

function askWitness(original: Original, written: readonly Written[]): readonly Finding[] {
  const { artwork, assignment } = original;
  const carriers = assignment.placements.map(({ pass, shape, part }) => ({
    pass,
    part,
    row: artwork.shapes[shape]!.carrier,
  }));
  const claims = written.map(({ file, bytes, rows }, index) => {
    const drawn = new Map(carriers.filter(({ pass }) => pass === index).map(({ row, part }) => [row, part] as const));
    return { name: file, bytes, rows, drawn };
  });
  const expected = new Set(carriers.map(({ row }) => row));
  return judgeSheets(original.source.text, claims, { mmPerPx: artwork.artboard.mmPerPx, expected, grownMm: 0 })
    .findings;
}

/** What the judge of the variant says of the sheets of a file once they are damaged. */
export function judgeDamaged(bytes: Uint8Array, ticket: Ticket, variant: Variant): readonly Finding[] {
  const { original, written } = writeSheets(bytes, ticket);
  const damaged = written.map((sheet) => damage(sheet, variant));
  return variant.judge === 'witness' ? askWitness(original, damaged) : askReadBack(original, damaged);
}
