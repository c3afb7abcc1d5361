// What the fuzzer feeds to each reader, and what a reader must never do with it.
import fc from 'fast-check';
import { createPathReader } from '../../src/geometry/path-data.js';
import { readTransformList } from '../../src/geometry/transform-list.js';
import { parseTake, readTicket, writeTicket } from '../../src/index.js';
import { encodeUtf8 } from '../../src/model/platform.js';
import { PinbarError } from '../../src/model/trouble.js';
import { readColour } from '../../src/resolve/colour.js';
import { readCssTransform } from '../../src/resolve/css-transform.js';
import { readSource } from '../../src/source/read-source.js';

/** One reader under attack. */
export interface FuzzReader {
  readonly name: string;
  /** Its share of all runs. */
  readonly share: number;
  readonly input: fc.Arbitrary<unknown>;
  /** Throws when the reader breaks its word. */
  readonly feed: (input: unknown) => void;
  /** The call for a test of its own. */
  readonly call: string;
}

/** Text of the pieces that a grammar is made of, with anything between. */
function pieces(words: string, more: fc.Arbitrary<string> = fc.string({ maxLength: 4 })): fc.Arbitrary<string> {
  const word = fc.constantFrom(...words.split(' '), ' ', '', '\n');
  return fc
    .array(fc.oneof({ weight: 9, arbitrary: word }, { weight: 1, arbitrary: more }), { maxLength: 24 })
    .map((all) => all.join(''));
}

const number = fc.oneof(
  fc.double().map(String),
  fc.constantFrom(
    '0',
    '-0',
    '1',
    '.5',
    '-.5',
    '1.',
    '1e400',
    '1e-400',
    '-1e308',
    'NaN',
    'Infinity',
    '9'.repeat(400),
    `.${'0'.repeat(400)}1`,
    '1e',
    '1e+',
    '--1',
    '0x1',
  ),
);

function holds(claim: boolean, text: string): void {
  if (!claim) throw new Error(text);
}

/** An error of pinbar's own is an answer; any other is thrown on. */
function answer<Value>(call: () => Value): Value | null {
  try {
    return call();
  } catch (error) {
    if (error instanceof PinbarError) return null;
    throw error;
  }
}

function areFinite(numbers: readonly number[] | null): boolean {
  return numbers === null || numbers.every((each) => Number.isFinite(each));
}

const MARKUP =
  '<svg xmlns="http://www.w3.org/2000/svg"> </svg> <g> </g> <g/> <a:b xmlns:a="a"> </a:b> <!-- --> -- <![CDATA[ ]]> <?x ?> <?xml version="1.0"?> ' +
  "<!DOCTYPE svg [ ]> <!ENTITY a 'b'> &a; &amp; &#65; &#x; &#xd800; & ; a=\"b\" a='b' = \" ' < > / ! ? [ ] % %a; xmlns xmlns:a xml:base ä \u0001 \ufffe";

const markup = pieces(MARKUP, fc.string({ maxLength: 4, unit: 'binary' }));

const bytes = fc.oneof(
  { weight: 4, arbitrary: markup.map(encodeUtf8) },
  { weight: 4, arbitrary: markup.map((text) => encodeUtf8(`<svg xmlns="http://www.w3.org/2000/svg">${text}</svg>`)) },
  { weight: 1, arbitrary: fc.uint8Array({ maxLength: 64 }) },
  { weight: 1, arbitrary: markup.map((text) => new Uint8Array(Buffer.from(`\ufeff${text}`, 'utf16le'))) },
  {
    weight: 1,
    arbitrary: fc
      .uint8Array({ maxLength: 40 })
      .map((tail) => Uint8Array.of(0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 0, 3, ...tail)),
  },
);

const paths = pieces('M m L l H h V v C c S s Q q T t A a Z z 0 1 -1 .5 1e3 , ,, 0 0 1 1 00 11 . - +', number);
const call = fc
  .tuple(
    fc.constantFrom(
      'matrix',
      'translate',
      'scale',
      'rotate',
      'skewX',
      'translateX',
      'translate3d',
      'rotate3d',
      'scaleZ',
    ),
    fc.array(fc.tuple(number, fc.constantFrom('', '', 'px', 'deg', '%', 'em', 'turn')), { maxLength: 6 }),
    fc.constantFrom(', ', ',', ' '),
  )
  .map(([name, values, gap]) => `${name}(${values.map((value) => value.join('')).join(gap)})`);
const transforms = fc.oneof(
  fc.array(call, { maxLength: 4 }).map((calls) => calls.join(' ')),
  pieces(
    'matrix( translate( scale( rotate( skewX( skewY( translateX( translate3d( rotate3d( matrix3d( perspective( ) ) , 1 -1 0 .5 45deg 1turn 1px 10% 1em calc( + * none',
    number,
  ),
);
const colours = pieces(
  'rgb( rgba( hsl( hwb( lab( lch( oklab( oklch( color( color-mix( device-cmyk( icc-color( ) , / % 0 255 50% 120deg none red #fff #e5007d # display-p3 srgb in from var( currentColor transparent url(#a)',
  number,
);

