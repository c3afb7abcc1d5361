// The picture of the proof: all passes over each other, each alone, and what the judges said, as one SVG.

import { escapeXml } from '../model/escape-xml.js';
import type { Finding } from '../model/finding.js';
import type { Layout } from '../model/layout.js';
import { type Assignment, isToolpath } from '../model/pass.js';
import { encodeBase64 } from '../model/platform.js';
import type { ExtentMm, Proof } from '../model/proof.js';
import { sayCount } from '../model/say-count.js';
import { joinPieces, type OutputFile } from '../model/sheet.js';
import type { Solid } from '../model/solid.js';
import { PINBAR_VERSION } from '../model/version.js';
import { describeLayout } from './describe-layout.js';
import { listPanels, summariseSolid } from './describe-solid.js';
import { drawSolid } from './draw-solid.js';

/** What the picture shows. */
export interface ProofFacts {
  readonly stem: string;
  /** Size of the sheets, mm. */
  readonly widthMm: number;
  readonly heightMm: number;
  readonly assignment: Assignment;
  readonly files: readonly OutputFile[];
  readonly proof: Proof;
  readonly findings: readonly Finding[];
  /** Copies on a sheet; null where there are none. */
  readonly layout: Layout | null;
  /** The blank; null where it is not known. */
  readonly solid: Solid | null;
}

const PAGE = 1200;
const PADDING = 40;
const GAP = 28;
const LINE = 22;
/** Together larger files are not drawn into the picture, bytes. */
const LARGEST_BYTES = 8 * 1024 * 1024;
const LONGEST_LINE = 130;

function n(value: number): string {
  return String(Math.round(value * 100) / 100 + 0);
}

