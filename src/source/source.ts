// The element table: what the scanner hands on.
import type { Finding } from '../model/finding.js';

/** A name with its namespace; prefixes are resolved. */
export interface ExpandedName {
  /** Namespace URI, or '' for none. */
  readonly namespace: string;
  readonly local: string;
  /** As written. */
  readonly qualified: string;
}

/**
 * Elements in document order, as columns; a row number names an element.
 * Children of a row start at `row + 1`; the next sibling of a row is `next[row]` while that is below `next[parent[row]]`.
 */
export interface ElementTable {
  readonly count: number;
  /** Offset of the `<` of the start tag. */
  readonly start: Uint32Array;
  /** Offset past the `>` of the start tag. */
  readonly headEnd: Uint32Array;
  /** Offset of the `<` of the end tag; equal to `end` for an empty-element tag (`<a/>`). */
  readonly tailStart: Uint32Array;
  /** Offset past the last `>` of the element. */
  readonly end: Uint32Array;
  /** Row of the parent; -1 for the root. */
  readonly parent: Int32Array;
  /** Row after the last descendant. */
  readonly next: Uint32Array;
  /** Index into `names`. */
  readonly name: Uint32Array;
  readonly names: readonly ExpandedName[];
  /** First row in `attributes`; the attributes of a row end where those of the next begin. Length `count + 1`. */
  readonly attributeStart: Uint32Array;
  readonly attributes: AttributeTable;
}

/** Attributes in document order, namespace declarations included. */
export interface AttributeTable {
  readonly count: number;
  /** Index into `names`. */
  readonly name: Uint32Array;
  readonly names: readonly ExpandedName[];
  /** Offset past the opening quote. */
  readonly valueStart: Uint32Array;
  /** Offset of the closing quote. */
  readonly valueEnd: Uint32Array;
}

/** A scanned file. All offsets count bytes of `text`. */
export interface Source {
  /** UTF-8, without byte order mark, entities of the document type written out; otherwise the bytes as delivered. */
  readonly text: Uint8Array;
  readonly elements: ElementTable;
  /** Offsets of the document type declaration (`<!DOCTYPE` to its `>`), or null. */
  readonly doctype: readonly [number, number] | null;
  /** Offsets of the XML declaration (`<?xml` to `?>`), or null. */
  readonly declaration: readonly [number, number] | null;
  /** Offsets of processing instructions outside the XML declaration. */
  readonly instructions: readonly (readonly [number, number])[];
  readonly encoding: string;
  readonly gzipped: boolean;
  /** Whether the root lacked the SVG namespace and unprefixed names are read as SVG. */
  readonly namespaceMissing: boolean;
  /** Where the written-out entities are: for turning offsets back into places of the delivered file. */
  readonly expansions: readonly Expansion[];
  readonly findings: readonly Finding[];
}

/** One written-out entity. */
export interface Expansion {
  /** Offset in `text` where the replacement starts and ends. */
  readonly start: number;
  readonly end: number;
  /** Bytes that the reference itself took (`&name;`). */
  readonly referenceLength: number;
}

/** What the reader accepts at most; see `DEFAULT_LIMITS`. */
export interface Limits {
  readonly bytes: number;
  readonly unpackedBytes: number;
  readonly depth: number;
  readonly elements: number;
  readonly attributesPerElement: number;
  readonly entities: number;
  readonly entityBytes: number;
  readonly entityTotalBytes: number;
  readonly references: number;
  readonly selectors: number;
}

/** What is accepted unless the caller says otherwise. */
export const DEFAULT_LIMITS: Limits = {
  bytes: 256 * 1024 * 1024,
  unpackedBytes: 256 * 1024 * 1024,
  depth: 256,
  elements: 1_000_000,
  attributesPerElement: 1_024,
  entities: 100,
  entityBytes: 4 * 1024,
  entityTotalBytes: 1024 * 1024,
  references: 500_000,
  selectors: 10_000,
};

/** The namespace of SVG. */
export const SVG_NAMESPACE: string = 'http://www.w3.org/2000/svg';
/** The namespace of `xlink:href`. */
export const XLINK_NAMESPACE: string = 'http://www.w3.org/1999/xlink';
/** The namespace that `xml` always stands for. */
export const XML_NAMESPACE: string = 'http://www.w3.org/XML/1998/namespace';
/** The namespace of namespace declarations. */
export const XMLNS_NAMESPACE: string = 'http://www.w3.org/2000/xmlns/';
