// CWE-407: selectors and style rules whose matching costs more than their length.
import { attackEach } from './attack-each.js';
import { drawCarton, type HostileCase, repeat } from './hostile-case.js';

const SPECKS = (count: number): string => repeat(count, '<rect class="a b c" x="40" y="35" width="1" height="1"/>');

function styled(css: string, shapes = 0, art = ''): Uint8Array {
  return drawCarton({
    first: `<style>${css.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</style>`,
    art: art + SPECKS(shapes),
  });
}

/** Groups around shapes, so that selectors have ancestors to try. */
function nested(depth: number, shapes: number): string {
  return `${repeat(depth, '<g class="a b c">')}${SPECKS(shapes)}${'</g>'.repeat(depth)}`;
}

const CASES: readonly HostileCase[] = [
  {
    name: 'a million selectors in one rule',
    make: () => styled(`${repeat(1_000_000, (i) => `.c${i},`)}.z{fill:red}`),
    ends: 'limit/selectors',
    alone: true,
  },
  {
    name: 'a million rules',
    make: () => styled(repeat(1_000_000, (i) => `.c${i}{fill:red}`)),
    ends: 'limit/selectors',
    alone: true,
  },
  {
    name: 'as many selectors as are allowed, by class, times a thousand shapes',
    make: () =>
      styled(
        repeat(9_990, (i) => `.c${i}{fill:red}`),
        1_000,
      ),
    ends: 'in-register',
  },
  {
    name: 'nine thousand rules that all hold for one shape',
    make: () => styled(repeat(9_000, '.a{fill:red}'), 1),
    ends: 'in-register',
  },
  {
    name: 'five hundred rules that hold for each of two thousand shapes',
    make: () => styled(repeat(500, '.a{fill:red}'), 2_000),
    ends: 'in-register',
  },
  {
    name: 'two thousand selectors of descendants times two thousand deep shapes',
    make: () =>
      styled(
        repeat(2_000, (i) => `.x${i} .b .c .a{fill:red}`),
        0,
        nested(200, 2_000),
      ),
    ends: 'limit/selectors',
    alone: true,
  },
  {
    name: 'selectors of descendants that fail late',
    make: () =>
      styled(
        repeat(200, (i) => `.x${i} ${'.a '.repeat(12)}{fill:red}`),
        0,
        nested(100, 1_000),
      ),
    ends: 'limit/selectors',
    alone: true,
  },
  {
    name: 'earlier siblings of two thousand shapes',
    make: () =>
      styled(
        repeat(300, (i) => `.x${i} ~ .a ~ .b{fill:red}`),
        2_000,
      ),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'next siblings of ten thousand shapes',
    make: () =>
      styled(
        repeat(300, (i) => `.x${i} + .a + .b + .c{fill:red}`),
        10_000,
      ),
    ends: 'limit/selectors',
    alone: true,
  },
  {
    name: ':has over two thousand shapes',
    make: () =>
      styled(
        repeat(100, (i) => `:has(.x${i}){fill:red}`),
        2_000,
      ),
    ends: 'in-register',
    alone: true,
  },
  {
    name: ':has in :has',
    make: () => styled(`:has(:has(:has(.x))) .a{fill:red}`, 0, nested(200, 1_000)),
    ends: 'in-register',
    alone: true,
  },
  {
    name: ':nth-child of a list, three hundred times',
    make: () =>
      styled(
        repeat(300, (i) => `:nth-child(${i + 2}n of .a, .b){fill:red}`),
        2_000,
      ),
    ends: 'in-register',
    alone: true,
  },
  {
    name: ':nth-child with a number of three hundred digits',
    make: () =>
      styled(
        `:nth-child(${'9'.repeat(300)}n + 1e400){fill:red} :nth-last-child(-n+${'9'.repeat(300)}){stroke:red}`,
        10,
      ),
    ends: 'in-register',
  },
  {
    name: ':is with alternatives that double',
    make: () => styled(`${':is(.a,.b) '.repeat(40)}.z{fill:red}`, 0, nested(60, 100)),
    ends: 'in-register',
    alone: true,
  },
  {
    name: ':not of a list of nine thousand',
    make: () => styled(`:not(${repeat(9_000, (i) => `.c${i},`)}.z){fill:red}`, 1_000),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'parts of attributes looked for in long values',
    make: () =>
      styled(
        repeat(100, (i) => `[data-x*="aaaaaaaaab${i}"]{fill:red}`),
        0,
        repeat(50, `<rect data-x="${'a'.repeat(20_000)}" x="40" y="35" width="1" height="1"/>`),
      ),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'a class attribute of a million names',
    make: () =>
      styled('.z{fill:red}', 0, `<rect class="${'a '.repeat(1_000_000)}" x="40" y="35" width="1" height="1"/>`),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'a selector of a megabyte',
    make: () => styled(`${'.a'.repeat(500_000)}{fill:red}`, 10),
    ends: 'limit/selectors',
    alone: true,
  },
  {
    name: 'a rule of thirty thousand declarations',
    make: () => styled(`.a{${repeat(30_000, 'fill:red;')}}`, 100),
    ends: 'in-register',
  },
  {
    name: 'five hundred style elements',
    make: () => drawCarton({ first: repeat(500, '<style>.a{fill:red}</style>'), art: SPECKS(100) }),
    ends: 'in-register',
  },
  {
    name: 'nine thousand rules that cannot be read',
    make: () => styled(repeat(9_000, '@x{} ')),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'a sheet of opening braces and quotes',
    make: () => styled(`${'{'.repeat(100_000)}${'"'.repeat(100_001)}`),
    ends: 'limit/selectors',
  },
];

attackEach('selectors', CASES);
