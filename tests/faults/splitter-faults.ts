// Faults put by hand into the splitter and into what draws the marks; each is one that a program like this could have.
import type { TextFault } from './break-module.js';
import type { JobName, Judge } from './broken-job.js';

/** A fault and the job it shows in. */
export interface SplitterFault extends TextFault {
  readonly name: string;
  readonly job: JobName;
  /** Judges that cannot see it, and why; nobody else misses it. */
  readonly blind?: Readonly<Partial<Record<Judge, string>>>;
}

/** Why `verify`, which compares files made anywhere, has nothing to say. */
const NOT_COMPARED = 'compares places, sizes, fills and marks of what is drawn, not how it is written';
const NEAR = 'moves nothing by as much as is allowed';
const ANY_PASS = 'does not know which pass a shape belongs to';

/** The bytes of each sheet are rewritten on their way out, on those of one pass or on all. */
function rewriting(rewrite: string, pass?: string): TextFault {
  const condition = pass === undefined ? 'true' : `order.pass.name === '${pass}'`;
  const rewritten = `new TextEncoder().encode(new TextDecoder().decode(piece)${rewrite})`;
  const to = `pieces: writer.pieces.map((piece) => (${condition} ? ${rewritten} : piece)), marksAt`;
  return { file: 'split/emit-sheet.ts', changes: [['pieces: writer.pieces, marksAt', to]] };
}

/** The group of marks is rewritten on the second sheet. */
function rewritingMarks(rewrite: string): TextFault {
  const from = 'encodeUtf8(group)';
  return {
    file: 'mark/mark-sheets.ts',
    changes: [[from, `encodeUtf8(index === 1 ? group${rewrite} : group)`]],
  };
}

function inFile(file: string, ...changes: readonly (readonly [string, string])[]): TextFault {
  return { file, changes };
}

const START_TAGS: readonly SplitterFault[] = [
  { name: 'a group loses its transform', job: 'plain', ...rewriting(`.replace(/ transform="translate[^"]*"/, '')`) },
  { name: 'a group loses its paint', job: 'plain', ...rewriting(`.replace(/ fill="#4d6b3c"(?=>)/, '')`) },
  { name: 'the viewBox is copied wrong', job: 'plain', ...rewriting(`.replace('280 180', '281 180')`) },
  { name: 'the viewBox is lost', job: 'plain', ...rewriting(`.replace('viewBox="0 0 280 180" ', '')`) },
  {
    name: 'the viewBox loses its alignment',
    blind: { verify: NOT_COMPARED },
    job: 'plain',
    ...rewriting(`.replace(/ preserveAspect\\w*="[^"]*"/, '')`),
  },
  { name: 'the width loses its unit', job: 'plain', ...rewriting(`.replace('140mm', '140')`) },
  {
    name: 'a number is rounded',
    blind: { verify: NEAR },
    job: 'plain',
    ...rewriting(`.replace('20.123456', '20.123')`),
  },
  {
    name: 'a number is rounded by less than matters',
    blind: { verify: NEAR },
    job: 'plain',
    ...rewriting(`.replace('12.000001', '12')`),
  },
  {
    name: 'a clip is left off',
    blind: { verify: NOT_COMPARED },
    job: 'plain',
    ...rewriting(`.replace(/ clip-path="[^"]*"/, '')`),
  },
  {
    name: 'dashes are left off',
    blind: { verify: NOT_COMPARED },
    job: 'plain',
    ...rewriting(`.replace(/ stroke-dasharray="[^"]*"/, '')`, 'crease'),
  },
  { name: 'text loses its accent', blind: { verify: NOT_COMPARED }, job: 'plain', ...rewriting(`.replace('é', 'e')`) },
  {
    name: 'text is written in another encoding',
    blind: { verify: NOT_COMPARED },
    job: 'plain',
    ...rewriting(`.replace('é', 'Ã©')`),
  },
  {
    name: 'a colour is written anew',
    blind: { verify: NOT_COMPARED },
    job: 'plain',
    ...rewriting(`.replace('stop-color="#173a45"', 'stop-color="#173a46"')`),
  },
  {
    name: 'a handler stays',
    blind: { verify: NOT_COMPARED },
    job: 'plain',
    ...inFile('split/sanitise.ts', ["if (/^on/i.test(local)) return 'handler';", '']),
  },
  {
    name: 'a script stays',
    blind: { verify: NOT_COMPARED },
    job: 'plain',
    ...inFile('split/sanitise.ts', [
      "if (SCRIPT_NAMES.has(local)) return 'split/script-removed';",
      'if (SCRIPT_NAMES.has(local)) return null;',
    ]),
  },
];

