// Letters of single open strokes, for names on the sheet without a font. Drawn for this program.

/** Strokes on a grid 4 wide and 6 high, y down; points as two digits, strokes parted by blanks. */
const STROKES: Readonly<Record<string, string>> = {
  A: '062046 1333',
  B: '0006 003041423303 3344453606',
  C: '41301001051636 3645',
  D: '00062645412000',
  E: '40000646 0333',
  F: '400006 0333',
  G: '413010010516364543 2343',
  H: '0006 4046 0343',
  I: '1030 2026 1636',
  J: '4045361605',
  K: '0006 400346',
  L: '000646',
  M: '0600234046',
  N: '06004640',
  O: '1001051636454130 3010',
  P: '0600304142330303',
  Q: '1001051636454130 3010 2446',
  R: '0600304142330303 2346',
  S: '4130100102134344453616 1605',
  T: '0040 2026',
  U: '000516364540',
  V: '002640',
  W: '0016233640',
  X: '0046 4006',
  Y: '002340 2326',
  Z: '00400646',
  0: '1001051636454130 3010 0541',
  1: '012026 1636',
  2: '011030410646 0646',
  3: '01103041423313 334445361605',
  4: '36300444',
  5: '400003334445361605',
  6: '30100105163645443303',
  7: '004016',
  8: '10010213334445361605041333424130 3010',
  9: '43130201103041453616',
  '-': '1333',
  '.': '2526',
  '/': '0640',
  '(': '30121436',
  ')': '10323416',
  '>': '013305',
  ' ': '',
};

/** Width of a letter with its gap, in grid units. */
const ADVANCE = 6;
const HEIGHT = 6;

type Stroke = readonly (readonly [number, number])[];

/** The strokes of one letter on the grid; an unknown letter is drawn as a dash. */
function strokesOf(letter: string): readonly Stroke[] {
  const code = STROKES[letter] ?? STROKES['-']!;
  return code
    .split(' ')
    .filter((part) => part !== '')
    .map((part) => Array.from({ length: part.length / 2 }, (_, i) => [Number(part[2 * i]), Number(part[2 * i + 1])]));
}

/** Width of a text at a letter height. Same unit as the height. */
export function measureLetters(text: string, height: number): number {
  return text.length === 0 ? 0 : ((text.length * ADVANCE - 2) * height) / HEIGHT;
}

/** Open strokes of a text whose top left is at (x, y). */
export function drawLetters(text: string, x: number, y: number, height: number): readonly Stroke[] {
  const unit = height / HEIGHT;
  return [...text.toUpperCase()].flatMap((letter, i) =>
    strokesOf(letter).map((stroke) =>
      stroke.map(([column, row]) => [x + (i * ADVANCE + column) * unit, y + row * unit] as const),
    ),
  );
}
