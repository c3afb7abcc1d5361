// The element table while it grows.
import type { AttributeTable, ElementTable, ExpandedName } from './source.js';

/** Columns of elements and attributes; typed arrays that double when full. */
export interface Columns {
  count: number;
  start: Uint32Array;
  headEnd: Uint32Array;
  tailStart: Uint32Array;
  end: Uint32Array;
  parent: Int32Array;
  next: Uint32Array;
  name: Uint32Array;
  attributeStart: Uint32Array;
  attributeCount: number;
  attributeName: Uint32Array;
  valueStart: Uint32Array;
  valueEnd: Uint32Array;
}

/** Columns with room for some elements. */
export function createColumns(room: number): Columns {
  const column = (): Uint32Array => new Uint32Array(room);
  const attributes = room * 4;
  return {
    count: 0,
    start: column(),
    headEnd: column(),
    tailStart: column(),
    end: column(),
    parent: new Int32Array(room),
    next: column(),
    name: column(),
    attributeStart: new Uint32Array(room + 1),
    attributeCount: 0,
    attributeName: new Uint32Array(attributes),
    valueStart: new Uint32Array(attributes),
    valueEnd: new Uint32Array(attributes),
  };
}

function doubled<T extends Uint32Array | Int32Array>(column: T, length: number): T {
  const larger = new (column.constructor as new (length: number) => T)(length);
  larger.set(column);
  return larger;
}

/** Makes room for one more element. */
export function growElements(columns: Columns): void {
  if (columns.count < columns.start.length) return;
  const length = columns.start.length * 2;
  for (const key of ['start', 'headEnd', 'tailStart', 'end', 'next', 'name'] as const) {
    columns[key] = doubled(columns[key], length);
  }
  columns.parent = doubled(columns.parent, length);
  columns.attributeStart = doubled(columns.attributeStart, length + 1);
}

/** Makes room for one more attribute. */
export function growAttributes(columns: Columns): void {
  if (columns.attributeCount < columns.valueStart.length) return;
  const length = columns.valueStart.length * 2;
  columns.attributeName = doubled(columns.attributeName, length);
  columns.valueStart = doubled(columns.valueStart, length);
  columns.valueEnd = doubled(columns.valueEnd, length);
}

/** The finished table; columns are views cut to what is in them. */
export function finishColumns(
  columns: Columns,
  names: readonly ExpandedName[],
  attributeNames: readonly ExpandedName[],
): ElementTable {
  const { count, attributeCount } = columns;
  columns.attributeStart[count] = attributeCount;
  const attributes: AttributeTable = {
    count: attributeCount,
    name: columns.attributeName.subarray(0, attributeCount),
    names: attributeNames,
    valueStart: columns.valueStart.subarray(0, attributeCount),
    valueEnd: columns.valueEnd.subarray(0, attributeCount),
  };
  return {
    count,
    start: columns.start.subarray(0, count),
    headEnd: columns.headEnd.subarray(0, count),
    tailStart: columns.tailStart.subarray(0, count),
    end: columns.end.subarray(0, count),
    parent: columns.parent.subarray(0, count),
    next: columns.next.subarray(0, count),
    name: columns.name.subarray(0, count),
    names,
    attributeStart: columns.attributeStart.subarray(0, count + 1),
    attributes,
  };
}
