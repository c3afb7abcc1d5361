// Counts in a sentence.

/** A number and what is counted: `1 shape`, `2 shapes`. */
export function sayCount(count: number, one: string, many: string = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
