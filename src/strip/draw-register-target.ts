// A sheet that shows to a tenth of a mm how far each tool pass lies from the print: two scales side by side, as on a vernier.
import { printNumber } from '../geometry/print-number.js';
import { measureLetters } from '../geometry/stroke-letters.js';
import { isToolpath, type Role } from '../model/pass.js';
import { PinbarError } from '../model/trouble.js';
import { drawLayer, drawSheet, letters, line } from './draw-lines.js';
import type { OwnDrawing } from './strip-request.js';

/** The passes of a machine, and its sheet. */
export interface TargetRequest {
  /** In the order of the runs; at least one prints and one moves a tool. */
  readonly passes: readonly { readonly name: string; readonly role: Role }[];
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Room at every edge of the sheet for marks, mm. */
const EDGE_MM = 20;
/** Printed lines stand so far apart, mm: creases are broad, and must not run into each other. */
const PRINTED_STEP_MM = 3;
/** What one line further means, mm. */
const READS_MM = 0.1;
/** Lines on either side of the middle one. */
const LINES = 8;
const HALF_MM = LINES * PRINTED_STEP_MM;
/** From one scale to the next, mm. */
const ROW_MM = 16;
const STROKE_MM = 4;

/** A scale: where its middle lies, and whether it runs down instead of to the right. */
interface Scale {
  readonly x: number;
  readonly y: number;
  readonly down: boolean;
  readonly pass: number;
}

function tick({ x, y, down }: Scale, along: number, from: number): string {
  return down
    ? line(x + from, y + along, x + from + STROKE_MM, y + along)
    : line(x + along, y + from, x + along, y + from + STROKE_MM);
}

const COUNTS = Array.from({ length: 2 * LINES + 1 }, (_, i) => i - LINES);

/** Letters of a name, and its lines from one to the next, mm. */
const NAME_MM = 2;
const NAME_LINE_MM = 2.8;
/** Wider than this a word would run into the name of the next scale, mm. */
const WORD_MM = ROW_MM - 2;

/** A name word under word, its lowest line at `y`: side by side on narrow scales, names must not run into each other. */
function letterName(name: string, x: number, y: number): string {
  const words = name.split('-');
  const lines = words.map((word, i) => (i < words.length - 1 ? `${word}-` : word));
  return lines
    .map((word, i) => {
      const height = Math.min(NAME_MM, (NAME_MM * WORD_MM) / measureLetters(word, NAME_MM));
      return letters(word, x, y - (lines.length - 1 - i) * NAME_LINE_MM + NAME_MM - height, height);
    })
    .join('');
}

/** The pass, and what either end means. */
function nameScale({ x, y, down }: Scale, name: string): readonly string[] {
  if (down) {
    const left = x - STROKE_MM - 4.5;
    const ends = [letters('up', left, y - HALF_MM - 3.4, 1.5), letters('down', left, y + HALF_MM + 1.6, 1.5)];
    return [letterName(name, left, y - HALF_MM - 7), ...ends];
  }
  const top = y - STROKE_MM - 5;
  const ends = [letters('left', x - HALF_MM - 1, top, 1.5), letters('right', x + HALF_MM - 5.4, top, 1.5)];
  return [letterName(name, x + HALF_MM + 4, y - STROKE_MM), ...ends];
}

/** The printed half of a scale, each second line with what it reads. */
function printScale(scale: Scale, name: string): string {
  const ticks = COUNTS.map((i) => tick(scale, i * PRINTED_STEP_MM, -STROKE_MM));
  const figures = COUNTS.filter((i) => i % 2 === 0).map((i) => {
    const words = printNumber(Math.abs(i) * READS_MM, 1);
    const along = i * PRINTED_STEP_MM;
    return scale.down
      ? letters(words, scale.x - STROKE_MM - 4.5, scale.y + along - 0.75, 1.5)
      : letters(words, scale.x + along - 0.6 * words.length, scale.y - STROKE_MM - 2.5, 1.5);
  });
  return [...ticks, ...figures, ...nameScale(scale, name)].join('');
}

/** The half that the tool draws: its lines stand a tenth closer, so that one step out moves the meeting lines one further. */
function drawScale(scale: Scale): string {
  return COUNTS.map((i) => tick(scale, i * (PRINTED_STEP_MM - READS_MM), 0.5)).join('');
}

/** Scales for each tool pass at the upper left and the lower right, so that a turn shows as well as a shift. */
function placeScales(tools: readonly number[], { widthMm, heightMm }: TargetRequest): readonly Scale[] {
  const [right, bottom] = [widthMm - EDGE_MM, heightMm - EDGE_MM];
  const deep = tools.length * ROW_MM;
  const across = HALF_MM + 2;
  return tools.flatMap((pass, i) => {
    const row = i * ROW_MM;
    return [
      { pass, down: false, x: EDGE_MM + across, y: EDGE_MM + 22 + row },
      { pass, down: true, x: EDGE_MM + 12 + row, y: EDGE_MM + 22 + deep + 8 + across },
      { pass, down: false, x: right - across - 26, y: bottom - deep + 9 + row },
      { pass, down: true, x: right - deep + 10 + row, y: bottom - deep - 12 - across },
    ];
  });
}

function refuse(message: string, remedy: string): PinbarError {
  return new PinbarError('use/wrong', { message, remedy });
}

function checkTarget(request: TargetRequest, tools: readonly number[]): void {
  if (tools.length === 0 || tools.length === request.passes.length) {
    throw refuse(
      'A register target shows how tool passes lie to the print; it needs a pass of either kind.',
      'Name at least two passes, such as crease, print, cut.',
    );
  }
  const widthMm = 2 * EDGE_MM + 2 * HALF_MM + 40 + tools.length * ROW_MM;
  const heightMm = 2 * EDGE_MM + 2 * (2 * HALF_MM + tools.length * ROW_MM) - 2 * HALF_MM + 60;
  if (request.widthMm < widthMm || request.heightMm < heightMm) {
    throw refuse(
      `The scales of ${tools.length} tool passes need a sheet of ${widthMm} x ${heightMm} mm; ${request.widthMm} x ${request.heightMm} mm was asked for.`,
      'Take a larger sheet, or fewer passes at a time.',
    );
  }
}

/** The pass that carries the figures: ink that is seen, where there is any; else the first that covers areas. */
function findPrinted(passes: TargetRequest['passes']): number {
  const print = passes.findIndex(({ role }) => role === 'print');
  return print >= 0 ? print : passes.findIndex(({ role }) => !isToolpath(role));
}

/**
 * A register target as a layered drawing, with the ticket that parts it.
 *
 * The first print carries the figures; other passes that cover areas draw nothing, and get no file. Where a tool's line meets the printed line that says 0.3, the tool lies 0.3 mm
 * from the print, to the side that is written at that end.
 *
 * @throws PinbarError `use/wrong` where nothing prints, no tool runs, or the sheet is too small.
 */
export function drawRegisterTarget(request: TargetRequest): OwnDrawing {
  const { passes, widthMm, heightMm } = request;
  const tools = passes.flatMap(({ role }, index) => (isToolpath(role) ? [index] : []));
  checkTarget(request, tools);
  const printed = findPrinted(passes);
  const scales = placeScales(tools, request);
  const heading = [
    letters('Register target', EDGE_MM + 2, EDGE_MM, 4),
    letters(
      'Where a line of the tool meets a printed line it reads how many mm the pass is out',
      EDGE_MM + 2,
      EDGE_MM + 6.5,
      1.8,
    ),
  ];
  const print = [...heading, ...scales.map((scale) => printScale(scale, passes[scale.pass]!.name))].join('');
  const layers = passes.flatMap((_, index) => {
    if (index === printed) return [drawLayer(`Pass-${index + 1}`, print)];
    const own = scales.filter(({ pass }) => pass === index);
    return own.length === 0 ? [] : [drawLayer(`Pass-${index + 1}`, own.map(drawScale).join(''))];
  });
  const drawn = passes.filter((_, index) => index === printed || tools.includes(index));
  return {
    svg: drawSheet(widthMm, heightMm, layers),
    ticket: {
      pinbar: 1,
      passes: drawn.map(({ name, role }) => ({ name, role })),
      rules: passes.flatMap(({ name }, i) =>
        i === printed || tools.includes(i) ? [{ pass: name, layer: `Pass-${i + 1}` }] : [],
      ),
    },
  };
}
