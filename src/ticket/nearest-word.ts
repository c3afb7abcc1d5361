// The known word that somebody probably meant.

/** Number of single letters to insert, drop, change or swap to get from one word to another. */
function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = last[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      let least = Math.min(change, last[j]! + 1, row[j - 1]! + 1);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, beforeLast[j - 2]! + 1);
      row.push(least);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}

/** Number of letters that two words begin with alike. */
function commonStart(a: string, b: string): number {
  let length = 0;
  while (length < a.length && a[length] === b[length]) length += 1;
  return length;
}

/**
 * The known word that somebody probably meant, or null where none is near.
 *
 * At most a third of its letters differ, or one; else it is the only one that begins like the word but for its last letter
 * (`cut` for `cutting`, `crease` for `creasing`).
 */
export function nearestWord(word: string, known: readonly string[]): string | null {
  const plain = word.toLowerCase().slice(0, 64);
  let best: string | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const distance = editDistance(plain, candidate.toLowerCase());
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  if (best !== null && least <= Math.max(1, Math.floor(best.length / 3))) return best;
  const needed = Math.max(3, plain.length - 1);
  const alike = known.filter((candidate) => commonStart(plain, candidate.toLowerCase()) >= needed);
  return alike.length === 1 ? alike[0]! : null;
}
