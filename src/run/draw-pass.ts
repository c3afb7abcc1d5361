// The picture of a pass on the run sheet: tool lines in black, marks, the sheet's edge, the machine's zero.
import { printNumber } from '../geometry/print-number.js';
import { markNeeded } from '../geometry/simplify-points.js';
import type { Role } from '../model/pass.js';
import { encodeBase64 } from '../model/platform.js';
import type { RunSheet, SheetTurn } from '../model/run-sheet.js';
import type { Corner } from '../model/sequence.js';
import type { RunLine } from './measure-lines.js';

/** What is drawn. */
export interface PassPicture {
  readonly job: RunSheet['job'];
  readonly role: Role;
  readonly origin: Corner | null;
  readonly mmPerPx: number;
  /** How the sheet lies turned; the picture shows what the operator sees. */
  readonly turn: SheetTurn | null;
  /** Null for passes that cover areas: then the file itself is shown. */
  readonly lines: readonly RunLine[] | null;
  /** For ties: the lines of their pass, drawn thin, since ties alone are hardly seen; null for a pass. */
  readonly around: readonly RunLine[] | null;
  readonly bytes: Uint8Array;
}

/** Largest file that is put into the page, bytes, and most points of lines. */
const MOST_BYTES = 1_500_000;
const MOST_POINTS = 40_000;
/** Points nearer to a straight line than this are left out of the picture, mm. */
const FINE_MM = 0.05;

/** What lies on board without darkening it much: shown dark, so that it is seen on paper. */
const PALE: ReadonlySet<Role> = new Set<Role>(['white', 'varnish', 'gluing']);

/** Whether a pass is shown darker than it is. */
export function isShownDark(role: Role): boolean {
  return PALE.has(role);
}

const DASHES: Readonly<Partial<Record<Role, string>>> = {
  creasing: '7 3',
  'reverse-creasing': '7 3 1.5 3',
  perforating: '2 2.2',
  'partial-cutting': '10 2 2 2',
  'reverse-partial-cutting': '10 2 2 2 2 2',
};

function say(mm: number): string {
  return printNumber(mm, 2);
}

function drawLines(lines: readonly RunLine[], { mmPerPx, role, around }: PassPicture, scale: number): string {
  let data = '';
  for (const { outline } of lines) {
    const { points } = outline;
    for (const [at, needed] of markNeeded(points, FINE_MM / mmPerPx).entries()) {
      if (needed === 0) continue;
      data += `${at === 0 ? 'M' : 'L'}${say(points[2 * at]! * mmPerPx)} ${say(points[2 * at + 1]! * mmPerPx)}`;
    }
    if (outline.closed) data += 'Z';
  }
  const dash = around === null ? DASHES[role] : undefined;
  const pattern =
    dash === undefined
      ? ''
      : ` stroke-dasharray="${dash
          .split(' ')
          .map((n) => say(Number(n) * scale * 0.35))
          .join(' ')}"`;
  return `<path d="${data}" fill="none" stroke="#000" stroke-width="${say(scale * (around === lines ? 0.15 : 0.4))}"${pattern}/>`;
}

/** Ties where they are, each with a diamond around it, on the thin lines of their pass. */
function drawTies(lines: readonly RunLine[], picture: PassPicture, scale: number): string {
  const { mmPerPx, around } = picture;
  const r = 1.6 * scale;
  const diamonds = lines.map(({ outline: { points } }) => {
    const last = points.length - 2;
    const [x, y] = [0, 1].map((k) => ((points[k]! + points[last + k]!) / 2) * mmPerPx);
    return `M${say(x! - r)} ${say(y!)}L${say(x!)} ${say(y! - r)}L${say(x! + r)} ${say(y!)}L${say(x!)} ${say(y! + r)}Z`;
  });
  return `${drawLines(around!, picture, scale)}${drawLines(lines, picture, scale)}<path d="${diamonds.join('')}" fill="none" stroke="#000" stroke-width="${say(scale * 0.3)}"/>`;
}

