// A number as a hand types it.

const PLAIN = /^(?:\d+[.,]?\d*|[.,]\d+)$/;

/**
 * A number of nought or more, with a point or a comma; null for nothing, undefined for what cannot be read.
 *
 * @param sign - The decimal sign of the language. The other one before just three digits may part thousands, and is not guessed.
 */
export function readAmount(text: string, sign: '.' | ','): number | null | undefined {
  const bare = text.replace(/\s*mm$/i, '').trim();
  if (bare === '') return null;
  if (!PLAIN.test(bare)) return undefined;
  if (/^[1-9]\d{0,2}[.,]\d{3}$/.test(bare) && !bare.includes(sign)) return undefined;
  const value = Number(bare.replace(',', '.'));
  return Number.isFinite(value) ? value : undefined;
}
