// A sheet of 200 x 200 mm with lines for the tools, as checks see it.
import type { CheckFacts } from '../../../src/check/check-facts.js';
import type { CheckSettings } from '../../../src/model/check-settings.js';
import type { Finding } from '../../../src/model/finding.js';
import { factsOf } from './carton-facts.js';

/** Elements of the layers of a die, path data or markup each, in paint order. */
export interface DieLayers {
  readonly crease?: readonly string[];
  readonly perforation?: readonly string[];
  readonly cut?: readonly string[];
}

/** The outline of a blank of 100 x 60 mm. */
export const BLANK = 'M50 50H150V110H50Z';

function writeLayer(name: string, elements: readonly string[] = []): string {
  const lines = elements.map((element) => (element.startsWith('<') ? element : `<path d="${element}"/>`));
  return lines.length === 0
    ? ''
    : `<g id="${name}" fill="none" stroke="#d6336c" stroke-width="0.3">${lines.join('')}</g>`;
}

/** The drawing of a die. */
export function drawDie({ crease, perforation, cut }: DieLayers): string {
  const layers = writeLayer('Crease', crease) + writeLayer('Perforation', perforation) + writeLayer('Cut', cut);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="200mm" viewBox="0 0 200 200">${layers}</svg>`;
}

/** The facts of a die. */
export async function dieFacts(layers: DieLayers, checks: Partial<CheckSettings> = {}): Promise<CheckFacts> {
  return factsOf(drawDie(layers), checks);
}

/** Code, count and, where there is one, the measured value of each finding, to a ten-thousandth. */
export function briefly(findings: readonly Finding[]): readonly (readonly unknown[])[] {
  return findings.map(({ code, data }) => {
    const measured = data.measuredMm ?? data.measured ?? data.areaMm2;
    return [
      code.replace('check/', ''),
      data.count,
      ...(measured === undefined ? [] : [Math.round(Number(measured) * 10_000) / 10_000]),
    ];
  });
}
