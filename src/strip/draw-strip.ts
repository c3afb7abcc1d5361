// A test strip: one field per value with lines, turns, a square, a circle and arcs, and a legend to be printed.
import { toNewton } from '../geometry/force.js';
import { printNumber } from '../geometry/print-number.js';
import { namePass } from '../model/pass.js';
import { arc, drawLayer, drawSheet, letters, line, lineThrough } from './draw-lines.js';
import { EDGE_MM, planStrip } from './plan-strip.js';
import { type OwnDrawing, SETTING_UNITS, type StripRequest, type StripStep } from './strip-request.js';

/** The pass that prints the legend. */
const LEGEND = 'legend';
/** What holds the square and the circle of a cut strip in the sheet, mm. */
const TIE_MM = 0.5;

/** As many short lines as the number of the step, in fives: read without a printed legend, and nothing that could fall out. */
function drawTally(number: number, x: number, y: number): string {
  return Array.from({ length: number }, (_, i) => {
    const at = x + i * 1.5 + Math.floor(i / 5) * 1.5;
    return line(at, y, at, y + 3);
  }).join('');
}

/** A square of 10 mm from the middle of its lower side; `open` leaves a tie there. */
function drawSquare(x: number, y: number, open: boolean): string {
  const gap = open ? TIE_MM / 2 : 0;
  const points = [
    [x + 5 - gap, y + 10],
    [x, y + 10],
    [x, y],
    [x + 10, y],
    [x + 10, y + 10],
    [x + 5 + gap, y + 10],
  ] as const;
  return open ? lineThrough(points) : `${lineThrough(points.slice(0, -1))}Z`;
}

/** A circle of 10 mm across from its lowest point; `open` leaves a tie there. */
function drawCircle(x: number, y: number, open: boolean): string {
  const gap = open ? TIE_MM / 2 : 0;
  const down = Math.sqrt(25 - gap * gap);
  if (open) return arc([x - gap, y + down], 5, [x + gap, y + down], 1);
  return `${arc([x, y + 5], 5, [x, y - 5])}${arc([x, y - 5], 5, [x, y + 5])}`.replace(/(.)M[^A]*A/, '$1A').concat('Z');
}

/** What the tool draws in the field of one step. */
function drawField({ number, xMm, yMm }: StripStep, open: boolean): string {
  const at = (x: number, y: number): readonly [number, number] => [xMm + x, yMm + y];
  const along = [17, 20, 23].map((y) => line(...at(2, y), ...at(24, y)));
  const across = [28, 31, 34].map((x) => line(...at(x, 17), ...at(x, 38)));
  const turns = lineThrough([at(38, 17), at(48, 17), at(40, 24), at(48, 24)]);
  const arcs = [3, 6, 9].map((radius) => arc(at(38, 38 - radius), radius, at(38 + radius, 38)));
  return [
    drawTally(number, xMm + 2, yMm + 11),
    ...along,
    ...across,
    turns,
    drawSquare(...at(2, 28), open),
    drawCircle(...at(19, 33), open),
    ...arcs,
  ].join('');
}

function sayValue({ value }: StripStep, { setting }: StripRequest): readonly [string, string] {
  const newton = setting === 'pressure' ? `${printNumber(toNewton(value), 3)} N` : '';
  return [`${value} ${SETTING_UNITS[setting].sign}`, newton];
}

/** Number, value and a box to tick, above the field of one step. */
function printField(step: StripStep, request: StripRequest): string {
  const { number, xMm, yMm } = step;
  const [value, newton] = sayValue(step, request);
  const box = lineThrough([
    [xMm + 45, yMm + 2],
    [xMm + 49, yMm + 2],
    [xMm + 49, yMm + 6],
    [xMm + 45, yMm + 6],
  ]);
  return [
    letters(String(number), xMm + 2, yMm + 2, 5),
    letters(value, xMm + 14, yMm + 2, 3),
    letters(newton, xMm + 14, yMm + 6.4, 2),
    `${box}Z`,
  ].join('');
}

function printHeading({ role, setting }: StripRequest, [first]: readonly StripStep[]): string {
  const x = first!.xMm + 2;
  const rule = (from: number, to: number) => line(x + from, EDGE_MM + 15, x + to, EDGE_MM + 15);
  return [
    letters(`Test strip / ${namePass(role)} / ${setting}`, x, EDGE_MM, 4),
    letters('One file per field / run each at the value of its field / tick the best', x, EDGE_MM + 6.5, 2),
    letters('Material', x, EDGE_MM + 12.5, 2.5),
    rule(22, 82),
    letters('Date', x + 88, EDGE_MM + 12.5, 2.5),
    rule(101, 156),
  ].join('');
}

/**
 * A test strip as a layered drawing, with the ticket that parts it: a pass that prints the legend, and one pass per value.
 *
 * On a cut strip the square and the circle keep a tie of 0.5 mm, except where the offset is tried: there they must close.
 *
 * @throws PinbarError as `planStrip` does.
 */
export function drawTestStrip(request: StripRequest): OwnDrawing & { readonly steps: readonly StripStep[] } {
  const steps = planStrip(request);
  const open = request.role.endsWith('cutting') && request.setting !== 'offset';
  const legend = steps.map((step) => printField(step, request)).join('');
  const layers = [
    drawLayer('Legend', printHeading(request, steps) + legend),
    ...steps.map((step) => drawLayer(`Step-${step.number}`, drawField(step, open))),
  ];
  return {
    svg: drawSheet(request.widthMm, request.heightMm, layers),
    steps,
    ticket: {
      pinbar: 1,
      passes: [{ name: LEGEND, role: 'print' }, ...steps.map(({ pass }) => ({ name: pass, role: request.role }))],
      rules: [
        { pass: LEGEND, layer: 'Legend' },
        ...steps.map(({ pass, number }) => ({ pass, layer: `Step-${number}` })),
      ],
      marks: { passes: [LEGEND] },
    },
  };
}
