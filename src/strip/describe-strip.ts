// The record of a test strip: which file is run at which value.
import { toNewton } from '../geometry/force.js';
import { printNumber } from '../geometry/print-number.js';
import { SETTING_UNITS, type SteppedSetting, type StripRequest, type StripStep } from './strip-request.js';

/** One step of a strip and the file that runs it. */
export interface RecordedStep {
  readonly number: number;
  readonly value: number;
  /** The pressure in N; null for other settings. */
  readonly newton: number | null;
  readonly file: string;
  readonly xMm: number;
  readonly yMm: number;
}

/** What a strip tries, step by step. */
export interface StripRecord {
  readonly tool: string;
  readonly setting: SteppedSetting;
  readonly unit: string;
  readonly legend: string;
  readonly steps: readonly RecordedStep[];
}

/**
 * The record of a strip.
 *
 * @param files - Names of the files, the legend first, then one per step.
 */
export function describeStrip(
  request: StripRequest,
  steps: readonly StripStep[],
  files: readonly string[],
): StripRecord {
  const isPressure = request.setting === 'pressure';
  return {
    tool: request.role,
    setting: request.setting,
    unit: SETTING_UNITS[request.setting].sign,
    legend: files[0]!,
    steps: steps.map(({ number, value, xMm, yMm }) => ({
      number,
      value,
      newton: isPressure ? Number(printNumber(toNewton(value), 3)) : null,
      file: files[number]!,
      xMm,
      yMm,
    })),
  };
}

/** The record as text, with what to do. */
export function printStrip({ tool, unit, legend, steps }: StripRecord): string {
  // What is gentle comes first, whichever end was named first: little pressure, and slowly.
  const rows = [...steps]
    .sort((a, b) => a.value - b.value)
    .map(({ number, value, newton, file }) => {
      const force = newton === null ? '' : ` (${newton} N)`;
      return `  ${String(number).padStart(2)}  ${value} ${unit}${force}  ${file}\n`;
    });
  const blade = tool.endsWith('cutting') || tool === 'perforating';
  return [
    `Print ${legend}, then run each file at its value, the least first (number of the field, value, file):\n`,
    ...rows,
    'Stop where the board breaks or the tool drags. Tick the best field and enter its value in the shop profile, under the settings of the tool for this material, with "from": "strip" and the batch of the board.\n',
    blade
      ? 'WARNING: a blade stays sharp when the machine is off. Stop the machine and cut its power before you change it; hold it by its body, in cut-resistant gloves.\n'
      : '',
    "The machine's own manual and its limits come first.\n",
  ].join('');
}
