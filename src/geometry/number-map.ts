// A map from whole numbers to whole numbers that makes no objects: quick where there are many thousand.

/** Whole numbers by whole numbers. Keys lie within 2^53 of zero, values are from 0 to 2^31 - 1. */
export interface NumberMap {
  /** The value of a key, or -1. */
  readonly get: (key: number) => number;
  readonly set: (key: number, value: number) => void;
}

const LEAST = 1024;

function hashOf(key: number): number {
  const low = key >>> 0;
  const high = Math.floor(key / 4294967296) | 0;
  const mixed = Math.imul(low ^ Math.imul(high, 0x9e3779b1), 0x85ebca6b);
  return (mixed ^ (mixed >>> 15)) >>> 0;
}

/** The slot where a key stands, or an empty one where it would. */
function slotOf(keys: Float64Array, values: Int32Array, key: number): number {
  const mask = keys.length - 1;
  let slot = hashOf(key) & mask;
  while (values[slot]! >= 0 && keys[slot] !== key) slot = (slot + 1) & mask;
  return slot;
}

/** An empty map. */
export function createNumberMap(): NumberMap {
  let keys = new Float64Array(LEAST);
  let values = new Int32Array(LEAST).fill(-1);
  let count = 0;
  const grow = (): void => {
    const [oldKeys, oldValues] = [keys, values];
    keys = new Float64Array(2 * oldKeys.length);
    values = new Int32Array(keys.length).fill(-1);
    for (let old = 0; old < oldKeys.length; old += 1) {
      if (oldValues[old]! < 0) continue;
      const slot = slotOf(keys, values, oldKeys[old]!);
      keys[slot] = oldKeys[old]!;
      values[slot] = oldValues[old]!;
    }
  };
  return {
    get: (key) => values[slotOf(keys, values, key)]!,
    set: (key, value) => {
      const slot = slotOf(keys, values, key);
      if (values[slot]! < 0) {
        keys[slot] = key;
        count += 1;
      }
      values[slot] = value;
      if (2 * count > keys.length) grow();
    },
  };
}
