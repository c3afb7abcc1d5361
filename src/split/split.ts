// The artwork, taken apart: one sheet per pass.
import type { Artwork } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import { finding } from '../model/finding.js';
import { type Assignment, type Part, type Pass, type Placement, placementsByPass } from '../model/pass.js';
import type { Picture, RootSize, Sheet } from '../model/sheet.js';
import type { Ticket } from '../model/ticket.js';
import { placeOf } from '../source/locate.js';
import type { Source } from '../source/source.js';
import { type Edit, orderEdits } from './edit.js';
import { editRoot } from './edit-root.js';
import { emitSheet } from './emit-sheet.js';
import { overrideStyle } from './override-style.js';
import { treatPictures } from './pictures.js';
import { type Sanitised, sanitise } from './sanitise.js';
import { type Grounds, layGrounds, selectRows } from './select-rows.js';

/** What the split needs besides the artwork. */
export interface SplitRequest {
  readonly ticket: Ticket;
  readonly rootSize: RootSize;
  /** Linked pictures by the address written in the file. */
  readonly pictures: ReadonlyMap<string, Picture>;
}

/** All sheets of a job, in the order of the passes. */
export interface SplitResult {
  readonly sheets: readonly Sheet[];
  readonly findings: readonly Finding[];
}

const HIDE: Readonly<Record<Part, string>> = {
  whole: '',
  fill: 'stroke:none!important',
  stroke: 'fill:none!important',
};

/** Which rows a pass draws, and the edits that part their paint. */
function placeCarriers(
  grounds: Grounds,
  placements: readonly Placement[],
): { readonly carriers: readonly number[]; readonly styles: Map<number, string>; readonly findings: Finding[] } {
  const { source, artwork } = grounds;
  const carriers: number[] = [];
  const styles = new Map<number, string>();
  const findings: Finding[] = [];
  for (const placement of placements) {
    const shape = artwork.shapes[placement.shape]!;
    if (carriers.at(-1) !== shape.carrier) carriers.push(shape.carrier);
    if (placement.part === 'whole') continue;
    if (shape.carrier === shape.element) styles.set(shape.element, HIDE[placement.part]);
    else findings.push(sayUseParted(source, shape.carrier));
  }
  return { carriers, styles, findings };
}

function sayUseParted(source: Source, row: number): Finding {
  const place = placeOf(source, row);
  return finding('classify/use-divided', {
    message: `The copy on line ${place.line} (use) draws a shape with print fill and die stroke; a copy cannot be parted.`,
    remedy: 'Draw the copy as a shape of its own.',
    place,
  });
}

const SHOW = 'display:inline!important;visibility:visible!important';

/** Rows that hide what is wanted after all. */
function listHiders(grounds: Grounds, assignment: Assignment): ReadonlySet<number> {
  const { source, artwork } = grounds;
  const rows = new Set<number>();
  for (const carrier of assignment.shownElements) {
    for (let row = carrier; row >= 0; row = source.elements.parent[row]!) if (artwork.hiders.has(row)) rows.add(row);
  }
  return rows;
}

/** One edit per row, whatever it is overridden for. */
function overrideRows(source: Source, shown: ReadonlySet<number>, styles: ReadonlyMap<number, string>): Edit[] {
  const edits = [...shown].map((row) =>
    overrideStyle(source, row, styles.has(row) ? `${SHOW};${styles.get(row)}` : SHOW),
  );
  for (const [row, css] of styles) if (!shown.has(row)) edits.push(overrideStyle(source, row, css));
  return edits;
}

/**
 * Looks for active content and linked pictures; needed once before `split`.
 *
 * @returns What to take out, and the addresses of linked pictures that the caller may read.
 */
export function prepareSplit(source: Source): Sanitised {
  return sanitise(source);
}

/**
 * One sheet per pass. Kept elements and the start tags around them are spans of the source.
 *
 * @param sanitised - Of `prepareSplit` for the same source.
 * @returns Sheets without marks, and findings about what was taken out or could not be kept.
 */
export function split(
  source: Source,
  artwork: Artwork,
  assignment: Assignment,
  request: SplitRequest & { readonly sanitised: Sanitised },
): SplitResult {
  const { sanitised, ticket } = request;
  const grounds = layGrounds(source, artwork, sanitised.removed);
  const pictures = treatPictures(source, sanitised.linkedPictures, ticket.linkedPictures, request.pictures);
  const shared = [...sanitised.edits, ...pictures.edits, ...editRoot(source, request.rootSize)];
  const shown = listHiders(grounds, assignment);
  const placements = placementsByPass(assignment);
  const findings: Finding[] = [...sanitised.findings, ...pictures.findings];
  const sheets = assignment.passes.map((pass: Pass, index: number) => {
    const placed = placeCarriers(grounds, placements[index]!);
    const selection = selectRows(grounds, pass, placed.carriers);
    findings.push(...placed.findings, ...selection.findings);
    const edits = orderEdits([...shared, ...overrideRows(source, shown, placed.styles)]);
    return emitSheet(grounds, { pass, duty: selection.duty, edits, standIns: artwork.structural });
  });
  return { sheets, findings };
}
