// One key of a ticket: its type, what it may hold, and a line about it.

/** One key of an object. */
export type Field =
  | {
      readonly type: 'text';
      readonly doc: string;
      readonly longest: number;
      /** What it must look like, and in words. */
      readonly pattern?: { readonly source: string; readonly says: string };
    }
  | { readonly type: 'flag'; readonly doc: string }
  | {
      readonly type: 'number';
      readonly doc: string;
      readonly least: number;
      readonly most: number;
      readonly orNull?: true;
      /** A whole number. */
      readonly whole?: true;
    }
  | { readonly type: 'word'; readonly doc: string; readonly words: readonly (string | number)[] }
  /** Either of two. */
  | { readonly type: 'either'; readonly doc: string; readonly one: Field; readonly other: Field }
  | { readonly type: 'texts'; readonly doc: string; readonly longest: number }
  | { readonly type: 'object'; readonly doc: string; readonly fields: Fields; readonly required: readonly string[] }
  | { readonly type: 'objects'; readonly doc: string; readonly fields: Fields; readonly required: readonly string[] };

/** Keys of an object. */
export interface Fields {
  readonly [key: string]: Field;
}

/** Most items of a list. */
export const MOST_ITEMS = 1000;

/** A text. */
export const text = (doc: string): Field => ({ type: 'text', doc, longest: 500 });
/** A length. */
export const millimetres = (doc: string, least: number, most: number): Field => ({
  type: 'number',
  doc: `${doc}, mm`,
  least,
  most,
});

/** A length that may be left unsaid. */
export const maybeMillimetres = (doc: string, least: number, most: number): Field => ({
  type: 'number',
  doc: `${doc}, mm; null: not said`,
  least,
  most,
  orNull: true,
});

/** A resolution. */
export const pixelsPerInch = (doc: string): Field => ({ type: 'number', doc, least: 0, most: 100_000 });
