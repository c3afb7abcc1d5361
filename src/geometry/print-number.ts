// Numbers as SVG text.

export function printNumber(value: number, _decimals: number = 6): string {
  return String(value);
}
