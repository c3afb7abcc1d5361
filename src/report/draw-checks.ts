// The picture of the checks: the art with a number wherever something was found, and the list that the numbers refer to.
import type { Artboard } from '../model/artwork.js';
import type { Finding, Severity } from '../model/finding.js';
import type { Fitness } from '../model/job.js';
import { encodeBase64 } from '../model/platform.js';
import { PINBAR_VERSION } from '../model/version.js';
import { escapeXml } from './draw-proof.js';
import { groupFindings, type NumberedFinding } from './group-findings.js';
import { placeBadges } from './place-badges.js';
import { countFindings, describePlace, sayFitness } from './print-findings.js';

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
const LINE = 20;
const BADGE = 24;
const LONGEST_LINE = 128;
/** A larger drawing is not shown, bytes. */
const LARGEST_BYTES = 8 * 1024 * 1024;
/** Numbers drawn for one finding. */
const MOST_PLACES = 12;
/** Findings of one severity that are told in the picture. */
const MOST_TOLD = 60;

const COLOURS: Readonly<Record<Severity, string>> = { error: '#b3261e', warning: '#b25e00', note: '#41576b' };

function n(value: number): string {
  return String(Math.round(value * 100) / 100 + 0);
}

/** The mark of a number: a disc for an error, a square for a warning, a ring for a note, so that it reads without colour. */
function drawBadge(x: number, y: number, number: number, severity: Severity): string {
  const colour = COLOURS[severity];
  const r = BADGE / 2;
  const face =
    severity === 'note'
      ? `fill="#fff" stroke="${colour}" stroke-width="2"`
      : `fill="${colour}" stroke="#fff" stroke-width="1.5"`;
  const shape =
    severity === 'warning'
      ? `<rect x="${n(x - r)}" y="${n(y - r)}" width="${BADGE}" height="${BADGE}" rx="4" ${face}/>`
      : `<circle cx="${n(x)}" cy="${n(y)}" r="${n(r)}" ${face}/>`;
  const ink = severity === 'note' ? colour : '#fff';
  return `${shape}<text x="${n(x)}" y="${n(y + 4.5)}" text-anchor="middle" font-size="13" font-weight="700" fill="${ink}">${number}</text>`;
}

interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** From mm on the artboard to the page. */
  readonly scale: number;
}

function layFrame(artboard: Artboard): Frame {
  const widthMm = artboard.width * artboard.mmPerPx;
  const heightMm = artboard.height * artboard.mmPerPx;
  const scale = Math.min((PAGE - 2 * PADDING) / widthMm, HIGHEST / heightMm);
  const width = widthMm * scale;
  return { x: (PAGE - width) / 2, y: TOP, width, height: heightMm * scale, scale };
}

/** Places of a finding in mm: those it lists, else its own. */
function listPlaces({ place, data }: Finding): readonly (readonly [number, number])[] {
  const listed = Array.isArray(data.places)
    ? (data.places as readonly { readonly xMm?: number; readonly yMm?: number }[])
    : [];
  const own = { xMm: place.xMm, yMm: place.yMm };
  return [own, ...listed]
    .filter((at) => at.xMm !== undefined && at.yMm !== undefined)
    .map((at) => [at.xMm!, at.yMm!] as const)
    .filter((at, i, all) => all.findIndex((other) => other[0] === at[0] && other[1] === at[1]) === i)
    .slice(0, MOST_PLACES);
}

/** Numbers at their places, kept on the page; those that were pushed aside point back. */
function drawNumbers(items: readonly NumberedFinding[], frame: Frame): string {
  const clamp = (value: number, low: number, high: number): number => Math.min(Math.max(value, low), high);
  const toPage = ([x, y]: readonly [number, number]): readonly [number, number] => [
    clamp(frame.x + x * frame.scale, frame.x, frame.x + frame.width),
    clamp(frame.y + y * frame.scale, frame.y, frame.y + frame.height),
  ];
  const severities = new Map(items.map(({ number, finding }) => [number, finding.severity]));
  const badges = items.flatMap(({ number, finding }) => listPlaces(finding).map((at) => ({ number, at: toPage(at) })));
  const placed = placeBadges(badges, BADGE + 2);
  const pointers = placed
    .filter(({ at, centre }) => at !== centre)
    .map(({ number, at, centre }) => {
      const colour = COLOURS[severities.get(number)!];
      return `<path d="M${n(centre[0])} ${n(centre[1])}L${n(at[0])} ${n(at[1])}" stroke="${colour}" stroke-width="1.5"/><circle cx="${n(at[0])}" cy="${n(at[1])}" r="3" fill="${colour}"/>`;
    });
  return (
    pointers.join('') +
    placed.map(({ number, centre }) => drawBadge(centre[0], centre[1], number, severities.get(number)!)).join('')
  );
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
  const place = describePlace(finding.place);
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
    drawNumbers(items.slice(0, MOST_TOLD * 2), frame),
    list.markup,
    '</svg>\n',
  ].join('\n');
}
