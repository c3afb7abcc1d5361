// The XJDF ticket: well-formed, in the structure of the schema, points from the lower left.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { joinPieces, makeJobRunSheet, readTicket, split } from '../../../src/index.js';
import { makeProfile } from './check-profile.js';
import { listXjdfFaults } from './xjdf-structure.js';

async function make(sample: string, ticket: object = {}, fileName = `${sample}.svg`): Promise<string> {
  const job = await split(readFileSync(`samples/${sample}.svg`), readTicket({ pinbar: 1, ...ticket }), { fileName });
  expect(job.outcome).toBe('in-register');
  const { files } = await makeJobRunSheet(job, { profile: makeProfile() });
  return Buffer.from(joinPieces(files[2]!.pieces)).toString('utf8');
}

/** mm from the top left of a sheet of some height in points from its lower left. */
function toPoints(xMm: number, yMm: number, heightMm: number): readonly [number, number] {
  return [(xMm / 25.4) * 72, ((heightMm - yMm) / 25.4) * 72];
}

function readPairs(text: string): readonly (readonly number[])[] {
  return [...text.matchAll(/StartPosition="(\S+) (\S+)" WorkingPath="(\S+) (\S+)"/g)].map((m) =>
    m.slice(1).map(Number),
  );
}

describe('the XJDF ticket', async () => {
  const carton = await make('tuck-carton');
  const sleeve = await make('sleeve', JSON.parse(readFileSync('samples/sleeve.ticket.json', 'utf8')) as object);

  it('keeps the structure', () => {
    expect(listXjdfFaults(carton)).toEqual([]);
    expect(listXjdfFaults(sleeve)).toEqual([]);
  });

  it('names version and processes in order', () => {
    expect(carton).toContain('Version="2.1" JobID="tuck-carton" Types="Creasing DigitalPrinting ShapeCutting"');
    expect(sleeve).toContain('Types="Creasing DigitalPrinting Perforating ShapeCutting"');
    const sets = [...sleeve.matchAll(/<ResourceSet Name="(\w+)" Usage="(\w+)" CombinedProcessIndex="(\d)"/g)];
    expect(sets.map(([, name, usage, index]) => `${name} ${usage} ${index}`)).toEqual([
      'Media Input 0',
      'RunList Input 0',
      'CreasingParams Input 0',
      'RunList Input 1',
      'RunList Input 2',
      'PerforatingParams Input 2',
      'RunList Input 3',
      'ShapeCuttingParams Input 3',
      'Component Output 3',
    ]);
  });

  it('turns y over and counts in points', () => {
    // M36 68V168 of a sheet 236 mm high, the first crease.
    const [first] = readPairs(carton);
    const [x, y] = toPoints(36, 68, 236);
    expect(first![0]).toBeCloseTo(x, 4);
    expect(first![1]).toBeCloseTo(y, 4);
    expect(first![2]).toBe(0);
    expect(first![3]).toBeCloseTo((-100 / 25.4) * 72, 4);
    expect(readPairs(carton)).toHaveLength(12);
    const [cx, cy] = toPoints(37, 38, 236);
    const path = /CutPath="(\S+) (\S+) m/.exec(carton)!;
    expect(Number(path[1])).toBeCloseTo(cx, 4);
    expect(Number(path[2])).toBeCloseTo(cy, 4);
    // The outline of the blank is closed, the four slits are not.
    expect([...carton.matchAll(/CutPath="[^"]*"/g)].map(([text]) => text.endsWith(' h"'))).toEqual([
      false,
      false,
      false,
      false,
      true,
    ]);
    expect(carton).toContain('Dimension="680.31496 668.97638"');
  });

  it('gives thickness in micrometres, the amounts and the settings in words', () => {
    expect(carton).toContain('Thickness="450" Weight="320"');
    expect(carton).toContain('<PartAmount Amount="256"/>');
    expect(carton).toContain('<Product Amount="250"/>');
    expect(carton).toContain(
      'tool wheel; speed 5 cm/s; pressure 300 gf (2.941995 N); strokes 1; offset 0 mm; registers to edge',
    );
    expect(sleeve).toContain('stretches 10 mm, ties 1 mm');
  });

  it('makes a token of any name', async () => {
    expect(await make('tuck-carton', {}, 'Tea & "mint" №2.svg')).toContain('JobID="Tea-mint-2"');
  });

  it('leaves curved creases to the file: a part of them would mislead', async () => {
    const source = readFileSync('samples/tuck-carton.svg', 'utf8').replace(
      '<path d="M43 38H89"/>',
      '<path d="M43 38Q66 36 89 38"/>',
    );
    const job = await split(new Uint8Array(Buffer.from(source)), readTicket({ pinbar: 1 }), { skipChecks: true });
    const { files } = await makeJobRunSheet(job, { profile: makeProfile() });
    const text = Buffer.from(joinPieces(files[2]!.pieces)).toString('utf8');
    expect(text).not.toContain('Crease ');
    expect(text).toContain('ShapeCuttingParams');
    expect(listXjdfFaults(text)).toEqual([]);
  });
});

describe('the rules of the structure', async () => {
  const plain = await make('tuck-carton');

  it.each([
    ['no JobID', / JobID="[^"]*"/, ''],
    ['no Types', / Types="[^"]*"/, ''],
    ['version 3.0', 'Version="2.1"', 'Version="3.0"'],
    ['a job with a blank', 'JobID="tuck-carton"', 'JobID="tuck carton"'],
    ['the namespace of JDF 1', 'JDFSchema_2_0', 'JDFSchema_1_1'],
    ['empty CreasingParams', /<CreasingParams>[\s\S]*<\/CreasingParams>/, '<CreasingParams/>'],
    [
      'ProductList after ResourceSet',
      /<ProductList>[\s\S]*<\/ProductList>([\s\S]*)<\/XJDF>/,
      '$1<ProductList><Product/></ProductList></XJDF>',
    ],
    ['an index beyond the processes', 'CombinedProcessIndex="2"', 'CombinedProcessIndex="3"'],
    ['a set of another name', '<Media ', '<Medium '],
    ['a broken tag', '</XJDF>', ''],
  ] as const)('find %s', (_, from, to) => {
    const broken = plain.replace(from, to);
    expect(broken).not.toBe(plain);
    expect(() => {
      const faults = listXjdfFaults(broken);
      if (faults.length > 0) throw new Error(faults.join('; '));
    }).toThrow();
  });
});
