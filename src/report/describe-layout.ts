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
  'two blocks': 'in two blocks',
  interlocked: 'head to tail, interlocked by their outlines',
};

/** Sentences about a layout: copies, yield, and what plain rows of rectangles would reach. */
export function describeLayout(layout: Layout): readonly string[] {
  const { columns, rows, widthMm, heightMm, method, rectangle, blankAreaMm2, sheetAreaMm2 } = layout;
  const grid = columns === null || rows === null ? '' : `, ${columns} x ${rows}`;
  const area = `${(blankAreaMm2 / 100).toFixed(1)} cm² each on ${(sheetAreaMm2 / 1e6).toFixed(4)} m²`;
  return [
    `${sayCopies(layout.copies)} on ${widthMm} x ${heightMm} mm, ${METHODS[method]}${grid}`,
    `Yield ${sayShare(layout.yieldShare)}: ${area}`,
    `Rectangles in plain rows would reach ${sayFill(rectangle)}`,
  ];
}