/** Marks where the machine finds them: discs filled, crosses as crosses. */
function drawMarks({ job }: PassPicture, scale: number): string {
  return job.marks
    .map(({ shape, xMm, yMm }) => {
      const r = 1.1 * scale;
      return shape === 'disc'
        ? `<circle cx="${say(xMm)}" cy="${say(yMm)}" r="${say(r)}"/>`
        : `<path d="M${say(xMm - r)} ${say(yMm)}h${say(2 * r)}M${say(xMm)} ${say(yMm - r)}v${say(2 * r)}" stroke="#000" stroke-width="${say(scale * 0.25)}"/>`;
    })
    .join('');
}

/** Zero with the two axes that lead away from it. */
function drawOrigin({ origin, job }: PassPicture, scale: number): string {
  if (origin === null) return '';
  const right = origin.endsWith('right');
  const bottom = origin.startsWith('bottom');
  const [x, y] = [right ? job.widthMm : 0, bottom ? job.heightMm : 0];
  const [sx, sy] = [right ? -1 : 1, bottom ? -1 : 1];
  const reach = 11 * scale;
  const arrow = `<path d="M0 0H${say(reach)}m${say(-2 * scale)} ${say(-1.2 * scale)}l${say(2 * scale)} ${say(1.2 * scale)}l${say(-2 * scale)} ${say(1.2 * scale)}" fill="none" stroke="#000" stroke-width="${say(0.7 * scale)}"/>`;
  return `<g transform="translate(${say(x)} ${say(y)}) scale(${sx} ${sy})"><circle r="${say(2 * scale)}" fill="#fff" stroke="#000" stroke-width="${say(0.7 * scale)}"/>${arrow}<g transform="matrix(0 1 1 0 0 0)">${arrow}</g></g>`;
}

/** Art mirrored as the file of a turned sheet is. */
function turnArt(art: string, turn: SheetTurn | null): string {
  if (turn === null) return art;
  const twice = say(2 * turn.axisMm);
  const matrix = turn.axis === 'vertical' ? `-1 0 0 1 ${twice} 0` : `1 0 0 -1 0 ${twice}`;
  return `<g transform="matrix(${matrix})">${art}</g>`;
}

/** The picture as inline SVG, in mm of the sheet. */
export function drawPass(picture: PassPicture): string {
  const { job, lines, bytes } = picture;
  const { widthMm, heightMm } = job;
  // Strokes and marks keep their size on paper whatever the size of the sheet.
  const scale = Math.max(widthMm / 62, heightMm / 74);
  const margin = 3 * scale;
  let art: string;
  if (lines === null) {
    art =
      bytes.length > MOST_BYTES
        ? `<text x="${say(widthMm / 2)}" y="${say(heightMm / 2)}" font-size="${say(4 * scale)}" text-anchor="middle">no picture: ${say(bytes.length / 1e6)} MB</text>`
        : `<image width="${say(widthMm)}" height="${say(heightMm)}"${isShownDark(picture.role) ? ' style="filter:brightness(0);opacity:.45"' : ''} href="data:image/svg+xml;base64,${encodeBase64(bytes)}"/>`;
  } else {
    const points = [...lines, ...(picture.around ?? [])].reduce(
      (sum, { outline }) => sum + outline.points.length / 2,
      0,
    );
    art =
      points > MOST_POINTS
        ? `<text x="${say(widthMm / 2)}" y="${say(heightMm / 2)}" font-size="${say(4 * scale)}" text-anchor="middle">no picture: ${lines.length} lines</text>`
        : (picture.around === null ? drawLines(lines, picture, scale) : drawTies(lines, picture, scale)) +
          drawMarks(picture, scale);
  }
  const view = [-margin, -margin, widthMm + 2 * margin, heightMm + 2 * margin].map(say).join(' ');
  return `<svg viewBox="${view}" role="img" aria-label="Picture of the pass"><rect width="${say(widthMm)}" height="${say(heightMm)}" fill="#fff" stroke="#000" stroke-width="${say(scale * 0.3)}"/>${turnArt(art, picture.turn)}${drawOrigin(picture, scale)}</svg>`;
}