const CHOICE: readonly SplitterFault[] = [
  {
    name: 'what is referred to stays behind',
    job: 'plain',
    ...inFile('split/select-rows.ts', ['if (target !== undefined) selecting.pending.push(target);', '']),
  },
  {
    name: 'a gradient stays behind',
    blind: { verify: NOT_COMPARED },
    job: 'plain',
    ...inFile('split/select-rows.ts', [
      'if (target !== undefined) selecting',
      "if (target !== undefined && id !== 'dusk') selecting",
    ]),
  },
  {
    name: 'a clip stays behind',
    blind: { verify: NOT_COMPARED },
    job: 'plain',
    ...inFile('split/select-rows.ts', [
      'if (target !== undefined) selecting',
      "if (target !== undefined && id !== 'window') selecting",
    ]),
  },
  {
    name: 'what a copy shows stays behind',
    job: 'plain',
    ...inFile('split/select-rows.ts', [
      'if (target !== undefined) selecting',
      "if (target !== undefined && id !== 'leaf') selecting",
    ]),
  },
  {
    name: 'a definition is drawn',
    job: 'counting',
    ...inFile('split/emit-sheet.ts', ['writer.order.duty[row] === DEFINITION &&', 'false &&']),
  },
  {
    name: 'all style sheets stay behind',
    job: 'plain',
    ...inFile('split/select-rows.ts', ['for (const row of grounds.styleRows)', 'for (const row of [])']),
  },
  {
    name: 'one style sheet stays behind',
    job: 'plain',
    ...inFile('split/select-rows.ts', [
      'for (const row of grounds.styleRows)',
      'for (const row of grounds.styleRows.slice(1))',
    ]),
  },
  {
    name: 'a shape is lost',
    job: 'plain',
    ...inFile('split/select-rows.ts', ['for (const row of carriers)', 'for (const row of [...carriers].slice(1))']),
  },
  {
    name: 'a shape of another pass comes along',
    job: 'plain',
    ...inFile('split/split.ts', [
      'selectRows(grounds, pass, placed.carriers)',
      "selectRows(grounds, pass, pass.name === 'print' ? new Set([...placed.carriers, ...placeCarriers(grounds, placements.at(-1)!).carriers]) : placed.carriers)",
    ]),
  },
  {
    name: 'two passes are exchanged',
    blind: { verify: ANY_PASS },
    job: 'plain',
    ...inFile('split/split.ts', ['placements[index]!', 'placements[(index === 0 ? 2 : index === 2 ? 0 : 1)]!']),
  },
  {
    name: 'no stand-ins are left where rules count',
    blind: { witness: 'reads only rules that do not count', verify: NOT_COMPARED },
    job: 'counting',
    ...inFile('split/split.ts', ['standIns: artwork.structural', 'standIns: false']),
  },
  {
    name: 'a stand-in is drawn',
    blind: { verify: NOT_COMPARED },
    job: 'counting',
    ...inFile('split/stand-in.ts', ['style|d|points', 'style|points'], [' style="display:none!important"/>', '/>']),
  },
];

