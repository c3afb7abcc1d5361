// The picture of the checks: the art with a number wherever something was found, and the list that the numbers refer to.
import type { Artboard } from '../model/artwork.js';
import { escapeXml } from '../model/escape-xml.js';
import type { Finding } from '../model/finding.js';
import type { Fitness } from '../model/job.js';
import { encodeBase64 } from '../model/platform.js';
import { PINBAR_VERSION } from '../model/version.js';
import { describeFinding } from './describe-finding.js';
import { BADGE, COLOURS, drawBadge, drawNumbers, type Frame } from './draw-badges.js';
import { groupFindings, type NumberedFinding } from './group-findings.js';
import { countFindings, sayFitness } from './print-findings.js';

/** What the picture shows. */
export interface ChecksFacts {
  readonly stem: string;
  readonly artboard: Artboard;
  /** The drawing, UTF-8. */
  readonly art: Uint8Array;
  readonly findings: readonly Finding[];
  readonly outcome: Fitness;
}

const PAGE = 1200;
const PADDING = 40;
const TOP = 116;
const HIGHEST = 900;
/** An artboard without a size is drawn this large, mm. */
const LEAST_MM = 0.01;
const LINE = 20;
const LONGEST_LINE = 128;
/** A larger drawing is not shown, bytes. */
const LARGEST_BYTES = 8 * 1024 * 1024;
/** Findings of one severity that are told in the picture. */
const MOST_TOLD = 60;

function n(value: number): string {
  return String(Math.round(value * 100) / 100 + 0);
}

function layFrame(artboard: Artboard): Frame {
  const widthMm = Math.max(artboard.width * artboard.mmPerPx, LEAST_MM);
  const heightMm = Math.max(artboard.height * artboard.mmPerPx, LEAST_MM);
  const scale = Math.min((PAGE - 2 * PADDING) / widthMm, HIGHEST / heightMm);
  const width = widthMm * scale;
  return { x: (PAGE - width) / 2, y: TOP, width, height: heightMm * scale, scale };
}

/** Ticks along the top and the left, so that places in mm are found. */
function drawRulers(frame: Frame): string {
  const step = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000].find((mm) => mm * frame.scale >= 48) ?? 0;
  if (step === 0) return '';
  const across = Array.from({ length: Math.floor(frame.width / (step * frame.scale)) + 1 }, (_, i) => i * step);
  const down = Array.from({ length: Math.floor(frame.height / (step * frame.scale)) + 1 }, (_, i) => i * step);
  const ticks = [
    ...across.map((mm) => `M${n(frame.x + mm * frame.scale)} ${n(frame.y)}v-6`),
    ...down.map((mm) => `M${n(frame.x)} ${n(frame.y + mm * frame.scale)}h-6`),
  ];
  const labels = [
    ...across.map(
      (mm) => `<text x="${n(frame.x + mm * frame.scale)}" y="${n(frame.y - 9)}" text-anchor="middle">${mm}</text>`,
    ),
    ...down
      .slice(1)
      .map(
        (mm) => `<text x="${n(frame.x - 8)}" y="${n(frame.y + mm * frame.scale + 3.5)}" text-anchor="end">${mm}</text>`,
      ),
  ];
  return `<path d="${ticks.join('')}" stroke="#555"/><g font-size="10" fill="#555">${labels.join('')}</g>`;
}

/** Words in lines of at most so many letters. */
function wrap(text: string): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = lines.at(-1);
    if (last === undefined || last.length + word.length + 1 > LONGEST_LINE) lines.push(word.slice(0, LONGEST_LINE));
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines;
}

interface Column {
  readonly markup: string;
  readonly bottom: number;
}

function tellItem({ number, finding }: NumberedFinding, top: number): Column {
  const x = PADDING + BADGE + 14;
  const place = describeFinding(finding);
  const lines = [
    ...wrap(finding.message).map((words) => ({ words, look: '' })),
    ...(place === '' ? [] : wrap(place).map((words) => ({ words, look: ' fill="#555"' }))),
    ...wrap(finding.remedy === '' ? '' : `→ ${finding.remedy}`)
      .filter((words) => words !== '')
      .map((words) => ({ words, look: ' fill="#1d4d2b"' })),
  ];
  const rows = lines.map(
    ({ words, look }, i) => `<text x="${x}" y="${n(top + i * LINE)}"${look}>${escapeXml(words)}</text>`,
  );
  const badge = drawBadge(PADDING + BADGE / 2, top - 4, number, finding.severity);
  return { markup: badge + rows.join(''), bottom: top + lines.length * LINE + 10 };
}

/** The list under the picture: the same numbers, order and headings as the text. */
function tellFindings(findings: readonly Finding[], top: number): Column {
  let markup = '';
  let y = top;
  let told = 0;
  for (const group of groupFindings(findings)) {
    markup += `<text x="${PADDING}" y="${n(y + 8)}" font-size="17" font-weight="700" fill="${COLOURS[group.severity]}">${group.heading}: ${group.severity}s</text>`;
    y += 38;
    for (const item of group.items.slice(0, Math.max(0, MOST_TOLD - told))) {
      const column = tellItem(item, y);
      markup += column.markup;
      y = column.bottom;
      told += 1;
    }
    y += 12;
  }
  const more = findings.length - told;
  if (more > 0) markup += `<text x="${PADDING}" y="${n(y)}">and ${more} more, in the text</text>`;
  return { markup, bottom: y + (more > 0 ? LINE : 0) };
}

/** The art, faded so that the numbers stand out. An image of its own: nothing of it runs, and nothing is loaded from outside. */
function drawArt({ art }: ChecksFacts, frame: Frame): string {
  const box = `x="${n(frame.x)}" y="${n(frame.y)}" width="${n(frame.width)}" height="${n(frame.height)}"`;
  const ground = `<rect ${box} fill="#fff" stroke="#555"/>`;
  if (art.length > LARGEST_BYTES) {
    return `${ground}<text x="${n(frame.x + 12)}" y="${n(frame.y + 24)}" fill="#555">The drawing is too large to be shown here.</text>`;
  }
  return `${ground}<image ${box} opacity="0.6" preserveAspectRatio="none" href="data:image/svg+xml;base64,${encodeBase64(art)}"/>`;
}

/** The picture as SVG text. Nothing in it is loaded from outside; any browser shows it. */
export function drawChecks(facts: ChecksFacts): string {
  const { artboard, findings } = facts;
  const frame = layFrame(artboard);
  const items = groupFindings(findings).flatMap((group) => group.items);
  const list = tellFindings(findings, frame.y + frame.height + 44);
  const height = list.bottom + PADDING;
  const size = `${n(artboard.width * artboard.mmPerPx)} x ${n(artboard.height * artboard.mmPerPx)} mm`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${PAGE}" height="${n(height)}" viewBox="0 0 ${PAGE} ${n(height)}" font-family="system-ui, sans-serif" font-size="15">`,
    `<title>Checks of ${escapeXml(facts.stem)}</title><rect width="100%" height="100%" fill="#f4f3ef"/>`,
    `<text x="${PADDING}" y="56" font-size="28" font-weight="700">${escapeXml(facts.stem)}: ${sayFitness(facts.outcome)}</text>`,
    `<text x="${PADDING}" y="86">${size}; ${countFindings(findings)}; pinbar ${PINBAR_VERSION}</text>`,
    drawArt(facts, frame),
    drawRulers(frame),
    drawNumbers(items.slice(0, MOST_TOLD * 2), frame),
    list.markup,
    '</svg>\n',
  ].join('\n');
}
