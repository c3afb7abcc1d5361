// How far passes may come out from each other, from the shop's own figures.

/** Figures of a machine, mm; null where nobody entered one. */
export interface RegisterNumbers {
  readonly layMm: number | null;
  readonly marksMm: number | null;
  readonly headMm: number | null;
}

/** One pair of passes under one way to register. */
export interface Budget {
  readonly pair: 'print to tool' | 'tool to tool';
  /** `lay`: every pass by lay edge or pins; `marks`: print first, every tool pass reads printed marks. */
  readonly way: 'lay' | 'marks';
  /** Figures under the root, each as often as it counts. */
  readonly parts: readonly { readonly figure: 'lay' | 'marks' | 'head'; readonly times: number }[];
  /** Null where a figure is missing. */
  readonly totalMm: number | null;
}

type Parts = Budget['parts'];

const BY_LAY: Parts = [
  { figure: 'lay', times: 2 },
  { figure: 'head', times: 2 },
];

/** A tool that reads the print's own marks: neither lay nor head of the print counts. */
const PRINT_BY_MARKS: Parts = [
  { figure: 'marks', times: 1 },
  { figure: 'head', times: 1 },
];

const TOOLS_BY_MARKS: Parts = [
  { figure: 'marks', times: 2 },
  { figure: 'head', times: 2 },
];

function addUp(parts: Parts, numbers: RegisterNumbers): number | null {
  const values: Readonly<Record<'lay' | 'marks' | 'head', number | null>> = {
    lay: numbers.layMm,
    marks: numbers.marksMm,
    head: numbers.headMm,
  };
  let squares = 0;
  for (const { figure, times } of parts) {
    const value = values[figure];
    if (value === null) return null;
    squares += times * value * value;
  }
  return Math.sqrt(squares);
}

/** Both ways side by side, for print to tool and for tool to tool. The figures are taken as independent. */
export function listBudgets(numbers: RegisterNumbers): readonly Budget[] {
  const rows: readonly (readonly [Budget['pair'], Budget['way'], Parts])[] = [
    ['print to tool', 'lay', BY_LAY],
    ['print to tool', 'marks', PRINT_BY_MARKS],
    ['tool to tool', 'lay', BY_LAY],
    ['tool to tool', 'marks', TOOLS_BY_MARKS],
  ];
  return rows.map(([pair, way, parts]) => ({ pair, way, parts, totalMm: addUp(parts, numbers) }));
}
