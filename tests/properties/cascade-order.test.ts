// What the cascade must not depend on.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fillOf, styleDocument } from '../unit/resolve/compute-style.js';

/** Selectors of pairwise different specificity that all match the path; the last is the weightiest. */
const SELECTORS = ['*', 'path', 'svg path', '.a', 'path.a', 'svg path.a', '.a.b', '.a.b.c', '#p', '#p.a', '#p.a.b'];
const COLOURS = [
  '#100000',
  '#200000',
  '#300000',
  '#400000',
  '#500000',
  '#600000',
  '#700000',
  '#800000',
  '#900000',
  '#a00000',
  '#b00000',
];

const PATH = '<path id="p" class="a b c" fill="#010203"/>';
const indexes = fc.shuffledSubarray([...SELECTORS.keys()], { minLength: 1 });

test('the order of rules of different specificity does not matter', () => {
  fc.assert(
    fc.property(indexes, (order) => {
      const rules = order.map((index) => `${SELECTORS[index]}{fill:${COLOURS[index]}}`);
      const { style } = styleDocument(`<style>${rules.join('')}</style>${PATH}`);
      expect(fillOf(style('p'))).toBe(COLOURS[Math.max(...order)]);
    }),
  );
});

test('rules may stand in one sheet or in many, before the element or after it', () => {
  fc.assert(
    fc.property(indexes, fc.nat(10), (order, cut) => {
      const rules = order.map((index) => `<style>${SELECTORS[index]}{fill:${COLOURS[index]}}</style>`);
      const { style } = styleDocument(`${rules.slice(0, cut).join('')}${PATH}${rules.slice(cut).join('')}`);
      expect(fillOf(style('p'))).toBe(COLOURS[Math.max(...order)]);
    }),
  );
});

test('the weightiest !important rule wins over everything else', () => {
  fc.assert(
    fc.property(indexes, indexes, (plain, weighty) => {
      const rules = [
        ...weighty.map((index) => `${SELECTORS[index]}{fill:${COLOURS[index]}!important}`),
        ...plain.map((index) => `${SELECTORS[index]}{fill:white}`),
      ];
      const path = PATH.replace('/>', ' style="fill:black"/>');
      const { style } = styleDocument(`<style>${rules.join('')}</style>${path}`);
      expect(fillOf(style('p'))).toBe(COLOURS[Math.max(...weighty)]);
    }),
  );
});

test('an element is styled alike whatever was styled before it', () => {
  const attribute = fc.constantFrom(
    'fill="red"',
    'stroke="blue"',
    'opacity="0.5"',
    'style="fill:green"',
    'style="stroke-width:2"',
    'id="x"',
  );
  const elements = fc.array(fc.uniqueArray(attribute, { selector: (text) => text.split('=')[0], maxLength: 3 }), {
    minLength: 1,
    maxLength: 12,
  });
  fc.assert(
    fc.property(elements, (list) => {
      const paths = list.map(
        (attributes) => `<path ${attributes.filter((text) => !text.startsWith('id')).join(' ')}/>`,
      );
      const last = paths.at(-1)!.replace('<path', '<path id="last"');
      const alone = styleDocument(last).style('last');
      const among = styleDocument([...paths.slice(0, -1), last].join('')).style('last');
      expect([among.paint, among.opacity, among.references]).toEqual([alone.paint, alone.opacity, alone.references]);
    }),
  );
});