const ticketKey = fc.constantFrom(
  'pinbar',
  'passes',
  'rules',
  'hidden',
  'partPaint',
  'linkedPictures',
  'marks',
  'marginMm',
  'userUnitsPerInch',
  'compact',
  'witness',
  'severities',
  'name',
  'role',
  'pass',
  'layer',
  'stroke',
  'rest',
  'colourTolerance',
  '__proto__',
  'constructor',
  'toString',
);
const ticketValue = fc.letrec<{ value: unknown }>((tie) => ({
  value: fc.oneof(
    { depthSize: 'small' },
    fc.constantFrom<unknown>(
      1,
      0,
      -1,
      Number.POSITIVE_INFINITY,
      Number.NaN,
      '',
      'cut',
      'print',
      'ask',
      true,
      false,
      null,
      undefined,
    ),
    fc.jsonValue(),
    fc.array(tie('value'), { maxLength: 4 }),
    fc.array(fc.tuple(ticketKey, tie('value')), { maxLength: 5 }).map((entries) => {
      const object: Record<string, unknown> = {};
      for (const [key, value] of entries)
        Object.defineProperty(object, key, { value, enumerable: true, writable: true, configurable: true });
      return object;
    }),
  ),
})).value;
const tickets = fc.oneof(
  ticketValue,
  ticketValue.map((value) => (typeof value === 'object' && !Array.isArray(value) ? { ...value, pinbar: 1 } : value)),
);

const takes = pieces(
  'cut print crease ignore = : layer stroke fill width id class element dashed rest , ; #e5007d 0.3mm any none * / \\ "',
  fc.string({ maxLength: 4 }),
);

/** All readers; the shares add up to one. */
export const FUZZ_READERS: readonly FuzzReader[] = [
  {
    name: 'scanner',
    share: 0.25,
    input: bytes,
    feed: (input) => {
      const source = answer(() => readSource(input as Uint8Array));
      if (source === null) return;
      const { count, start, end, next, parent } = source.elements;
      for (let row = 0; row < count; row += 1) {
        holds(start[row]! < end[row]! && end[row]! <= source.text.length, 'an element lies outside the text');
        holds(next[row]! > row && next[row]! <= count && parent[row]! < row, 'the table is no tree');
      }
    },
    call: 'readSource(input)',
  },
  {
    name: 'path',
    share: 0.2,
    input: paths,
    feed: (input) => {
      const encoded = encodeUtf8(input as string);
      for (const path of [
        () => createPathReader().read(encoded, 0, encoded.length),
        () => createPathReader().readPoints(encoded, 0, encoded.length, true),
      ]) {
        const { coords, coordCount, ops, opCount, errorAt } = path();
        holds(areFinite([...coords.subarray(0, coordCount)]), 'a coordinate is not finite');
        holds(opCount === 0 || ops[0] === 0, 'a path begins without a move');
        holds(errorAt >= -1 && errorAt <= encoded.length, 'the error lies outside the value');
      }
    },
    call: 'createPathReader().read(encodeUtf8(input), 0, encodeUtf8(input).length)',
  },
  {
    name: 'transform',
    share: 0.2,
    input: transforms,
    feed: (input) => {
      holds(areFinite(readTransformList(input as string)), 'a transform is not finite');
      holds(
        areFinite(readCssTransform(input as string, { width: 10, height: 20 }, 16)),
        'a style transform is not finite',
      );
    },
    call: 'readCssTransform(input, { width: 10, height: 20 }, 16)',
  },
  {
    name: 'colour',
    share: 0.15,
    input: colours,
    feed: (input) => {
      const colour = readColour(input as string);
      if (colour === null) return;
      holds(
        colour.rgb.every((part) => part >= 0 && part <= 255),
        'a channel lies outside 0 to 255',
      );
      holds(colour.alpha >= 0 && colour.alpha <= 1, 'alpha lies outside 0 to 1');
      holds(colour.key !== '' && !/NaN|undefined/.test(colour.key), 'the key is none');
    },
    call: 'readColour(input)',
  },
  {
    name: 'ticket',
    share: 0.15,
    input: tickets,
    feed: (input) => {
      const ticket = answer(() => readTicket(input));
      if (ticket === null) return;
      const again = answer(() => readTicket(writeTicket(ticket)));
      holds(JSON.stringify(again) === JSON.stringify(ticket), 'a ticket written and read is another');
      holds(Object.getPrototypeOf({}) === Object.prototype && !('compact' in {}), 'every object has changed');
    },
    call: 'readTicket(input)',
  },
  {
    name: 'take',
    share: 0.05,
    input: takes,
    feed: (input) => {
      answer(() => parseTake(input as string));
    },
    call: 'parseTake(input)',
  },
];
