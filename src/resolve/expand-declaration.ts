// Shorthands and aliases, as far as computed styles need them.
import { isKnownProperty, PROPERTY_NAMES, type PropertyName } from './style-properties.js';

/** `property: text`, with the weight of `!important`; custom properties keep the case of their name. */
export interface Declaration {
  readonly name: string;
  readonly text: string;
  readonly important: boolean;
}

/** What a declaration says about one known or custom property. */
export interface Longhand {
  readonly name: PropertyName | `--${string}`;
  readonly text: string;
  readonly important: boolean;
}

const ALIASES: ReadonlyMap<string, PropertyName> = new Map<string, PropertyName>([
  ['-webkit-transform', 'transform'],
  ['-webkit-transform-origin', 'transform-origin'],
  ['-webkit-clip-path', 'clip-path'],
  ['-webkit-mask', 'mask'],
  ['-webkit-filter', 'filter'],
  ['-webkit-opacity', 'opacity'],
  ['mask-image', 'mask'],
]);

const WIDE_KEYWORD = /^(?:inherit|initial|unset|revert|revert-layer)$/i;
const FONT_SIZE =
  /(?:^|\s)((?:xx-small|x-small|small|medium|large|x-large|xx-large|xxx-large|smaller|larger)|(?:calc\(.*?\)|[+]?[0-9.]+(?:e[+-]?[0-9]+)?(?:%|[a-z]+)))(?:\s*\/\s*\S+)?\s+(\S.*)$/is;

/** Whether a text is one of the keywords that every property knows. */
export function isWideKeyword(text: string): boolean {
  return WIDE_KEYWORD.test(text);
}

/** What a declaration says about known and custom properties; nothing for any other property. */
export function expandDeclaration(declaration: Declaration): readonly Longhand[] {
  const { text, important } = declaration;
  if (declaration.name.startsWith('--')) return [{ name: declaration.name as `--${string}`, text, important }];
  const lower = declaration.name.toLowerCase();
  const name = ALIASES.get(lower) ?? lower;
  if (isKnownProperty(name)) return [{ name, text, important }];
  const spread = (names: readonly PropertyName[]): readonly Longhand[] =>
    names.map((each) => ({ name: each, text, important }));
  if (name === 'marker') return spread(['marker-start', 'marker-mid', 'marker-end']);
  if (name === 'all' && isWideKeyword(text)) return spread(PROPERTY_NAMES);
  if (name !== 'font') return [];
  if (isWideKeyword(text)) return spread(['font-size', 'font-family']);
  const font = FONT_SIZE.exec(text);
  if (font === null) return [];
  return [
    { name: 'font-size', text: font[1]!, important },
    { name: 'font-family', text: font[2]!, important },
  ];
}
