// Which values a test strip tries, and where on the sheet each has its field.
import { printNumber } from '../geometry/print-number.js';
import { isToolpath, namePass } from '../model/pass.js';
import { PinbarError } from '../model/trouble.js';
import { SETTING_UNITS, type StripRequest, type StripStep } from './strip-request.js';

/** Size of one field, mm. */
export const FIELD_MM = { width: 54, height: 44 } as const;
/** Room at every edge of the sheet for marks and for what the machine holds, mm. */
export const EDGE_MM = 20;
/** Room for the heading, mm. */
export const HEADING_MM = 22;
/** Decimals of a value. */
const DECIMALS = 3;
/** More short lines than this cannot be counted at a glance. */
const MOST_STEPS = 20;

function refuse(message: string, remedy: string): PinbarError {
  return new PinbarError('use/wrong', { message, remedy });
}

function checkRequest({ role, setting, from, to, steps }: StripRequest): void {
  if (!isToolpath(role)) {
    throw refuse(
      `A test strip is for a tool that runs along lines; ${role} is none.`,
      'Name such a tool: crease, cut, partial-cut, perforate.',
    );
  }
  if (!Number.isInteger(steps) || steps < 2 || steps > MOST_STEPS) {
    throw refuse(
      `${steps} steps were asked for; 2 to ${MOST_STEPS} can be told apart.`,
      'Ask for fewer or more steps.',
    );
  }
  const isSize = [from, to].every((value) => Number.isFinite(value) && (setting === 'offset' ? value >= 0 : value > 0));
  if (!isSize || from === to) {
    throw refuse(
      `From ${from} to ${to} ${SETTING_UNITS[setting].sign} is no range of ${setting}.`,
      'Give two different values above 0; an offset may be 0.',
    );
  }
}

/**
 * The steps of a strip: values evenly spread from the first to the last, in rows from the top left.
 *
 * @returns At most 20 steps; values are rounded to a thousandth.
 * @throws PinbarError `use/wrong` where the role, the range or the number of steps makes no strip, or the sheet is too small.
 */
export function planStrip(request: StripRequest): readonly StripStep[] {
  checkRequest(request);
  const { role, setting, from, to, steps, widthMm, heightMm } = request;
  const columns = Math.floor((widthMm - 2 * EDGE_MM) / FIELD_MM.width);
  const rows = Math.floor((heightMm - 2 * EDGE_MM - HEADING_MM) / FIELD_MM.height);
  const fitting = Math.max(0, columns) * Math.max(0, rows);
  if (fitting < steps) {
    throw refuse(
      `A sheet of ${widthMm} x ${heightMm} mm has room for ${fitting} fields of ${FIELD_MM.width} x ${FIELD_MM.height} mm; ${steps} steps were asked for.`,
      'Take a larger sheet or fewer steps.',
    );
  }
  const values = Array.from({ length: steps }, (_, i) =>
    Number(printNumber(from + ((to - from) * i) / (steps - 1), DECIMALS)),
  );
  if (new Set(values).size < steps) {
    throw refuse(
      `${steps} steps from ${from} to ${to} ${SETTING_UNITS[setting].sign} lie so near to each other that some are the same to a thousandth.`,
      'Ask for fewer steps, or for a wider range.',
    );
  }
  const left = (widthMm - columns * FIELD_MM.width) / 2;
  return values.map((value, i) => {
    return {
      number: i + 1,
      value,
      pass: `${namePass(role)}-${value}-${SETTING_UNITS[setting].name}`,
      xMm: left + (i % columns) * FIELD_MM.width,
      yMm: EDGE_MM + HEADING_MM + Math.floor(i / columns) * FIELD_MM.height,
    };
  });
}
