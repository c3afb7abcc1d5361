// Style rules by id, once more for elements that are written again under other ids.
import { type AttributeSelector, type CssNode, generate, type List, parse, walk } from './css-reader.js';
import { SILENT_AT_RULES } from './style-sheets.js';

/** Whether a selector tells an element by its id. */
function namesId(node: CssNode): boolean {
  return node.type === 'IdSelector' || (node.type === 'AttributeSelector' && isIdAttribute(node));
}

function isIdAttribute({ name, matcher }: AttributeSelector): boolean {
  return name.name.toLowerCase() === 'id' && matcher === '=';
}

/** A selector with a suffix behind every id in it but one; '' where it names no other id. */
function suffixSelector(selector: CssNode, suffix: string, except: string): string {
  const restore: (() => void)[] = [];
  walk(selector, (node) => {
    if (!namesId(node)) return;
    if (node.type === 'IdSelector' && node.name !== except) {
      const { name } = node;
      restore.push(() => Object.assign(node, { name }));
      node.name += suffix;
    }
    if (node.type !== 'AttributeSelector' || node.value === null) return;
    const { value } = node;
    const [key, text] = value.type === 'String' ? ['value', value.value] : ['name', value.name];
    if (text === except) return;
    restore.push(() => Object.assign(value, { [key]: text }));
    Object.assign(value, { [key]: text + suffix });
  });
  const text = restore.length === 0 ? '' : generate(selector);
  for (const put of restore) put();
  return text;
}

function repeatNodes(nodes: List<CssNode>, suffixes: readonly string[], except: string): string {
  let text = '';
  nodes.forEach((node) => {
    if (node.type === 'Rule' && node.prelude.type === 'SelectorList') {
      const selectors = node.prelude.children.toArray();
      const named = suffixes.flatMap((suffix) => selectors.map((one) => suffixSelector(one, suffix, except)));
      const said = named.filter((one) => one !== '');
      if (said.length > 0) text += `${said.join(',')}${generate(node.block)}`;
    } else if (node.type === 'Atrule' && node.block !== null && !SILENT_AT_RULES.has(node.name.toLowerCase())) {
      const inner = repeatNodes(node.block.children, suffixes, except);
      const prelude = node.prelude === null ? '' : ` ${generate(node.prelude)}`;
      if (inner !== '') text += `@${node.name}${prelude}{${inner}}`;
    }
  });
  return text;
}

/**
 * The rules of a sheet that tell elements by their ids, once more for ids with suffixes behind them; '' where there are none.
 *
 * They weigh what the rules themselves weigh and stand in their order, so that they come out against each other as those do.
 *
 * @param except - An id that stays as it is, that of the root.
 */
export function repeatRules(text: string, suffixes: readonly string[], except: string): string {
  if (suffixes.length === 0 || !/#|\[\s*id/i.test(text)) return '';
  try {
    const tree = parse(text, { parseValue: false, parseCustomProperty: false });
    return tree.type === 'StyleSheet' ? repeatNodes(tree.children, suffixes, except) : '';
  } catch (error) {
    // Nesting beyond what the reader can follow, which reading the sheet tells as well.
    if (!(error instanceof RangeError)) throw error;
    return '';
  }
}
