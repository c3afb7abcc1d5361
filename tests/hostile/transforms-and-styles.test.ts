// CWE-1333 and CWE-400: transform lists, style attributes and colours that take longer to read than to write.
import { attackEach } from './attack-each.js';
import { drawCarton, type HostileCase, repeat } from './hostile-case.js';

function rect(attributes: string): Uint8Array {
  return drawCarton({ art: `<rect x="40" y="35" width="2" height="2" ${attributes}/>` });
}

const CASES: readonly HostileCase[] = [
  {
    name: 'three hundred thousand transforms',
    make: () => rect(`transform="${'rotate(0) '.repeat(300_000)}"`),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'a hundred thousand style transforms',
    make: () => rect(`style="transform:${'rotate(0deg) '.repeat(100_000)}"`),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'a transform of a million commas',
    make: () => rect(`transform="translate(${','.repeat(1_000_000)})"`),
    ends: 'in-register resolve/transform-invalid',
  },
  {
    name: 'a transform of a million blanks',
    make: () => rect(`transform="translate${' '.repeat(1_000_000)}x"`),
    ends: 'in-register resolve/transform-invalid',
  },
  {
    name: 'a matrix of a million numbers',
    make: () => rect(`transform="matrix(${'1 '.repeat(1_000_000)})"`),
    ends: 'in-register resolve/transform-invalid',
  },
  {
    name: 'three thousand shapes with ten transforms each',
    make: () =>
      drawCarton({
        art: repeat(
          3_000,
          (i) => `<rect transform="${`rotate(${i / 1e9}) `.repeat(10)}" x="40" y="35" width="1" height="1"/>`,
        ),
      }),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'a style attribute of a hundred thousand declarations',
    make: () => rect(`style="${'fill:red;'.repeat(100_000)}"`),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'a style attribute of three hundred thousand properties',
    make: () => rect(`style="${repeat(300_000, (i) => `p${i}:x;`)}"`),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'a style attribute of ten megabytes of blanks',
    make: () => rect(`style="${' '.repeat(10_000_000)}"`),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'a style attribute of a million comments',
    make: () => rect(`style="${'/**/'.repeat(1_000_000)}"`),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'a style attribute of a million backslashes',
    make: () => rect(`style="${'\\'.repeat(1_000_000)}"`),
    ends: 'in-register',
  },
  {
    name: 'a style attribute of two hundred thousand open strings',
    make: () => rect(`style="${"'\\\n".repeat(200_000)}"`),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'a style attribute of a hundred thousand open addresses',
    make: () => rect(`style="${'fill:url('.repeat(100_000)}"`),
    ends: 'in-register split/outside-reference-removed',
  },
  {
    name: 'a style attribute of a hundred thousand open picture sets',
    make: () => rect(`style="${'x:image-set('.repeat(100_000)}"`),
    ends: 'in-register',
  },
  {
    name: 'a hundred thousand addresses to the outside',
    make: () => rect(`style="${'fill:url(x);'.repeat(100_000)}"`),
    ends: 'in-register split/outside-reference-removed',
  },
  {
    name: 'a hundred thousand open imports',
    make: () => drawCarton({ first: `<style>${'@import '.repeat(100_000)}</style>` }),
    ends: 'in-register split/outside-reference-removed',
  },
  {
    name: 'three thousand shapes, each with a style of its own',
    make: () =>
      drawCarton({
        art: repeat(
          3_000,
          (i) =>
            `<rect style="fill:rgb(${i % 256} ${i >> 8} 9);stroke-width:${i}e-9" x="40" y="35" width="1" height="1"/>`,
        ),
      }),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'a colour of a megabyte',
    make: () => rect(`fill="rgb(${'0'.repeat(1_000_000)}"`),
    ends: 'in-register resolve/colour-unknown',
  },
  {
    name: 'a colour of a million blanks',
    make: () => rect(`fill="rgb(${' '.repeat(1_000_000)}x)"`),
    ends: 'in-register resolve/colour-unknown',
  },
  {
    name: 'a colour of a hundred thousand commas',
    make: () => rect(`fill="rgb(${'1 , '.repeat(100_000)})"`),
    ends: 'in-register resolve/colour-unknown',
  },
  {
    name: 'a hexadecimal colour of a million digits',
    make: () => rect(`fill="#${'f'.repeat(1_000_000)}"`),
    ends: 'in-register resolve/colour-unknown',
  },
  {
    name: 'a length of a million units',
    make: () => rect(`stroke-width="${'1'.repeat(500_000)}${'m'.repeat(500_000)}"`),
    ends: 'in-register resolve/length-invalid',
  },
  {
    name: 'a font list of a megabyte',
    make: () => drawCarton({ art: `<text x="40" y="40" font-family="${'a, '.repeat(300_000)}">a</text>` }),
    ends: 'in-register resolve/live-text',
  },
  {
    name: 'a preserveAspectRatio of a megabyte',
    make: () =>
      drawCarton({
        art: `<svg viewBox="0 0 9 9" width="9" height="9" x="40" y="35" preserveAspectRatio="${'xMidYMid '.repeat(100_000)}"/>`,
      }),
    ends: 'in-register',
  },
  {
    name: 'a layer name of a megabyte',
    make: () => drawCarton({ last: `<g id="${'a'.repeat(1_000_000)}"><rect x="40" y="35" width="1" height="1"/></g>` }),
    ends: 'answer-needed classify/unclaimed',
  },
  {
    name: 'a layer name of a hundred thousand words',
    make: () =>
      drawCarton({
        last: `<g id="x" data-name="${'print '.repeat(100_000)}"><rect x="40" y="35" width="1" height="1"/></g>`,
      }),
    ends: 'in-register',
  },
  {
    name: 'a layer name of a hundred thousand combining marks',
    make: () =>
      drawCarton({ last: `<g id="Art${'\u0301'.repeat(100_000)}"><rect x="40" y="35" width="1" height="1"/></g>` }),
    ends: 'in-register',
  },
];

attackEach('transforms and styles', CASES);
