// What is said of copies on a sheet.
import type { Fill, Layout } from '../model/layout.js';

function sayShare(share: number): string {
  return `${(share * 100).toFixed(1)} %`;
}

function sayCopies(copies: number): string {
  return copies === 1 ? '1 copy' : `${copies} copies`;
}

function sayFill({ copies, yieldShare }: Fill): string {
  return `${sayCopies(copies)}, ${sayShare(yieldShare)} of the sheet`;
}

const METHODS: Readonly<Record<Layout['method'], string>> = {
  rows: 'in rows',
  'head-to-tail rows': 'in rows, every other row upside down',
  blocks: 'in blocks of rows',
  interlocked: 'interlocked by their outlines',
};

/** How the copies are turned, where not all lie as drawn. */
function sayTurns({ matricesMm }: Layout): string {
  const names = ['as drawn', 'turned 90', 'turned 180', 'turned 270'];
  const counts = [0, 0, 0, 0];
  for (const [a, b] of matricesMm) counts[Math.abs(a) > Math.abs(b) ? (a > 0 ? 0 : 2) : b > 0 ? 1 : 3]! += 1;
  if (counts[0] === matricesMm.length) return '';
  const said = names.flatMap((name, i) => (counts[i] === 0 ? [] : [`${counts[i]} ${name}`]));
  return `; ${said.join(', ')}`;
}

function hasStrips({ freeMm: { x0, y0, x1, y1 }, widthMm, heightMm }: Layout): boolean {
  return x0 > 0 || y0 > 0 || x1 < widthMm || y1 < heightMm;
}

/** Sentences about a layout: copies, yield, and what plain rows of rectangles would reach. */
export function describeLayout(layout: Layout): readonly string[] {
  const { columns, rows, widthMm, heightMm, method, rectangle, blankAreaMm2, sheetAreaMm2 } = layout;
  const grid = columns === null || rows === null ? '' : `, ${columns} x ${rows}`;
  const area = `${(blankAreaMm2 / 100).toFixed(1)} cm² each on ${(sheetAreaMm2 / 1e6).toFixed(4)} m²`;
  return [
    `${sayCopies(layout.copies)} on ${widthMm} x ${heightMm} mm, ${METHODS[method]}${grid}${sayTurns(layout)}`,
    ...(layout.copyIs === 'blank'
      ? []
      : ['No cut lines enclose a blank, so the box of all that is drawn counts as one']),
    ...(hasStrips(layout) ? ['Gripper and margins stay free (dashed in the picture of the proof)'] : []),
    `Yield ${sayShare(layout.yieldShare)}: ${area}`,
    `Rectangles in plain rows would reach ${sayFill(rectangle)}`,
  ];
}
