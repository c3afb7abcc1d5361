// The run as an XJDF 2.1 ticket: what a workflow reads where people read the page.
import { printNumber } from '../geometry/print-number.js';
import { MM_PER_INCH, PT_PER_INCH } from '../geometry/units.js';
import { escapeXml } from '../model/escape-xml.js';
import type { Role } from '../model/pass.js';
import type { RunPass, RunSheet } from '../model/run-sheet.js';
import type { RunLine } from './measure-lines.js';

/** Lines of one pass, px on the sheet; null for passes that cover areas. */
export type XjdfLines = readonly RunLine[] | null;

/**
 * Processes by role.
 *
 * @source CIP4 JDFProcess.xsd for the names; which of them holds foil stamping is our reading, since none is named for it.
 */
const PROCESSES: Readonly<Record<Role, string>> = {
  creasing: 'Creasing',
  'reverse-creasing': 'Creasing',
  embossing: 'Embossing',
  debossing: 'Embossing',
  white: 'DigitalPrinting',
  print: 'DigitalPrinting',
  varnish: 'Varnishing',
  'foil-stamping': 'Embossing',
  'cold-foil-stamping': 'Embossing',
  perforating: 'Perforating',
  'partial-cutting': 'ShapeCutting',
  'reverse-partial-cutting': 'ShapeCutting',
  drilling: 'HoleMaking',
  punching: 'HoleMaking',
  cutting: 'ShapeCutting',
  gluing: 'Gluing',
  // Never a pass.
  ignore: '',
};

/** Decimals of a point: a ten-thousandth of a millimetre is 0.00028 pt. */
const DECIMALS = 5;
/** Most points that are written out; beyond, the file alone tells the lines. */
const MOST_POINTS = 50_000;

function say(points: number): string {
  return printNumber(points, DECIMALS);
}

function toPt(mm: number): number {
  return (mm * PT_PER_INCH) / MM_PER_INCH;
}

/** Where px on the sheet lie in points from its lower left, y up. */
interface Frame {
  readonly ptPerPx: number;
  readonly heightPt: number;
}

function placeOf(points: Float64Array, at: number, { ptPerPx, heightPt }: Frame): readonly [number, number] {
  return [points[2 * at]! * ptPerPx, heightPt - points[2 * at + 1]! * ptPerPx];
}

/** The straight pieces of lines that have no curve, as start and vector; null where one has. */
function listPieces(lines: readonly RunLine[], frame: Frame): readonly (readonly number[])[] | null {
  const pieces: number[][] = [];
  for (const { outline } of lines) {
    if (outline.curved.includes(1)) return null;
    const count = outline.points.length / 2;
    for (let at = 0; at < (outline.closed ? count : count - 1); at += 1) {
      const [x0, y0] = placeOf(outline.points, at, frame);
      const [x1, y1] = placeOf(outline.points, (at + 1) % count, frame);
      pieces.push([x0, y0, x1 - x0, y1 - y0]);
    }
  }
  return pieces;
}

/** Crease and perforation lines where all are straight; else the file alone tells them, since a part of them would mislead. */
function printStraight(name: 'Crease' | 'Perforate', lines: readonly RunLine[], side: string, frame: Frame): string {
  const pieces = listPieces(lines, frame);
  if (pieces === null) return '';
  return pieces
    .map(
      ([x, y, dx, dy]) =>
        `<${name} StartPosition="${say(x!)} ${say(y!)}" WorkingPath="${say(dx!)} ${say(dy!)}" WorkingDirection="${side}"/>`,
    )
    .join('\n');
}

/** Cut lines as paths in the operators of PDF, curves as chords within 0.005 mm. */
function printShapes(lines: readonly RunLine[], frame: Frame): string {
  return lines
    .map(({ outline }) => {
      const words: string[] = [];
      for (let at = 0; at < outline.points.length / 2; at += 1) {
        const [x, y] = placeOf(outline.points, at, frame);
        words.push(`${say(x)} ${say(y)} ${at === 0 ? 'm' : 'l'}`);
      }
      return `<Shape ShapeType="Path" CutPath="${words.join(' ')}${outline.closed ? ' h' : ''}"/>`;
    })
    .join('\n');
}

function countPoints(lines: readonly RunLine[]): number {
  return lines.reduce((sum, { outline }) => sum + outline.points.length / 2, 0);
}

interface Resource {
  readonly name: string;
  readonly usage: 'Input' | 'Output';
  readonly index: number;
  /** What stands before the element, in order: amounts, comments, ids. */
  readonly head: string;
  readonly element: string;
}

function printResource({ name, usage, index, head, element }: Resource): string {
  return `<ResourceSet Name="${name}" Usage="${usage}" CombinedProcessIndex="${index}">\n<Resource>\n${head === '' ? '' : `${head}\n`}${element}\n</Resource>\n</ResourceSet>`;
}

