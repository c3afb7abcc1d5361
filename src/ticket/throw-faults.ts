// Every fault of a document thrown at once.
import { type FindingCode, finding } from '../model/finding.js';
import { PinbarError } from '../model/trouble.js';
import type { ShapeFault } from './check-shape.js';

/**
 * Throws one finding per fault.
 *
 * @param faults - At least one.
 * @throws PinbarError of the code, always.
 */
export function throwFaults(code: FindingCode, faults: readonly ShapeFault[]): never {
  const texts = faults.map(({ message, remedy, path }) => ({ message, remedy, data: { path } }));
  const before = texts.slice(0, -1).map((text) => finding(code, text));
  throw new PinbarError(code, texts.at(-1)!, before);
}