interface Panel {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function text(x: number, y: number, content: string, look = ''): string {
  const short = content.length > LONGEST_LINE ? `${content.slice(0, LONGEST_LINE - 1)}…` : content;
  return `<text x="${n(x)}" y="${n(y)}"${look}>${escapeXml(short)}</text>`;
}

/** A frame with pictures of some passes in it, and the extent that all of them draw. */
function drawPanel(panel: Panel, passes: readonly number[], scale: number): string {
  const frame = `<rect x="${n(panel.x)}" y="${n(panel.y)}" width="${n(panel.width)}" height="${n(panel.height)}" fill="#fff" stroke="#555"/>`;
  const art = passes.map((index) => `<use href="#pass-${index + 1}"/>`).join('');
  const factor = Math.round(scale * 1e6) / 1e6;
  return `${frame}<g transform="translate(${n(panel.x)} ${n(panel.y)}) scale(${factor})">${art}</g>`;
}

function describeExtent(extent: ExtentMm | null): string {
  if (extent === null) return 'draws nothing';
  return `draws ${extent.width.toFixed(2)} x ${extent.height.toFixed(2)} mm from ${extent.x.toFixed(2)}, ${extent.y.toFixed(2)}`;
}

/** The shape with the greatest deviation, in brackets; '' where nothing deviates as far as the figure shows. */
export function sayWhere(deviationMm: number, at: string): string {
  return at === '' || deviationMm < 5e-7 ? '' : ` (${at})`;
}

/** What the judges said, a sentence each. */
export function describeJudges(proof: Proof): readonly string[] {
  return proof.judges.map((judge) => {
    const name =
      judge.judge === 'read-back'
        ? `First judge ${judge.of === 'sheets' ? 'over the copies' : '(reads the files back, byte for byte)'}`
        : `Second judge ${judge.of === 'sheets' ? 'over the copies' : '(a reader of its own)'}`;
    if (!judge.looked) return `${name}: did not look: ${judge.why}.`;
    const errors = judge.findings.filter((item) => item.severity === 'error').length;
    const where = sayWhere(judge.greatestDeviationMm, judge.greatestDeviationAt);
    const verdict = errors === 0 ? 'no difference' : sayCount(errors, 'difference');
    return `${name}: ${sayCount(judge.shapesJudged, 'drawn element')}, greatest deviation ${judge.greatestDeviationMm.toFixed(6)} mm${where}, ${verdict}.`;
  });
}

/** The passes as pictures, each an image of its own, so that style sheets and ids of one do not reach another. */
function definePasses(facts: ProofFacts): string {
  const total = facts.files.reduce((sum, file) => sum + file.byteLength, 0);
  const images = facts.files.map((file, index) => {
    const size = `width="${n(facts.widthMm)}" height="${n(facts.heightMm)}"`;
    if (total > LARGEST_BYTES) return `<g id="pass-${index + 1}"/>`;
    const data = encodeBase64(joinPieces(file.pieces));
    return `<image id="pass-${index + 1}" ${size} preserveAspectRatio="none" href="data:image/svg+xml;base64,${data}"/>`;
  });
  const note =
    total > LARGEST_BYTES
      ? text(PADDING, 104, 'The files are too large to be shown here; the figures below hold.')
      : '';
  return `<defs>${images.join('')}</defs>${note}`;
}

function listDifferences(facts: ProofFacts): readonly string[] {
  const shown = facts.findings.filter((item) => item.severity !== 'note');
  const lines = shown.slice(0, 40).map((item) => `${item.severity}: ${item.message}`);
  if (shown.length > 40) lines.push(`and ${shown.length - 40} more; see manifest.json`);
  return lines.length === 0 ? ['Nothing differs, and nothing was found.'] : lines;
}

/** Panels of the single passes below the overlay, three in a row; returns markup and the y below them. */
function drawSingles(facts: ProofFacts, top: number): { readonly markup: string; readonly bottom: number } {
  const columns = 3;
  const width = (PAGE - 2 * PADDING - (columns - 1) * GAP) / columns;
  const height = (width * facts.heightMm) / facts.widthMm;
  const step = height + GAP + 2.6 * LINE;
  let markup = '';
  for (const [index, pass] of facts.assignment.passes.entries()) {
    const x = PADDING + (index % columns) * (width + GAP);
    const y = top + Math.floor(index / columns) * step;
    const proof = facts.proof.passes[index];
    markup += text(x, y + 16, `${pass.order}  ${pass.name}`, ' font-weight="700"');
    markup += drawPanel({ x, y: y + LINE, width, height }, [index], width / facts.widthMm);
    const caption = `${sayCount(proof?.shapes ?? 0, 'shape')}, ${describeExtent(proof?.drawnExtentMm ?? null)}`;
    markup += text(x, y + LINE + height + 18, caption, ' font-size="12" fill="#444"');
  }
  const rows = Math.ceil(facts.assignment.passes.length / columns);
  return { markup, bottom: top + rows * step };
}

/** The blank with its panels beside the tree of them; nothing where it is not known. */
function drawBlank(facts: ProofFacts, top: number): { readonly markup: string; readonly bottom: number } {
  const { solid } = facts;
  if (solid === null) return { markup: '', bottom: top };
  const [x, y, width, height] = solid.extentMm;
  const scale = Math.min(540 / width, 540 / height);
  const offset = `translate(${n(PADDING - x * scale)} ${n(top + 1.5 * LINE - y * scale)}) scale(${Math.round(scale * 1e6) / 1e6})`;
  const left = PADDING + width * scale + GAP;
  const rows = listPanels(solid).map(({ depth, words }, i) =>
    text(left + Math.min(depth, 8) * 16, top + 2.2 * LINE + i * LINE, words, ' font-size="13"'),
  );
  const markup = [
    text(
      PADDING,
      top + 16,
      `The blank, seen from the side that is drawn: ${summariseSolid(solid)}`,
      ' font-weight="700"',
    ),
    `<g transform="${offset}">${drawSolid(solid, scale)}</g>`,
    ...rows,
  ].join('');
  return { markup, bottom: top + LINE + Math.max(height * scale, rows.length * LINE) + 2 * LINE };
}

/** What of a sheet is free of gripper and margins, dashed; nothing where all of it is. */
function drawFree(panel: Panel, { layout, widthMm, heightMm }: ProofFacts): string {
  if (layout === null) return '';
  const { x0, y0, x1, y1 } = layout.freeMm;
  if (x0 === 0 && y0 === 0 && x1 === widthMm && y1 === heightMm) return '';
  const scale = panel.width / widthMm;
  const place = `x="${n(panel.x + x0 * scale)}" y="${n(panel.y + y0 * scale)}" width="${n((x1 - x0) * scale)}" height="${n((y1 - y0) * scale)}"`;
  return `<rect ${place} fill="none" stroke="#888" stroke-dasharray="6 5"/>`;
}

/** What is said of the sheet of copies, a line each; nothing where there is none. */
function describeSheet(layout: Layout | null): readonly { readonly words: string; readonly heading: boolean }[] {
  if (layout === null) return [];
  const lines = describeLayout(layout).map((words) => ({ words, heading: false }));
  return [{ words: 'The sheet', heading: true }, ...lines, { words: '', heading: false }];
}

/** The picture as SVG text. Nothing in it is loaded from outside; any browser shows it. */
export function drawProof(facts: ProofFacts): string {
  const passes = facts.assignment.passes.map((_, index) => index);
  const ground = passes.filter((index) => !isToolpath(facts.assignment.passes[index]!.role));
  const tools = passes.filter((index) => isToolpath(facts.assignment.passes[index]!.role));
  const overlayWidth = Math.min(PAGE - 2 * PADDING, (720 * facts.widthMm) / facts.heightMm);
  const overlay: Panel = {
    x: PADDING,
    y: 120,
    width: overlayWidth,
    height: (overlayWidth * facts.heightMm) / facts.widthMm,
  };
  const verdict = facts.proof.inRegister ? 'in register' : 'NOT proved to be in register';
  const size = `${facts.widthMm.toFixed(2)} x ${facts.heightMm.toFixed(2)} mm`;
  const singles = drawSingles(facts, overlay.y + overlay.height + GAP);
  const extents = facts.proof.equalExtents ? 'All files draw the same extent.' : 'The files draw different extents.';
  const lines = [
    ...describeSheet(facts.layout),
    { words: 'What the judges saw', heading: true },
    ...[...describeJudges(facts.proof), extents].map((words) => ({ words, heading: false })),
    { words: '', heading: false },
    { words: 'What differs', heading: true },
    ...listDifferences(facts).map((words) => ({ words, heading: false })),
  ];
  const blank = drawBlank(facts, singles.bottom);
  const top = blank.bottom + LINE;
  const words = lines
    .map((line, i) => text(PADDING, top + i * LINE, line.words, line.heading ? ' font-weight="700"' : ''))
    .join('');
  const height = top + lines.length * LINE + PADDING;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${PAGE}" height="${n(height)}" viewBox="0 0 ${PAGE} ${n(height)}" font-family="system-ui, sans-serif" font-size="15">`,
    `<title>Proof of ${escapeXml(facts.stem)}</title><rect width="100%" height="100%" fill="#f4f3ef"/>`,
    text(PADDING, 56, `${facts.stem}: ${verdict}`, ' font-size="28" font-weight="700"'),
    text(PADDING, 84, `${size}, ${facts.files.length} passes, one over the other below; pinbar ${PINBAR_VERSION}`),
    definePasses(facts),
    drawPanel(overlay, [...ground, ...tools], overlay.width / facts.widthMm),
    drawFree(overlay, facts),
    singles.markup,
    blank.markup,
    words,
    '</svg>\n',
  ].join('\n');
}
