// Numbers over the art: each beside its place, with a pointer to it.
import type { Finding, Severity } from '../model/finding.js';
import type { NumberedFinding } from './group-findings.js';
import { placeBadges } from './place-badges.js';

/** Diameter of a number's badge on the page. */
export const BADGE = 24;
/** Numbers drawn for one finding. */
const MOST_PLACES = 12;
/** How far a badge stands from what it points at. */
const BESIDE = 20;

/** Colours of the severities, dark enough to read on white. */
export const COLOURS: Readonly<Record<Severity, string>> = { error: '#b3261e', warning: '#b25e00', note: '#41576b' };

/** Where the artboard lies on the page. */
export interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** From mm on the artboard to the page. */
  readonly scale: number;
}

function n(value: number): string {
  return String(Math.round(value * 100) / 100 + 0);
}

/** The mark of a number: a disc for an error, a square for a warning, a ring for a note, so that it reads without colour. */
export function drawBadge(x: number, y: number, number: number, severity: Severity): string {
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

/** Places of a finding in mm: its own first, then those it lists. */
function listPlaces({ place, data }: Finding): readonly (readonly [number, number])[] {
  const listed = Array.isArray(data.places)
    ? (data.places as readonly { readonly xMm?: number; readonly yMm?: number }[])
    : [];
  return [place, ...listed]
    .filter((at) => at.xMm !== undefined && at.yMm !== undefined)
    .map((at) => [at.xMm!, at.yMm!] as const)
    .filter((at, i, all) => all.findIndex((other) => other[0] === at[0] && other[1] === at[1]) === i)
    .slice(0, MOST_PLACES);
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}

/** Numbers beside their places, none over another; places off the artboard are shown at its rim. */
export function drawNumbers(items: readonly NumberedFinding[], frame: Frame): string {
  const toPage = ([x, y]: readonly [number, number]): readonly [number, number] => [
    clamp(frame.x + x * frame.scale, frame.x, frame.x + frame.width),
    clamp(frame.y + y * frame.scale, frame.y, frame.y + frame.height),
  ];
  const severities = new Map(items.map(({ number, finding }) => [number, finding.severity]));
  const badges = items.flatMap(({ number, finding }) => listPlaces(finding).map((at) => ({ number, at: toPage(at) })));
  const placed = placeBadges(badges, BADGE + 2, BESIDE);
  const pointers = placed.map(({ number, at, centre }) => {
    const colour = COLOURS[severities.get(number)!];
    const line = `<path d="M${n(centre[0])} ${n(centre[1])}L${n(at[0])} ${n(at[1])}" stroke="${colour}" stroke-width="1.5"/>`;
    return `${line}<circle cx="${n(at[0])}" cy="${n(at[1])}" r="3.5" fill="#fff" stroke="${colour}" stroke-width="1.5"/>`;
  });
  const marks = placed.map(({ number, centre }) => drawBadge(centre[0], centre[1], number, severities.get(number)!));
  return pointers.join('') + marks.join('');
}
