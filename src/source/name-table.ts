// Names seen so far, each kept once, and the namespaces in scope.
import { decodeUtf8 } from '../model/platform.js';
import { type ExpandedName, XML_NAMESPACE, XMLNS_NAMESPACE } from './source.js';

/** A written name: prefix and local part by the colon. */
export interface WrittenName {
  readonly text: string;
  /** '' without a colon. */
  readonly prefix: string;
  readonly local: string;
  /** False where the colon is misplaced. */
  readonly isQualified: boolean;
}

/** Written names by number; a number stands for the same bytes for the whole file. */
export interface NameTable {
  /** Number of the name at these offsets. */
  intern(bytes: Uint8Array, start: number, end: number): number;
  readonly written: readonly WrittenName[];
}

function splitName(text: string): WrittenName {
  const colon = text.indexOf(':');
  if (colon < 0) return { text, prefix: '', local: text, isQualified: true };
  const prefix = text.slice(0, colon);
  const local = text.slice(colon + 1);
  const isQualified = prefix !== '' && local !== '' && !local.includes(':') && !/^[-.0-9\u00b7]/.test(local);
  return { text, prefix, local, isQualified };
}

/** A table without names. */
export function createNameTable(): NameTable {
  const written: WrittenName[] = [];
  const spellings: Uint8Array[] = [];
  let slots = new Int32Array(1024).fill(-1);
  const place = (hash: number, number: number): void => {
    let slot = hash & (slots.length - 1);
    while (slots[slot] !== -1) slot = (slot + 1) & (slots.length - 1);
    slots[slot] = number;
  };
  const hashOf = (bytes: Uint8Array, start: number, end: number): number => {
    let hash = 0x811c9dc5;
    for (let i = start; i < end; i += 1) hash = Math.imul(hash ^ bytes[i]!, 0x01000193);
    return hash >>> 0;
  };
  const grow = (): void => {
    slots = new Int32Array(slots.length * 2).fill(-1);
    for (const [number, spelling] of spellings.entries()) place(hashOf(spelling, 0, spelling.length), number);
  };
  const matches = (number: number, bytes: Uint8Array, start: number, end: number): boolean => {
    const spelling = spellings[number]!;
    if (spelling.length !== end - start) return false;
    for (let i = 0; i < spelling.length; i += 1) if (spelling[i] !== bytes[start + i]) return false;
    return true;
  };
  return {
    written,
    intern(bytes, start, end) {
      const hash = hashOf(bytes, start, end);
      let slot = hash & (slots.length - 1);
      for (let number = slots[slot]!; number !== -1; number = slots[slot]!) {
        if (matches(number, bytes, start, end)) return number;
        slot = (slot + 1) & (slots.length - 1);
      }
      const number = written.length;
      spellings.push(bytes.slice(start, end));
      written.push(splitName(decodeUtf8(spellings[number]!)));
      if (written.length * 2 > slots.length) grow();
      else slots[slot] = number;
      return number;
    },
  };
}

/** Namespace declarations in scope, and expanded names by number. */
export interface NamespaceScope {
  declare(prefix: string, uri: string): void;
  /** Forgets the latest declarations. */
  forget(count: number): void;
  /** The URI a prefix stands for, or undefined; '' as prefix asks for the default. */
  lookUp(prefix: string): string | undefined;
  /** Grows with every change of what is in scope. */
  readonly version: () => number;
}

/** The scope around the root: `xml` and `xmlns` alone. */
export function createNamespaceScope(): NamespaceScope {
  // A list of URIs per prefix: a search through all declarations would cost their number for every name.
  const uris = new Map<string, string[]>([
    ['xml', [XML_NAMESPACE]],
    ['xmlns', [XMLNS_NAMESPACE]],
  ]);
  const order: string[][] = [];
  let version = 0;
  return {
    declare(prefix, uri) {
      const known = uris.get(prefix) ?? [];
      uris.set(prefix, known);
      known.push(uri);
      order.push(known);
      version += 1;
    },
    forget(count) {
      if (count === 0) return;
      for (let i = 0; i < count; i += 1) order.pop()?.pop();
      version += 1;
    },
    lookUp: (prefix) => uris.get(prefix)?.at(-1),
    version: () => version,
  };
}

/** Expanded names, each kept once. */
export interface ExpandedNames {
  readonly names: ExpandedName[];
  number(namespace: string, written: WrittenName): number;
}

/** A list without names. */
export function createExpandedNames(): ExpandedNames {
  const names: ExpandedName[] = [];
  // By namespace and by the written name itself, of which there is one each: no key is put together for every attribute.
  const numbers = new Map<string, Map<WrittenName, number>>();
  return {
    names,
    number(namespace, written) {
      const inNamespace = numbers.get(namespace) ?? new Map<WrittenName, number>();
      const known = inNamespace.get(written);
      if (known !== undefined) return known;
      names.push({ namespace, local: written.local, qualified: written.text });
      inNamespace.set(written, names.length - 1);
      numbers.set(namespace, inNamespace);
      return names.length - 1;
    },
  };
}