const ORDER: readonly SplitterFault[] = [
  {
    name: 'a shape is written twice',
    job: 'plain',
    ...inFile('split/emit-sheet.ts', [
      'listRows(writer, row, grounds.removed);',
      'listRows(writer, row, grounds.removed); if (row === 14) { writeSpan(writer, start[row]!, end[row]!); listRows(writer, row, grounds.removed); }',
    ]),
  },
  {
    name: 'two shapes change places',
    blind: { verify: NOT_COMPARED },
    job: 'plain',
    ...inFile(
      'split/emit-sheet.ts',
      ['readonly rows: number[];', 'readonly rows: number[]; held?: number;'],
      [
        '    writeWhole(writer, grounds, row);\n  } else if',
        '    if (writer.source.elements.next[row] === row + 1 && duty === WHOLE && row > 12 && writer.held === undefined) { writer.held = row; return false; }\n    writeWhole(writer, grounds, row);\n    if ((writer.held ?? -1) > 0) { writeWhole(writer, grounds, writer.held!); writer.held = -1; }\n  } else if',
      ],
    ),
  },
  {
    name: 'style sheets change places',
    job: 'plain',
    ...rewriting(`.replace(/(<style>\\.sun.*<.style>)(\\s*)(<style>g .*<.style>)/, '$3$2$1')`),
  },
  {
    name: 'a group ends before its shapes',
    job: 'plain',
    ...rewriting(`.replace(/(<g id="front"[^>]*>)/, '$1</g>').replace(/<.g>(\\s*<.g>)/, '$1')`, 'print'),
  },
  {
    name: 'a group is left out around its shapes',
    job: 'plain',
    ...inFile('split/emit-sheet.ts', [
      'const duty = order.duty[row]!;',
      'const duty = order.duty[row]!;\n  if (duty === CHAIN && row > 0 && gapBefore(source.text, source.elements.start[row]!) > 0 && source.elements.parent[row]! > 0) { return false; }',
    ]),
  },
];

const OVERRIDES: readonly SplitterFault[] = [
  {
    name: 'the wrong half of the paint is hidden',
    blind: { verify: NOT_COMPARED },
    job: 'plain',
    ...inFile('split/split.ts', [
      "fill: 'stroke:none!important',\n  stroke: 'fill:none!important'",
      "fill: 'fill:none!important',\n  stroke: 'stroke:none!important'",
    ]),
  },
  {
    name: 'parted paint is drawn whole',
    job: 'plain',
    ...inFile('split/split.ts', ['styles.set(shape.element, HIDE[placement.part]);', '{}']),
  },
  {
    name: 'an override does not win',
    blind: { verify: NOT_COMPARED },
    job: 'plain',
    ...inFile('split/split.ts', ["stroke: 'fill:none!important'", "stroke: 'fill:none'"]),
  },
  {
    name: 'an override says more than it should',
    blind: { verify: NOT_COMPARED },
    job: 'plain',
    ...inFile('split/split.ts', [
      "stroke: 'fill:none!important'",
      "stroke: 'fill:none!important;stroke-width:1px!important'",
    ]),
  },
  {
    name: 'an override lands on the next shape',
    job: 'plain',
    ...inFile('split/split.ts', ['styles.set(shape.element, HIDE', 'styles.set(shape.element + 1, HIDE']),
  },
  {
    name: 'a hidden layer stays hidden',
    blind: { verify: NOT_COMPARED },
    job: 'hidden',
    ...inFile('split/split.ts', ['rows.add(row);', '{}']),
  },
];

const ARTBOARD: readonly SplitterFault[] = [
  {
    name: 'the artboard grows on one pass only',
    job: 'margin',
    ...inFile('split/split.ts', [
      'const edits = orderEdits([...shared,',
      'const edits = orderEdits([...(index === 1 ? sanitised.edits : shared),',
    ]),
  },
  {
    name: 'the artboard grows on no pass',
    job: 'margin',
    ...inFile('split/edit-root.ts', ['if (value === null) continue;', 'continue;']),
  },
  {
    name: 'the viewBox does not grow',
    job: 'margin',
    ...inFile('split/edit-root.ts', ["['width', 'height', 'viewBox']", "['width', 'height']"]),
  },
  {
    name: 'the artboard grows the other way',
    job: 'margin',
    ...inFile('mark/grow-artboard.ts', ['[x - dx, y - dy,', '[x + dx, y + dy,']),
  },
  {
    name: 'the artboard grows on one side of two',
    job: 'margin',
    ...inFile(
      'mark/grow-artboard.ts',
      ['width + 2 * dx, height + 2 * dy', 'width + dx, height + dy'],
      ['sizePx + 2 *', 'sizePx +'],
    ),
  },
  {
    name: 'the artboard grows by a tenth less',
    job: 'margin',
    ...inFile('mark/grow-artboard.ts', ['marginMm / artboard.mmPerPx', '(0.9 * marginMm) / artboard.mmPerPx']),
  },
  {
    name: 'the grown viewBox is rounded',
    job: 'margin',
    ...inFile('mark/grow-artboard.ts', ['const DECIMALS = 10;', 'const DECIMALS = 1;']),
  },
];

