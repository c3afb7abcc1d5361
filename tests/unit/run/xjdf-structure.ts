// Rules of XJDF's structure by hand: a schema of CIP4 exists, but is not ours to ship.
import { DOMParser, type Element } from '@xmldom/xmldom';

/** Order of children by element; what is not listed has no children of its own here. From the schema's sequences. */
const SEQUENCES: Readonly<Record<string, readonly string[]>> = {
  XJDF: ['AuditPool', 'Comment', 'GeneralID', 'ProductList', 'ResourceSet'],
  ProductList: ['Product'],
  ResourceSet: ['Comment', 'Dependent', 'GeneralID', 'Resource'],
  Resource: ['AmountPool', 'Comment', 'GeneralID', 'Part', '*'],
  AmountPool: ['PartAmount'],
};

const REQUIRED: Readonly<Record<string, readonly string[]>> = {
  XJDF: ['JobID', 'Types'],
  ResourceSet: ['Name'],
  Media: ['MediaType'],
  Shape: ['ShapeType'],
  Crease: ['StartPosition', 'WorkingPath', 'WorkingDirection'],
  Perforate: ['StartPosition', 'WorkingPath', 'WorkingDirection'],
};

/** Elements that may not be empty. */
const FILLED = ['CreasingParams', 'PerforatingParams', 'ShapeCuttingParams', 'ProductList'];

const TOKEN = /^[\w.:-]+$/;
const NUMBER = /^-?\d+(?:\.\d+)?$/;

function childrenOf(element: Element): readonly Element[] {
  return [...element.childNodes].filter((node) => node.nodeType === 1) as unknown as readonly Element[];
}

function checkOrder(element: Element): readonly string[] {
  const sequence = SEQUENCES[element.localName!];
  if (sequence === undefined) return [];
  const places = childrenOf(element).map(({ localName }) => {
    const at = sequence.indexOf(localName!);
    return at < 0 ? sequence.indexOf('*') : at;
  });
  return [
    ...places.flatMap((place, i) =>
      place < 0 ? [`${element.localName} holds ${childrenOf(element)[i]!.localName}`] : [],
    ),
    ...places.flatMap((place, i) => (i > 0 && place < places[i - 1]! ? [`${element.localName} is out of order`] : [])),
  ];
}

function checkSet(set: Element, processes: number): readonly string[] {
  const faults: string[] = [];
  const name = set.getAttribute('Name')!;
  const index = set.getAttribute('CombinedProcessIndex') ?? '';
  if (!/^\d+$/.test(index) || Number(index) >= processes) faults.push(`CombinedProcessIndex ${index}`);
  if (!['Input', 'Output'].includes(set.getAttribute('Usage') ?? '')) faults.push('Usage');
  for (const resource of childrenOf(set).filter(({ localName }) => localName === 'Resource')) {
    const own = childrenOf(resource).filter(({ localName }) => !SEQUENCES.Resource!.includes(localName!));
    if (own.length !== 1 || own[0]!.localName !== name) faults.push(`Resource of ${name}`);
  }
  return faults;
}

/** Everything in a document that breaks a rule; empty where nothing does. */
export function listXjdfFaults(text: string): readonly string[] {
  const faults: string[] = [];
  const document = new DOMParser({ onError: (_, message) => void faults.push(message) }).parseFromString(
    text,
    'text/xml',
  );
  const root = document.documentElement!;
  if (root.namespaceURI !== 'http://www.CIP4.org/JDFSchema_2_0' || root.localName !== 'XJDF') faults.push('root');
  const types = (root.getAttribute('Types') ?? '').split(' ').filter((type) => type !== '');
  if (types.length === 0 || !types.every((type) => TOKEN.test(type))) faults.push('Types');
  if (!TOKEN.test(root.getAttribute('JobID') ?? '')) faults.push('JobID');
  if (!['2.0', '2.1', '2.2', '2.3'].includes(root.getAttribute('Version') ?? '2.0')) faults.push('Version');
  for (const element of [root, ...(root.getElementsByTagName('*') as unknown as Iterable<Element>)]) {
    const name = element.localName!;
    faults.push(...checkOrder(element));
    for (const key of REQUIRED[name] ?? [])
      if ((element.getAttribute(key) ?? '') === '') faults.push(`${name} lacks ${key}`);
    if (FILLED.includes(name) && childrenOf(element).length === 0) faults.push(`${name} is empty`);
    for (const key of ['StartPosition', 'WorkingPath', 'Dimension']) {
      const value = element.getAttribute(key);
      if (value !== null && !(value.split(' ').length === 2 && value.split(' ').every((part) => NUMBER.test(part))))
        faults.push(`${name} ${key} ${value}`);
    }
    if (name === 'ResourceSet') faults.push(...checkSet(element, types.length));
  }
  return faults;
}