/** The parameters of a tool pass; none where its lines cannot be told so. */
function printParams(pass: RunPass, lines: XjdfLines, index: number, frame: Frame): string {
  const kind = PROCESSES[pass.role];
  if (lines === null || countPoints(lines) > MOST_POINTS) return '';
  const side = pass.register.side === 'front' ? 'Top' : 'Bottom';
  const inner =
    kind === 'Creasing'
      ? printStraight('Crease', lines, side, frame)
      : kind === 'Perforating'
        ? printStraight('Perforate', lines, side, frame)
        : kind === 'ShapeCutting'
          ? printShapes(lines, frame)
          : '';
  if (inner === '') return '';
  const name = `${kind}Params`;
  return printResource({ name, usage: 'Input', index, head: '', element: `<${name}>\n${inner}\n</${name}>` });
}

/** Tool and settings in words: XJDF has no place for a trailing knife's pressure. */
function describeSettings({ tool, settings, register, tiesOf }: RunPass): string {
  const { speedCmS, pressureGf, pressureN, strokes, offsetMm, cutMm, tieMm, tiePressureGf } = settings;
  const words = [
    ...(tiesOf === null ? [] : [`ties of ${tiesOf}, run while the sheet still lies`]),
    tool === null ? 'no tool on this machine' : `tool ${tool.name}`,
    ...(speedCmS === null ? [] : [`speed ${say(speedCmS.value)} cm/s`]),
    ...(pressureGf === null ? [] : [`pressure ${say(pressureGf.value)} gf (${printNumber(pressureN!, 9)} N)`]),
    ...(strokes === null ? [] : [`strokes ${say(strokes.value)}`]),
    ...(offsetMm === null ? [] : [`offset ${say(offsetMm.value)} mm`]),
    ...(cutMm === null || tieMm === null ? [] : [`stretches ${say(cutMm.value)} mm, ties ${say(tieMm.value)} mm`]),
    ...(tiePressureGf === null ? [] : [`pressure on ties ${say(tiePressureGf.value)} gf`]),
    ...(register.to === null ? [] : [`registers to ${register.to}`]),
  ];
  return words.join('; ');
}

function printFile(pass: RunPass, index: number): string {
  const file = pass.turnedFile ?? pass.file;
  const head = `<Comment>${escapeXml(`${describeSettings(pass)}; SHA-256 ${file.sha256}`)}</Comment>`;
  const url = escapeXml(encodeURIComponent(file.name));
  const element = `<RunList><FileSpec URL="${url}" MimeType="image/svg+xml"/></RunList>`;
  return printResource({ name: 'RunList', usage: 'Input', index, head, element });
}

/** The sheets; thickness in micrometres, all else in points. `Dimension`, `Weight` and `PartAmount` are from memory. */
function printMedia({ material, need }: RunSheet): string {
  const { caliperMm, grammageGsm } = material;
  const attributes = [
    'MediaType="Paper"',
    `Dimension="${say(toPt(need.sheetWidthMm))} ${say(toPt(need.sheetHeightMm))}"`,
    ...(caliperMm === null ? [] : [`Thickness="${printNumber(caliperMm.value * 1000, 3)}"`]),
    ...(grammageGsm === null ? [] : [`Weight="${printNumber(grammageGsm.value, 3)}"`]),
  ];
  const amount = need.sheets + (need.spareSheets ?? 0);
  const head = `<AmountPool><PartAmount Amount="${amount}"/></AmountPool>\n<Comment>${escapeXml(material.name)}</Comment>`;
  return printResource({ name: 'Media', usage: 'Input', index: 0, head, element: `<Media ${attributes.join(' ')}/>` });
}

/** A name as an NMTOKEN. */
function toToken(name: string): string {
  const token = name.replace(/[^A-Za-z0-9._]+/g, '-');
  return token === '' || /^-+$/.test(token) ? 'job' : token;
}

/**
 * The run as XJDF 2.1: root with the processes in order, files, parameters, media and the finished component.
 *
 * @param lines - Of each pass.
 * @param mmPerPx - Of the pass files.
 * @source XJDF 2.1, chapter 3.3 for sets of resources, and CIP4's schema for elements and attributes; from memory are the origin (lower
 * left, y up), `Product/@Amount`, `PartAmount/@Amount`, `Media/@Dimension` and `Media/@Weight`
 */
export function printXjdf(sheet: RunSheet, lines: readonly XjdfLines[], mmPerPx: number): string {
  const { passes, job, order, need } = sheet;
  const frame: Frame = { ptPerPx: toPt(mmPerPx), heightPt: toPt(job.heightMm) };
  const types = passes.map(({ role }) => PROCESSES[role]).join(' ');
  const sets = [
    printMedia(sheet),
    ...passes.flatMap((pass, index) => [printFile(pass, index), printParams(pass, lines[index] ?? null, index, frame)]),
    printResource({ name: 'Component', usage: 'Output', index: passes.length - 1, head: '', element: '<Component/>' }),
  ].filter((set) => set !== '');
  const reason = order.reason === null ? '' : `<Comment>${escapeXml(`${order.name}: ${order.reason}`)}</Comment>\n`;
  return `<?xml version="1.0" encoding="UTF-8"?>
<!-- pinbar run sheet -->
<XJDF xmlns="http://www.CIP4.org/JDFSchema_2_0" Version="2.1" JobID="${toToken(job.name)}" Types="${types}">
${reason}<ProductList>\n<Product Amount="${need.copies}"/>\n</ProductList>
${sets.join('\n')}
</XJDF>
`;
}
