// What the benchmark holds pinbar to. All are ratios within one run, but for memory.

/** Targets for one large size. */
function judgeLarge({ sizeMb, inputMb, ways }) {
  const ratio = (way, other) => ways[way].wallMs / ways[other].wallMs;
  const at = `at ${sizeMb} MB`;
  const both =
    ways.both === undefined ? [] : [{ what: `both judges / naive, ${at}`, is: ratio('both', 'naive'), atMost: 1 / 5 }];
  return [
    ...both,
    { what: `split / floor, ${at}`, is: ratio('split', 'floor'), atMost: 3.5 },
    { what: `read back / floor, ${at}`, is: ratio('read-back', 'floor'), atMost: 8 },
    { what: `peak memory of read back, MB, ${at}`, is: ways['read-back'].peakMb, atMost: 2.2 * inputMb + 60 },
    { what: `checks / split, ${at}`, is: ratio('checked', 'split'), atMost: 4 },
  ];
}

/** Every target that the measured sizes allow to judge. */
export function judge(sizes, { many, lines, start }) {
  const targets = [...sizes.values()].filter(({ sizeMb }) => sizeMb >= 50).flatMap(judgeLarge);
  if (sizes.has(50) && sizes.has(200)) {
    const growth = sizes.get(200).ways.split.wallMs / sizes.get(50).ways.split.wallMs;
    targets.push({ what: 'growth of split, 200 MB / 50 MB', is: growth, atMost: 4.4 });
  }
  // The checks themselves take at most three times as long as the split, so both together four times.
  for (const { kind, count, ratio } of lines) {
    targets.push({ what: `checks / split, ${count} ${kind}`, is: ratio, atMost: 4 });
  }
  targets.push(
    { what: 'small files: naive / split, files a second', is: many['many-naive'] / many['many-split'], atMost: 1 },
    { what: '--version / node -e 0', is: start.version / start.node, atMost: 1.5 },
  );
  return targets.map((target) => ({ ...target, met: target.is <= target.atMost }));
}
