// CWE-407: cost that grows faster than the file. Three doublings of every weakness in one run, each at most 2.5 times the one before on the mean.
import { appendFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { beforeAll, describe, expect, it } from 'vitest';
import { runScript } from './attack-each.js';
import { drawCarton, repeat } from './hostile-case.js';

const MOST_GROWTH = 2.5;
/** Below this a measurement is mostly noise, seconds. */
const FLOOR_SECONDS = 0.05;

interface Family {
  readonly name: string;
  /** Size of the smallest file; the others are twice, four times and eight times as large. */
  readonly size: number;
  readonly make: (size: number) => Uint8Array;
  /** How each of its files ends, when not in files: an outcome, or the code of an error. */
  readonly ends?: string;
}

const AT = 'x="40" y="35" width="1" height="1"';
const SPECK = `<rect ${AT}/>`;
const art = (text: string): Uint8Array => drawCarton({ art: text });
const styled = (css: string, text: string): Uint8Array => drawCarton({ first: `<style>${css}</style>`, art: text });
const specks = (size: number, more = ''): string => repeat(size, `<rect class="a b c" ${more} ${AT}/>`);

const FAMILIES: readonly Family[] = [
  { name: 'shapes', size: 800, make: (n) => art(specks(n)) },
  { name: 'empty groups', size: 4_000, make: (n) => art('<g/>'.repeat(n)) },
  { name: 'layers of one name', size: 250, make: (n) => drawCarton({ last: `<g id="Art">${SPECK}</g>`.repeat(n) }) },
  { name: 'attributes', size: 16_000, make: (n) => art(`<g ${repeat(100, (i) => `a${i}="" `)}/>`.repeat(n / 100)) },
  {
    name: 'namespaces',
    size: 8_000,
    make: (n) => art(`<g ${repeat(100, (i) => `xmlns:a${i}="u" `)}/>`.repeat(n / 100)),
  },
  { name: 'character references', size: 30_000, make: (n) => art(`<desc>${'&#65;'.repeat(n)}</desc>`) },
  {
    name: 'uses of entities',
    size: 32_000,
    make: (n) => drawCarton({ head: '<!DOCTYPE svg [<!ENTITY a "b">]>', art: `<desc>${'&a;'.repeat(n)}</desc>` }),
  },
  { name: 'comments', size: 160_000, make: (n) => art('<!-- - -->'.repeat(n)) },
  {
    name: 'bytes after a missing end',
    size: 500_000,
    make: (n) => art(`<![CDATA[${']] '.repeat(n)}`),
    ends: 'source/malformed',
  },
  { name: 'blanks, packed', size: 2_000_000, make: (n) => new Uint8Array(gzipSync(art(' '.repeat(n)))) },
  {
    name: 'members of a packed file',
    size: 1_000,
    make: (n) => {
      const bytes = art('');
      const step = Math.ceil(bytes.length / n);
      return new Uint8Array(
        Buffer.concat(Array.from({ length: n }, (_, i) => gzipSync(bytes.subarray(i * step, (i + 1) * step)))),
      );
    },
  },
  {
    name: 'rules',
    size: 500,
    make: (n) =>
      styled(
        repeat(n, (i) => `.r${i}{fill:red}`),
        specks(10),
      ),
  },
  { name: 'rules that cannot be read', size: 2_000, make: (n) => styled('@x{} '.repeat(n), '') },
  {
    name: 'shapes under selectors of neighbours',
    size: 200,
    make: (n) =>
      styled(
        repeat(20, (i) => `.x${i} + .a ~ .b{fill:red}`),
        specks(n),
      ),
  },
  {
    name: 'selectors of neighbours',
    size: 20,
    make: (n) =>
      styled(
        repeat(n, (i) => `.x${i} + .a ~ .b{fill:red}`),
        specks(400),
      ),
  },
  {
    name: 'style elements',
    size: 100,
    make: (n) => drawCarton({ first: '<style>.a{fill:red}</style>'.repeat(n), art: specks(10) }),
  },
  { name: 'declarations', size: 12_000, make: (n) => art(`<rect style="${'fill:red;'.repeat(n)}" ${AT}/>`) },
  {
    name: 'shapes with a style of their own',
    size: 250,
    make: (n) => art(repeat(n, (i) => `<rect style="fill:#${(0x100000 + i).toString(16)}" ${AT}/>`)),
  },
  {
    name: 'a chain of custom properties',
    size: 500,
    make: (n) =>
      styled(
        `#w{--a0:red;${repeat(n, (i) => `--a${i + 1}:var(--a${i});`)}}`,
        `<g id="w"><rect style="fill:var(--a9)" ${AT}/></g>`,
      ),
  },
  {
    name: 'custom properties and shapes that inherit them',
    size: 200,
    make: (n) =>
      styled(
        `#w{${repeat(n, (i) => `--a${i}:red;`)}}`,
        `<g id="w">${repeat(n, (i) => `<rect style="--b:${i};fill:var(--a0)" ${AT}/>`)}</g>`,
      ),
  },
  {
    name: 'addresses to the outside',
    size: 8_000,
    make: (n) => art(`<rect style="${'fill:url(x);'.repeat(n)}" ${AT}/>`),
  },
  {
    name: 'sets of pictures in each other',
    size: 8_000,
    make: (n) => art(`<rect style="${'x:image-set('.repeat(n)}" ${AT}/>`),
  },
  { name: 'handlers', size: 400, make: (n) => art(`<rect onclick="a()" ${AT}/>`.repeat(n)) },
  {
    name: 'uses',
    size: 800,
    make: (n) => drawCarton({ first: `<defs><g id="l0">${SPECK}</g></defs>`, art: '<use href="#l0"/>'.repeat(n) }),
  },
  {
    name: 'groups in each other',
    size: 20,
    make: (n) => art(`${'<g>'.repeat(200)}${SPECK}${'</g>'.repeat(200)}`.repeat(n)),
  },
  {
    name: 'drawings in each other',
    size: 16,
    make: (n) => art(`${'<svg viewBox="0 0 9 9">'.repeat(100)}${SPECK}${'</svg>'.repeat(100)}`.repeat(n)),
  },
  { name: 'ids', size: 1_000, make: (n) => art(repeat(n, (i) => `<rect id="s${i}" ${AT}/>`)) },
  {
    name: 'ids that are all used',
    size: 600,
    make: (n) =>
      drawCarton({
        first: `<defs>${repeat(n, (i) => `<rect id="s${i}" ${AT}/>`)}</defs>`,
        art: repeat(n, (i) => `<use href="#s${i}"/>`),
      }),
  },
  { name: 'one id over and over', size: 1_000, make: (n) => art(`<rect id="s" ${AT}/>`.repeat(n)) },
  {
    name: 'rules by id',
    size: 800,
    make: (n) =>
      styled(
        repeat(n, (i) => `#s${i}{fill:red}`),
        repeat(n, (i) => `<rect id="s${i}" ${AT}/>`),
      ),
  },
  {
    name: 'uses in circles',
    size: 1_000,
    make: (n) => art(repeat(n, (i) => `<g id="l${i}"><use href="#l${i}"/></g>`)),
  },
  { name: 'references to nothing', size: 500, make: (n) => art(repeat(n, (i) => `<rect fill="url(#n${i})" ${AT}/>`)) },
  {
    name: 'gradients in a chain',
    size: 800,
    make: (n) =>
      drawCarton({
        first: repeat(n, (i) => `<linearGradient id="l${i + 1}" href="#l${i}"/>`),
        art: `<rect fill="url(#l${n})" ${AT}/>`,
      }),
  },
  {
    name: 'clip paths, each on a shape',
    size: 300,
    make: (n) => art(repeat(n, (i) => `<clipPath id="l${i}">${SPECK}</clipPath><rect clip-path="url(#l${i})" ${AT}/>`)),
  },
  { name: 'segments', size: 240_000, make: (n) => art(`<path d="M40 35${'h1h-1'.repeat(n / 2)}"/>`) },
  {
    name: 'arcs',
    size: 20_000,
    make: (n) => art(`<path d="M40 35${`${'a1 1 0 010 .1a1 1 0 010-.1'.repeat(n / 100)}z`.repeat(50)}"/>`),
  },
  {
    name: 'turns of a stroke',
    size: 32_000,
    make: (n) => art(`<path fill="none" stroke="#333" stroke-width=".1" d="M40 35${'l.1.1-.1-.1'.repeat(n / 2)}"/>`),
  },
  {
    name: 'dashes',
    size: 20_000,
    make: (n) => art(`<path stroke="#333" stroke-dasharray="${'.1 '.repeat(n)}" d="M40 35h3"/>`),
  },
  { name: 'transforms', size: 16_000, make: (n) => art(`<rect transform="${'rotate(0)'.repeat(n)}" ${AT}/>`) },
];

/** What the measured process tells of a family. */
interface Growth {
  readonly name: string;
  readonly ends: readonly string[];
  readonly seconds: readonly number[];
}

/**
 * How many times as long a file took as the one half its size, on the mean of the three doublings.
 *
 * The mean, since one doubling may carry a collection of garbage for all; cost by the square has a mean of 4.
 */
function meanGrowth({ seconds }: Growth): number {
  return Math.cbrt(Math.max(seconds.at(-1)!, FLOOR_SECONDS) / Math.max(seconds[0]!, FLOOR_SECONDS));
}

function isSteady(growth: Growth | undefined): boolean {
  return growth !== undefined && meanGrowth(growth) <= MOST_GROWTH;
}

/** The best of two measurements of a family, size by size. */
function keepBest(one: Growth | undefined, other: Growth): Growth {
  return one === undefined
    ? other
    : { ...other, seconds: other.seconds.map((time, i) => Math.min(time, one.seconds[i]!)) };
}

async function measureAll(folder: string, families: readonly Family[]): Promise<readonly Growth[]> {
  const list = families.map(({ name, size, make }, i) => {
    const paths = [1, 2, 4, 8].map((factor) => {
      const path = join(folder, `${i}-${factor}.svg`);
      writeFileSync(path, make(size * factor));
      return path;
    });
    return { name, paths };
  });
  return (await runScript('grow.js', folder, list)) as readonly Growth[];
}

describe('twice the size costs at most 2.5 times as much', () => {
  const measured = new Map<string, Growth>();
  beforeAll(async () => {
    const folder = mkdtempSync(join(tmpdir(), 'pinbar-growth-'));
    // What a busy machine spoils is measured again, alone.
    for (let attempt = 0; attempt < 6; attempt += 1) {
      const open = FAMILIES.filter(({ name }) => !isSteady(measured.get(name)));
      if (open.length === 0) break;
      for (const growth of await measureAll(folder, open)) {
        measured.set(growth.name, keepBest(measured.get(growth.name), growth));
      }
    }
    rmSync(folder, { recursive: true, force: true });
    if (process.env.HOSTILE_TABLE !== undefined) {
      for (const growth of measured.values()) appendFileSync(process.env.HOSTILE_TABLE, `${JSON.stringify(growth)}\n`);
    }
  }, 900_000);

  it.each(FAMILIES)('$name', ({ name, ends = 'in-register' }) => {
    const growth = measured.get(name);
    expect(growth, 'the process died or was killed').toBeDefined();
    // A file that ends at a bound costs nothing more, however large it is.
    expect(growth!.ends.join(', ')).toBe([ends, ends, ends, ends].join(', '));
    const times = growth!.seconds.map((time) => time.toFixed(3)).join(' ');
    expect(meanGrowth(growth!), times).toBeLessThanOrEqual(MOST_GROWTH);
  });
});
