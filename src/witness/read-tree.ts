// The second judge's own reader: an XML library's document as a flat list of elements.
import { DOMParser, type Element, type Node } from '@xmldom/xmldom';
import { prepareText } from './prepare-text.js';

/** An element as the second judge sees it. */
export interface WitnessElement {
  /** Place among all elements of the file in document order, from 0. */
  readonly ordinal: number;
  /** Ordinal of the parent; -1 for the root. */
  readonly parent: number;
  /** Ordinal after the last descendant. */
  readonly end: number;
  /** Local name where the element is SVG, else ''. */
  readonly kind: string;
  readonly local: string;
  /** Namespace, a blank, name as written. */
  readonly name: string;
  /** Attribute names in the order of the file: as written, with namespace and a blank before where there is one. */
  readonly attributeNames: readonly string[];
  /** Values after XML normalisation. */
  readonly attributeValues: readonly string[];
  readonly id: string;
  /** Character data, a U+0001 for each child element; '' where it is white space alone. */
  readonly text: string;
}

/** A file as the second judge sees it. */
export interface WitnessTree {
  readonly elements: readonly WitnessElement[];
  /** First ordinal with an id. */
  readonly ids: ReadonlyMap<string, number>;
  readonly hasDoctype: boolean;
  /** Targets of processing instructions, the XML declaration left out. */
  readonly instructions: readonly string[];
}

/** A tree, or why there is none. */
export type TreeResult = { readonly tree: WitnessTree } | { readonly fault: string };

/** Stands for a child element in `WitnessElement.text`. */
export const CHILD_SIGN = '\u0001';
/** Namespace of SVG. */
export const SVG = 'http://www.w3.org/2000/svg';
/** Key of an href attribute in the XLink namespace, whatever its prefix. */
export const XLINK = 'http://www.w3.org/1999/xlink';

type Growing = { -readonly [Key in keyof WitnessElement]: WitnessElement[Key] };

function stopOnTrouble(_level: string, message: string): void {
  // A U+FFFD may well be the designer's own: the bytes were decoded strictly before.
  if (message.startsWith('Unicode replacement character')) return;
  throw new Error(message);
}

function parse(text: string): Element {
  const parser = new DOMParser({
    locator: false,
    onError: stopOnTrouble,
    // XML 1.0 line ends; the library's own rule is that of XML 1.1 and would change U+0085 and U+2028.
    normalizeLineEndings: (source) => source.replace(/\r\n?/g, '\n'),
  });
  return parser.parseFromString(text, 'image/svg+xml').documentElement!;
}

function readElement(element: Element, ordinal: number, parent: number): Growing {
  const namespace = element.namespaceURI ?? '';
  const local = element.localName ?? element.tagName;
  const { attributes } = element;
  const names: string[] = new Array(attributes.length);
  const values: string[] = new Array(attributes.length);
  let id = '';
  for (let i = 0; i < attributes.length; i += 1) {
    const attribute = attributes.item(i)!;
    const space = attribute.namespaceURI ?? '';
    names[i] = space === '' ? attribute.name : `${space} ${attribute.name}`;
    values[i] = attribute.value;
    if (names[i] === 'id') id = attribute.value;
  }
  return {
    ordinal,
    parent,
    end: ordinal + 1,
    kind: namespace === SVG ? local : '',
    local,
    name: `${namespace} ${element.tagName}`,
    attributeNames: names,
    attributeValues: values,
    id,
    text: '',
  };
}

interface Frame {
  readonly element: Growing;
  next: Node | null;
  text: string;
}

function closeFrame(frame: Frame, count: number): void {
  frame.element.end = count;
  frame.element.text = /[^\s\u0001]/.test(frame.text) ? frame.text : '';
}

/** Walks the document without recursion. */
function flatten(root: Element): Pick<WitnessTree, 'elements' | 'ids' | 'instructions'> {
  const elements: Growing[] = [readElement(root, 0, -1)];
  const ids = new Map<string, number>();
  const instructions: string[] = [];
  const stack: Frame[] = [{ element: elements[0]!, next: root.firstChild, text: '' }];
  if (elements[0]!.id !== '') ids.set(elements[0]!.id, 0);
  for (let frame = stack.at(-1); frame !== undefined; frame = stack.at(-1)) {
    const node: Node | null = frame.next;
    if (node === null) {
      closeFrame(frame, elements.length);
      stack.pop();
      continue;
    }
    frame.next = node.nextSibling;
    if (node.nodeType === 1) {
      const element = readElement(node as Element, elements.length, frame.element.ordinal);
      elements.push(element);
      if (element.id !== '' && !ids.has(element.id)) ids.set(element.id, element.ordinal);
      frame.text += CHILD_SIGN;
      stack.push({ element, next: node.firstChild, text: '' });
    } else if (node.nodeType === 3 || node.nodeType === 4) {
      frame.text += node.nodeValue ?? '';
    } else if (node.nodeType === 7) {
      instructions.push(node.nodeName);
    }
  }
  return { elements, ids, instructions };
}

/** Targets of the instructions before and after the root. */
function listOuterInstructions(root: Element): readonly string[] {
  const targets: string[] = [];
  for (let node: Node | null = root.ownerDocument!.firstChild; node !== null; node = node.nextSibling) {
    if (node.nodeType === 7 && node.nodeName !== 'xml') targets.push(node.nodeName);
  }
  return targets;
}

/**
 * Reads a file with @xmldom/xmldom, bounded, and stops on its warnings as well as its errors.
 *
 * @param bytes - UTF-8, entities of the document type written out.
 * @throws Never; what cannot be read is a `fault` in plain words.
 */
export function readTree(bytes: Uint8Array): TreeResult {
  const prepared = prepareText(bytes);
  if (prepared.fault !== null) return { fault: prepared.fault };
  try {
    const root = parse(prepared.text);
    const tree = flatten(root);
    if (tree.elements[0]!.kind !== 'svg') return { fault: `its root element is ${root.tagName}, not svg` };
    const instructions = [...listOuterInstructions(root), ...tree.instructions];
    return { tree: { ...tree, instructions, hasDoctype: prepared.hasDoctype } };
  } catch (error) {
    const said = error instanceof Error ? error.message : String(error);
    return { fault: said.replace(/^Reporting \w+ "([\s\S]*)" caused [\s\S]*$/, '$1').slice(0, 300) };
  }
}

/** Value of an attribute without namespace, or null. */
export function attributeOf(element: WitnessElement, name: string): string | null {
  const at = element.attributeNames.indexOf(name);
  return at < 0 ? null : element.attributeValues[at]!;
}

/** Value of href or xlink:href, or null; href wins, as SVG 2 says. */
export function hrefOf(element: WitnessElement): string | null {
  const plain = attributeOf(element, 'href');
  if (plain !== null) return plain;
  const at = element.attributeNames.findIndex((name) => name.startsWith(`${XLINK} `) && /[ :]href$/.test(name));
  return at < 0 ? null : element.attributeValues[at]!;
}