const MARKS: readonly SplitterFault[] = [
  {
    name: 'one pass has no marks',
    job: 'plain',
    ...inFile('mark/mark-sheets.ts', [
      'const { pass } = sheet;',
      'const { pass } = sheet;\n    if (index === 1) return sheet;',
    ]),
  },
  {
    name: 'no pass has marks',
    blind: { witness: 'does not know that marks were asked for' },
    job: 'plain',
    ...inFile('mark/mark-sheets.ts', ['if (plan === null) return sheets;', 'return sheets;']),
  },
  {
    name: 'the marks of one pass are shifted',
    job: 'plain',
    ...rewritingMarks(
      `.replace('transform="matrix(', 'transform="translate(0.02 0) matrix(').replace('transform:matrix(', 'transform:translate(0.02px,0px) matrix(')`,
    ),
  },
  {
    name: 'the marks of one pass are shifted for readers of CSS',
    blind: { verify: NOT_COMPARED },
    job: 'plain',
    ...rewritingMarks(`.replace('transform:matrix(', 'transform:translate(0.02px,0px) matrix(')`),
  },
  {
    name: 'one disc of one pass is shifted',
    job: 'plain',
    ...rewritingMarks(
      `.replace(/(data-mark="disc" d="M)([\\d.]+)( \\S+?A\\S+ \\S+ 0 0 1 )([\\d.]+)( \\S+?A\\S+ \\S+ 0 0 1 )([\\d.]+)/, (_, a, x, b, y, c, z) => a + (+x + 0.5) + b + (+y + 0.5) + c + (+z + 0.5))`,
    ),
  },
  {
    name: 'one pass has fewer crosses',
    job: 'plain',
    ...rewritingMarks(`.replace(/(data-mark="cross" d=")M[^M]*M[^M]*/, '$1')`),
  },
  {
    name: 'one pass has no crosses',
    blind: { verify: NOT_COMPARED },
    job: 'plain',
    ...rewritingMarks(`.replace(/<path data-mark="cross"[^>]*>/, '')`),
  },
  {
    name: 'one pass draws thicker marks',
    job: 'plain',
    ...rewritingMarks(`.replace(/stroke-width:0.25/g, 'stroke-width:0.5')`),
  },
  {
    name: 'the marks of one pass are hidden',
    blind: { verify: NOT_COMPARED },
    job: 'plain',
    ...rewritingMarks(`.replace('display:inline', 'display:none')`),
  },
  {
    name: 'the marks of one pass are not painted',
    job: 'plain',
    ...rewritingMarks(`.replace(/stroke:#\\w+/g, 'stroke:none')`),
  },
  {
    name: 'the marks of one pass stand in a group',
    job: 'plain',
    ...inFile('mark/mark-sheets.ts', [
      'pieces.splice(sheet.marksAt, 0,',
      'pieces.splice(index === 1 ? sheet.marksAt - 1 : sheet.marksAt, 0,',
    ]),
  },
];

/** All faults. */
export const FAULTS: readonly SplitterFault[] = [START_TAGS, CHOICE, ORDER, OVERRIDES, ARTBOARD, MARKS].flat();

/** What lies on each other all the same. */
export const HARMLESS: readonly SplitterFault[] = [
  {
    name: 'the marks of all passes are shifted alike',
    job: 'plain',
    ...inFile('mark/plan-marks.ts', ['-marginMm * pxPerMm, -marginMm', '(1 - marginMm) * pxPerMm, -marginMm']),
  },
  {
    name: 'the label is lost',
    job: 'plain',
    ...inFile('mark/draw-marks.ts', ["if (letters !== '')", 'if (false)']),
  },
];
