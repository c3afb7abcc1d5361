// CWE-409: packed files that are damaged, false, or grow without bound.
import { deflateRawSync, deflateSync, gzipSync } from 'node:zlib';
import { attackEach } from './attack-each.js';
import { drawCarton, type HostileCase } from './hostile-case.js';

const BROKEN = 'source/gzip-broken';

function pack(bytes: Uint8Array = drawCarton({})): Uint8Array {
  return new Uint8Array(gzipSync(bytes));
}

function changed(at: number, byte: number): Uint8Array {
  const packed = pack();
  packed[at < 0 ? packed.length + at : at] = byte;
  return packed;
}

function join(...parts: readonly Uint8Array[]): Uint8Array {
  return new Uint8Array(Buffer.concat(parts));
}

/** Zeros packed a thousandfold, built of one packed stretch again and again. */
function bomb(megabytes: number): Uint8Array {
  return new Uint8Array(gzipSync(Buffer.alloc(megabytes * 1024 * 1024, 0x20), { level: 9 }));
}

const CASES: readonly HostileCase[] = [
  { name: 'a sound packed file', make: () => pack(), ends: 'in-register' },
  {
    name: 'four streams of eighty megabytes each',
    make: () => join(...Array.from({ length: 4 }, () => bomb(80))),
    ends: 'limit/unpacked-bytes',
    alone: true,
  },
  { name: 'one stream just above what is allowed', make: () => bomb(257), ends: 'limit/unpacked-bytes', alone: true },
  {
    name: 'sixty megabytes of blanks in a drawing',
    make: () => pack(drawCarton({ art: ' '.repeat(60_000_000) })),
    ends: 'in-register',
    alone: true,
  },
  { name: 'packed twice', make: () => pack(pack()), ends: 'source/malformed' },
  {
    name: 'in two members, cut within a tag',
    make: () => {
      const bytes = drawCarton({});
      return join(pack(bytes.subarray(0, 200)), pack(bytes.subarray(200)));
    },
    ends: 'in-register',
  },
  {
    name: 'in ten thousand empty members',
    make: () => join(...Array.from({ length: 10_000 }, () => pack(new Uint8Array(0)))),
    ends: 'source/malformed',
    alone: true,
  },
  {
    name: 'one byte for each of a thousand members',
    make: () => {
      const bytes = drawCarton({});
      return join(...Array.from(bytes, (byte) => pack(Uint8Array.of(byte))));
    },
    ends: 'in-register',
  },
  { name: 'with waste after the end', make: () => join(pack(), new TextEncoder().encode('<script>')), ends: BROKEN },
  { name: 'with zeros after the end', make: () => join(pack(), new Uint8Array(512)), ends: BROKEN },
  { name: 'a head and nothing else', make: () => Uint8Array.of(0x1f, 0x8b), ends: BROKEN },
  { name: 'cut off in the middle', make: () => pack().subarray(0, 200), ends: BROKEN },
  { name: 'cut off before its sum', make: () => pack().subarray(0, -8), ends: BROKEN },
  { name: 'cut off by a byte', make: () => pack().subarray(0, -1), ends: BROKEN },
  { name: 'a false check sum', make: () => changed(-8, 0x55), ends: BROKEN },
  { name: 'a false length', make: () => changed(-1, 0x55), ends: BROKEN },
  { name: 'a byte changed in the middle', make: () => changed(150, 0xff), ends: BROKEN },
  { name: 'another method', make: () => changed(2, 7), ends: BROKEN },
  { name: 'flags that nobody has defined', make: () => changed(3, 0xe0), ends: 'in-register' },
  {
    name: 'a file name that never ends',
    make: () => join(Uint8Array.of(0x1f, 0x8b, 8, 8, 0, 0, 0, 0, 0, 3), new Uint8Array(1_000_000).fill(0x61)),
    ends: BROKEN,
  },
  {
    name: 'an extra field longer than the file',
    make: () => join(Uint8Array.of(0x1f, 0x8b, 8, 4, 0, 0, 0, 0, 0, 3, 0xff, 0xff), new Uint8Array(100)),
    ends: 'source/malformed',
  },
  {
    name: 'zlib in place of gzip',
    make: () => new Uint8Array(deflateSync(drawCarton({}))),
    ends: 'source/encoding-broken',
  },
  {
    name: 'a head before raw packing without a sum',
    make: () => join(Uint8Array.of(0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 0, 3), new Uint8Array(deflateRawSync(drawCarton({})))),
    ends: BROKEN,
  },
  {
    name: 'a million empty blocks',
    make: () =>
      join(
        Uint8Array.of(0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 0, 3),
        new Uint8Array(5_000_000).map((_, i) => [0, 0, 0, 0xff, 0xff][i % 5]!),
      ),
    ends: BROKEN,
    alone: true,
  },
  {
    name: 'a copy from before the beginning',
    make: () =>
      join(Uint8Array.of(0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 0, 3, 0x4b, 0x04, 0x7f, 0xff, 0xff), new Uint8Array(20)),
    ends: BROKEN,
  },
];

attackEach('packing', CASES);
