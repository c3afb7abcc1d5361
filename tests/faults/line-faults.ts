// Faults put by hand into ties and order; each is one that a program like this could have.
import type { TextFault } from './break-module.js';
import type { LineJobName } from './line-job.js';

/** A fault, the job it shows in, and words of what the judge sees. */
export interface LineFault extends TextFault {
  readonly name: string;
  readonly job: LineJobName;
  readonly sees: string;
}

function put(
  job: LineJobName,
  name: string,
  [file, from, to]: readonly [string, string, string],
  sees: string,
): LineFault {
  return { job, name, file, changes: [[from, to]], sees };
}

const HOLDING = 'ties/plan-holding.ts';
const PATTERN = 'ties/plan-pattern.ts';
const TIES = 'ties/plan-ties.ts';
const ZONES = 'ties/line-zones.ts';

const HELD: readonly LineFault[] = [
  put(
    'held',
    'a tie of another length',
    [
      HOLDING,
      '.map((middle) => [middle - tie / 2, middle + tie / 2])',
      '.map((middle) => [middle - tie / 2, middle + tie])',
    ],
    'a tie of another length',
  ),
  put(
    'held',
    'one tie too few',
    [HOLDING, 'for (let i = 0; i < count; i += 1) {', 'for (let i = 1; i < count; i += 1) {'],
    'ties, not',
  ),
  put('held', 'ties side by side', [HOLDING, 'start + (i * length) / count', 'start + i * 8 * tie'], 'in the mean'),
  put(
    'held',
    'the longest free stretch is the shortest',
    [HOLDING, 'Math.max(...gaps)', 'Math.min(...gaps)'],
    'mm free of',
  ),
  put(
    'held',
    'a tie at a corner',
    [TIES, 'return [...spreadPlaces(listCorners(run, matrix), cornerClear), ...', 'return [...'],
    'a tie at a corner',
  ),
  put(
    'held',
    'clear of corners to one side only',
    [ZONES, '[place - clear, place + clear]', '[place, place + clear]'],
    'a tie at a corner',
  ),
  put(
    'held',
    'zones over the start of an outline are forgotten',
    [ZONES, 'else cut.push([a, length], [0, b - length]);', 'else cut.push([a, length]);'],
    '',
  ),
  put(
    'held',
    'the ends of creases are forgotten',
    [ZONES, '< creaseEndClear + length / 2', '< 0'],
    'a tie at the end of a crease',
  ),
  put('held', 'tight bends are forgotten', [ZONES, 'radius < leastRadius', 'radius < 0'], 'a tie in a bend'),
  put(
    'held',
    'a small hole is held like a large one',
    [TIES, '? settings.smallHoleTies', '? settings.leastPerPiece'],
    'small: 3 ties',
  ),
  put(
    'held',
    'pieces are measured across alone',
    [TIES, 'Math.max(x1 - x0, y1 - y0)', 'Math.min(x1 - x0, 10)'],
    'ties, not',
  ),
  put(
    'held',
    'ties by the free length are rounded down',
    [TIES, 'Math.ceil(length / (settings.free + settings.tie))', 'Math.floor(length / (settings.free + settings.tie))'],
    'ties, not',
  ),
  put('held', 'a slit is held', [TIES, 'return isClosed || isHeld;', 'return true;'], 'slit: '),
  put(
    'held',
    'lines that meet are no outline',
    [TIES, 'return isClosed || isHeld;', 'return false;'],
    'part-one and part-two: 0 ties',
  ),
  put(
    'held',
    'a line run backwards has its ties at the wrong end',
    [TIES, 'reversed ? runs[line]!.run.length - local : local', 'local'],
    'part-one and part-two: ',
  ),
  put(
    'held',
    'a tie before the start of an outline stays there',
    [TIES, '(from < 0 ? [from + length, to + length] : [from, to])', '[from, to]'],
    '',
  ),
  put(
    'held',
    'the cut over the start of an outline is lost',
    [
      TIES,
      'if (run.closed) cuts.push([last[1], first[0] + run.length]);',
      'if (run.closed) cuts.push([last[1], run.length]);',
    ],
    'mm are left of',
  ),
  put(
    'held',
    'a cut between two ties is lost',
    [
      TIES,
      'ties.slice(1).map(([from], i): Stretch => [ties[i]![1], from])',
      'ties.slice(2).map(([from], i): Stretch => [ties[i + 1]![1], from])',
    ],
    'mm are left of',
  ),
  put(
    'held',
    'lengths along an outline forget one line',
    [TIES, 'length += runs[line]!.run.length;', 'length += runs[line]!.run.length - 1;'],
    '',
  ),
];

