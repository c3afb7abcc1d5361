// Why a shape goes where it goes, in German. The reasons themselves are English: sentences of a few fixed parts.

/** Parts of reasons, outer ones first; names in quotes stay as they are. */
const PARTS: readonly (readonly [RegExp, string])[] = [
  [/^layer "(.*?)": /, 'Ebene „$1“: '],
  [/the name says "(.*?)"/, 'der Name sagt „$1“'],
  [/, and its shapes are lines without fill$/, ', und ihre Formen sind Linien ohne Fläche'],
  [
    /, but (\d+) of its (\d+) shapes are not lines without fill$/,
    ', aber $1 ihrer $2 Formen sind keine Linien ohne Fläche',
  ],
  [/(^|: )it stands in layer "(.*)"$/, '$1sie steht in der Ebene „$2“'],
  [/^it stands only in layers whose names say so$/, 'sie steht nur in Ebenen, deren Namen es sagen'],
  [/^rule (\d+): the rest$/, 'Regel $1: der Rest'],
  [/^rule (\d+): /, 'Regel $1: '],
  [/(^Regel \d+: |, )layer "/, '$1Ebene "'],
  [/(^Regel \d+: |, )stroke "/, '$1Linie "'],
  [/(^Regel \d+: |, )fill "/, '$1Fläche "'],
  [/(^Regel \d+: |, )class "/, '$1Klasse "'],
  [/(^Regel \d+: |, )width /, '$1Linienbreite '],
  [/(^Regel \d+: |, )dashed$/, '$1gestrichelt'],
  [/(^Regel \d+: |, )solid$/, '$1durchgezogen'],
];

/** A reason in German; what is not known stays as it is. */
export function sayReason(reason: string): string {
  return PARTS.reduce((text, [part, german]) => text.replace(part, german), reason);
}
