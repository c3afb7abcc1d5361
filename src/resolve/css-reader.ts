// Where css-tree comes in: its parser, walker and generator, and their types.
import generateText from 'css-tree/generator';
import parseText from 'css-tree/parser';
import walkTree from 'css-tree/walker';

export type { AttributeSelector, CssNode, List, Selector } from 'css-tree';

/** A tree as text. */
export const generate: typeof import('css-tree').generate = generateText;
/** Text to a tree; what cannot be read is a raw node. */
export const parse: typeof import('css-tree').parse = parseText;
/** Visits every node of a tree. */
export const walk: typeof import('css-tree').walk = walkTree;
