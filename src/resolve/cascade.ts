// Computed styles of the elements of a file.
import type { Finding } from '../model/finding.js';
import { readAttribute, readAttributeValue } from '../source/read-attribute.js';
import { type Limits, type Source, SVG_NAMESPACE } from '../source/source.js';
import { buildStyle, type RankedLonghand, type StyleRecord, type StyleShop } from './build-style.js';
import { loadSheets } from './load-sheets.js';
import { createDeclarationReader, type DeclarationReader } from './read-declarations.js';
import type { WeighedRule } from './rule-index.js';
import type { Style } from './style.js';
import { createStyleCache } from './style-cache.js';
import { isPresentationAttribute, type PropertyName } from './style-properties.js';

/** Style sheets and attributes of one file, ready to compute styles. */
export interface Cascade {
  /** True when a selector of a style sheet looks at siblings, positions or content, also where its rule does not apply. */
  readonly structural: boolean;
  /** Whether a style sheet holds a rule that applies. */
  readonly hasSheets: boolean;
  /** What was found in the sheets and, so far, in the attributes of elements. */
  readonly findings: readonly Finding[];
  /**
   * The computed style of an element.
   *
   * Rules match the element where it stands in the document.
   *
   * @param row - Any row of the element table, definitions included.
   * @param parent - Style of the element it inherits from (for the content of a use that of the use), null for the root. It must
   *   come from the same cascade.
   * @throws PinbarError `limit/selectors` when matching takes too long.
   * @unit px user units
   * @source CSS Cascading and Inheritance 4, section 6; SVG 2, chapter 6 and section 5.5
   */
  computeStyle(row: number, parent: Style | null): Style;
}

/** Elements that the user agent cuts to their viewport. @source SVG 2, section 6.7 */
const CLIPPED: ReadonlySet<string> = new Set(['svg', 'image', 'marker', 'pattern', 'symbol', 'foreignObject']);
/** Their `fill` says what comes after the end, and nothing of them is drawn. */
const ANIMATION = /^(?:animate(?:Motion|Transform|Color)?|set)$/;
const SERVERS: ReadonlySet<string> = new Set(['linearGradient', 'radialGradient', 'pattern']);

/** What of an element counts besides its attributes. */
const KIND_FOREIGN = 1;
const KIND_CLIPPED = 2;

/**
 * Reads the style sheets of a file as for print.
 *
 * @throws PinbarError `limit/selectors` when the sheets hold more selectors than allowed.
 */
export function createCascade(source: Source, limits: Limits): Cascade {
  const reader = createDeclarationReader(source);
  const sheets = loadSheets(source, limits, reader);
  const { elements } = source;
  const relevant = elements.attributes.names.map(({ namespace, local }) => {
    if (namespace !== '') return NOT_RELEVANT;
    if (local === 'style') return STYLE;
    return isPresentationAttribute(local) ? PRESENTATION : NOT_RELEVANT;
  });
  const relevance = Uint8Array.from(relevant);
  const kinds = elements.names.map(({ namespace, local }) => {
    if (namespace !== SVG_NAMESPACE || ANIMATION.test(local)) return KIND_FOREIGN;
    return CLIPPED.has(local) ? KIND_CLIPPED : 0;
  });
  const kindOf = (row: number): number => (row === 0 ? 0 : kinds[elements.name[row]!]!);
  const shop: StyleShop = { isServer: createServerTest(source), paints: new Map() };
  const cache = createStyleCache<readonly RankedLonghand[]>(source, {
    relevance,
    kindOf,
    compute({ row, parent, rules }) {
      const kind = kindOf(row);
      const declared = listDeclared(source, reader, { row, relevance, kind, rules: rules ?? NO_RULES });
      return buildStyle(shop, parent as StyleRecord | null, declared, kind === KIND_CLIPPED);
    },
  });

  return {
    structural: sheets.structural,
    hasSheets: sheets.rules !== null,
    get findings() {
      return reader.findings;
    },
    computeStyle: (row, parent) =>
      cache.findStyle(row, parent, sheets.rules === null ? null : sheets.rules.matchRules(row)),
  };
}

const NOT_RELEVANT = 0;
const PRESENTATION = 1;
const STYLE = 2;
const NO_RULES: readonly WeighedRule<readonly RankedLonghand[]>[] = [];

interface Declarer {
  readonly row: number;
  readonly relevance: Uint8Array;
  readonly kind: number;
  readonly rules: readonly WeighedRule<readonly RankedLonghand[]>[];
}

/** All that an element's attributes and rules declare, the strongest last. */
function listDeclared(source: Source, reader: DeclarationReader, declarer: Declarer): readonly RankedLonghand[] {
  const { row, relevance, kind, rules } = declarer;
  const { attributeStart, attributes } = source.elements;
  const fromAttributes: RankedLonghand[] = [];
  let fromStyle: readonly RankedLonghand[] = [];
  for (let a = attributeStart[row]!; a < attributeStart[row + 1]!; a++) {
    const index = attributes.name[a]!;
    if (relevance[index] === STYLE) fromStyle = reader.readStyle(readAttribute(source, a), row);
    else if (relevance[index] === PRESENTATION && kind !== KIND_FOREIGN) {
      const name = attributes.names[index]!.local as PropertyName;
      const longhand = reader.readPresentation(name, readAttribute(source, a), row);
      if (longhand !== null) fromAttributes.push(longhand);
    }
  }
  const fromRules = rules.flatMap((rule) => rule.content);
  const isWeighty = (longhand: RankedLonghand): boolean => longhand.important;
  return [
    ...fromAttributes,
    ...fromRules.filter((longhand) => !longhand.important),
    ...fromStyle.filter((longhand) => !longhand.important),
    ...fromRules.filter(isWeighty),
    ...fromStyle.filter(isWeighty),
  ];
}

/** Whether an id is that of a gradient or pattern; the file is looked through when first asked. */
function createServerTest(source: Source): (id: string) => boolean {
  let servers: Set<string> | undefined;
  return (id) => {
    servers ??= findServers(source);
    return servers.has(id);
  };
}

function findServers(source: Source): Set<string> {
  const { count, name, names } = source.elements;
  const isServer = names.map(({ local, namespace }) => namespace === SVG_NAMESPACE && SERVERS.has(local));
  const rows = new Map<string, number>();
  let last = 0;
  for (let row = 0; row < count; row++) {
    if (!isServer[name[row]!]) continue;
    const id = readAttributeValue(source, row, 'id');
    if (id === null || rows.has(id)) continue;
    rows.set(id, row);
    last = row;
  }
  // The first element with an id is the one that is meant, whatever it is.
  for (let row = 0; row < last; row++) {
    if (isServer[name[row]!]) continue;
    const id = readAttributeValue(source, row, 'id');
    if (id !== null && rows.get(id)! > row) rows.delete(id);
  }
  return new Set(rows.keys());
}