const PATTERNS: readonly LineFault[] = [
  put(
    'pattern',
    'a sliver at the end',
    [PATTERN, 'const factor = length / (count * cut + ties * tie);', 'const factor = 1;'],
    'a cut of another length',
  ),
  put(
    'pattern',
    'one tie too many',
    [PATTERN, 'const ties = count + extra;', 'const ties = count + extra + 1;'],
    'ties, not',
  ),
  put(
    'pattern',
    'the count that stretches most',
    [PATTERN, 'return weigh(factorOf(low)) <= weigh(', 'return weigh(factorOf(low)) > weigh('],
    'ties, not',
  ),
  put(
    'pattern',
    'the count is never rounded up',
    [PATTERN, 'return weigh(factorOf(low)) <= weigh(factorOf(low + 1)) ? low : low + 1;', 'return low;'],
    'ties, not',
  ),
  put(
    'pattern',
    'it begins with a tie',
    [PATTERN, "at > 0 || pattern.startsWith === 'tie'", "at > 0 || pattern.startsWith === 'cut'"],
    'ties, not',
  ),
  put(
    'pattern',
    'ties keep their length where cuts are stretched',
    [PATTERN, '[place, place + tie * factor]),', '[place, place + tie]),'],
    'another length',
  ),
  put(
    'pattern',
    'the stretch told is none',
    [PATTERN, 'part.factor : worst), 1);', 'worst : worst), 1);'],
    'told a stretch',
  ),
  put('pattern', 'a tie at the corner', [TIES, '[...spreadPlaces(corners, clear), ...listBends', '[...listBends'], ''),
  put('pattern', 'the end of a line is lost', [TIES, '    cuts.push([last[1], run.length]);\n  }', '  }'], 'cuts and'),
  put('pattern', 'the start of a line is lost', [TIES, 'cuts.unshift([0, first[0]]);', ''], 'cuts and'),
];

const ORDERS: readonly LineFault[] = [
  put(
    'order',
    'the first of each group is lost',
    [
      'road/sequence-pass.ts',
      "if (typeof child === 'number') out.push(",
      "if (typeof child === 'number') (slot > 0 ? out : []).push(",
    ],
    'out of order',
  ),
  put('order', 'outer before inner', ['sequence/find-nesting.ts', '[item, outer])', '[outer, item])'], ''),
  put(
    'order',
    'an outline of several lines is none',
    ['sequence/find-nesting.ts', 'if (!closed) continue;', 'continue;'],
    'out of order',
  ),
  put(
    'order',
    'only the first line of an outline comes after',
    [
      'sequence/find-nesting.ts',
      'for (const outer of around?.items ?? [])',
      'for (const outer of around?.items.slice(0, 1) ?? [])',
    ],
    'out of order',
  ),
  put(
    'order',
    'cuts before creases',
    ['sequence/plan-order.ts', 'sort((a, b) => a - b)) {', 'sort((a, b) => b - a)) {'],
    '',
  ),
  put(
    'order',
    'rules are forgotten on the way to the nearest',
    [
      'sequence/shorten-tour.ts',
      'open[next]! -= 1;\n      if (open[next] === 0) free.push(next);',
      'if (!free.includes(next)) free.push(next);',
    ],
    '',
  ),
  put(
    'order',
    'rules are forgotten where stretches move',
    [
      'sequence/shorten-tour.ts',
      '!(after < before - LEAST_GAIN) || !mayPass(state, i, j, k)',
      '!(after < before - LEAST_GAIN)',
    ],
    '',
  ),
  put(
    'order',
    'the way ends where a line starts',
    ['sequence/travel.ts', 'x: last.x1, y: last.y1', 'x: last.x0, y: last.y0'],
    '',
  ),
  put(
    'order',
    'the way told is that between starts',
    ['sequence/travel.ts', 'x = run.x1;\n    y = run.y1;', 'x = run.x0;\n    y = run.y0;'],
    'mm after of',
  ),
  put(
    'order',
    'lifts are not counted',
    ['sequence/travel.ts', 'if (lifts === 0 || step > SAME_PX) lifts += 1;', 'lifts = 1;'],
    'lifts of',
  ),
  put(
    'order',
    'it starts from another corner',
    [
      'road/sequence-pass.ts',
      "corner.endsWith('right') ? artboard.width : 0",
      "corner.endsWith('left') ? artboard.width : 0",
    ],
    'mm before of',
  ),
  put(
    'order',
    'the first element of a group is written twice',
    [
      'road/sequence-pass.ts',
      'out.push(source.text.subarray(start[rowOf(child)]!, end[rowOf(child)]!));',
      'out.push(source.text.subarray(start[rowOf(group.children[0]!)]!, end[rowOf(group.children[0]!)]!));',
    ],
    '',
  ),
];

const STARTS: readonly LineFault[] = [
  put('starts', 'a start at a corner', ['road/restart-lines.ts', '>= CORNER_CLEAR_PX', '>= 0'], 'starts at a corner'),
  put(
    'starts',
    'a line run backwards is entered where it is left',
    ['sequence/choose-starts.ts', 'return { exit, way: least };', 'return { exit: entry, way: least };'],
    '',
  ),
  put(
    'starts',
    'a line run backwards keeps its ends',
    [
      'geometry/reverse-run.ts',
      '...run, segments: run.segments.map(reverseSegment).reverse()',
      '...run, segments: run.segments.map(reverseSegment)',
    ],
    '',
  ),
  put(
    'starts',
    'the segments of a line run backwards keep theirs',
    ['geometry/reverse-run.ts', 'run.segments.map(reverseSegment).reverse()', '[...run.segments].reverse()'],
    '',
  ),
  put(
    'starts',
    'nothing is gained by another start',
    [
      'sequence/choose-starts.ts',
      'if (way < least) [best, least] = [i, way];',
      'if (way < least && i === 0) [best, least] = [i, way];',
    ],
    '',
  ),
];

/** All of them. */
export const LINE_FAULTS: readonly LineFault[] = [...HELD, ...PATTERNS, ...ORDERS, ...STARTS];
