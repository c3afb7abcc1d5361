// The lines around a place in a text, for errors that name a line.

/** A line as it is shown. */
export interface ExcerptLine {
  readonly number: number;
  readonly text: string;
  /** Index in `text` of the faulty character; -1 on lines around it. */
  readonly column: number;
}

const LINES_AROUND = 2;
const LONGEST = 120;

/** Cuts a long line so that the column is in it. */
function cutLine(line: string, column: number): { readonly text: string; readonly column: number } {
  if (line.length <= LONGEST) return { text: line, column };
  const from = Math.max(0, Math.min(column - LONGEST / 2, line.length - LONGEST));
  const text = line.slice(from, from + LONGEST);
  return { text: `${from > 0 ? '…' : ''}${text}…`, column: column - from + (from > 0 ? 1 : 0) };
}

/**
 * The line and those around it; empty where the text has no such line.
 *
 * @param column - From 1.
 */
export function cutExcerpt(text: string, line: number, column: number): readonly ExcerptLine[] {
  const lines = text.split(/\r\n|\r|\n/, line + LINES_AROUND);
  const first = Math.max(0, line - 1 - LINES_AROUND);
  if (line > lines.length) return [];
  return lines.slice(first).map((whole, i) => {
    const number = first + i + 1;
    const cut = cutLine(whole, number === line ? column - 1 : 0);
    return { number, text: cut.text, column: number === line ? Math.max(0, cut.column) : -1 };
  });
}
