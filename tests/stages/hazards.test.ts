// The twenty hazards: every shape in its pass, at its place, in its paint; run twice, the second run changes nothing.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type JobResult, joinPieces, readTicket, split } from '../../src/index.js';
import { resolve } from '../../src/resolve/resolve.js';
import { readSource } from '../../src/source/read-source.js';

const folder = join(import.meta.dirname, 'hazards');

interface Expectation {
  readonly passes?: Readonly<Record<string, readonly string[]>>;
  readonly computed?: Readonly<Record<string, { readonly fill?: string; readonly stroke?: string }>>;
  readonly findings: readonly string[];
  readonly boxesMm?: Readonly<Record<string, readonly [number, number, number, number]>>;
}

interface Case {
  readonly ticket: unknown;
  readonly expect: Expectation;
  readonly variants?: readonly { readonly ticket: unknown; readonly expect: Expectation }[];
}

interface DrawnShape {
  readonly id: string;
  readonly fill: string;
  readonly stroke: string;
  readonly boxMm: readonly [number, number, number, number];
}

function paintText(paint: {
  readonly kind: string;
  readonly colour?: { readonly key: string };
  readonly id?: string;
}): string {
  if (paint.kind === 'colour') return paint.colour!.key;
  return paint.kind === 'server' ? `url(#${paint.id})` : 'none';
}

/** What a written file draws; a shape drawn through a use goes by the id of the use. */
function readDrawn(bytes: Uint8Array): readonly DrawnShape[] {
  const source = readSource(bytes);
  const artwork = resolve(source);
  const idOf = new Map([...artwork.ids].map(([id, row]) => [row, id]));
  const { mmPerPx } = artwork.artboard;
  return artwork.shapes
    .filter((shape) => shape.draws && !shape.hidden)
    .map((shape) => {
      const { x0, y0, x1, y1 } = shape.fillBox;
      return {
        id: idOf.get(shape.carrier) ?? '',
        fill: paintText(shape.paint.fill),
        stroke: paintText(shape.paint.stroke),
        boxMm: [x0 * mmPerPx, y0 * mmPerPx, (x1 - x0) * mmPerPx, (y1 - y0) * mmPerPx],
      };
    });
}

function listLoud(job: JobResult): readonly string[] {
  return [...new Set(job.findings.filter((item) => item.severity !== 'note').map((item) => item.code))].sort();
}

async function run(name: string, ticket: unknown): Promise<JobResult> {
  return split(new Uint8Array(readFileSync(join(folder, name))), readTicket(ticket), {
    fileName: name,
    skipChecks: true,
  });
}

function checkDrawn(job: JobResult, expected: Expectation): void {
  const passes = Object.fromEntries(
    job.assignment.passes.map((pass, i) => [pass.name, readDrawn(joinPieces(job.files[i]!.pieces))]),
  );
  const ids = Object.fromEntries(
    Object.entries(passes).map(([name, shapes]) => [name, shapes.map((shape) => shape.id)]),
  );
  expect(ids).toEqual(expected.passes);
  for (const shape of Object.values(passes).flat()) {
    expect({ ...shape, ...expected.computed?.[shape.id] }).toEqual(shape);
    expected.boxesMm?.[shape.id]?.forEach((value, i) => {
      expect(shape.boxMm[i], `${shape.id} ${'xywh'[i]}`).toBeCloseTo(value, 6);
    });
  }
}

const names = readdirSync(folder)
  .filter((name) => name.endsWith('.svg'))
  .sort();

it('are twenty', () => {
  expect(names.length).toBe(20);
});

describe.each(names)('%s', (name) => {
  const hazard = JSON.parse(readFileSync(join(folder, name.replace('.svg', '.json')), 'utf8')) as Case;

  it('puts every shape into its pass, in place and in paint', async () => {
    const job = await run(name, hazard.ticket);
    expect(listLoud(job)).toEqual([...hazard.expect.findings].sort());
    expect(job.outcome).toBe('in-register');
    expect(job.proof.judges.map((judge) => judge.looked)).toEqual([true, true]);
    expect(Math.max(...job.proof.judges.map((judge) => judge.greatestDeviationMm))).toBeLessThan(1e-6);
    expect(job.proof.equalExtents).toBe(true);
    checkDrawn(job, hazard.expect);
  });

  it('gives the same bytes twice, and a sheet split again gives that sheet', async () => {
    const job = await run(name, hazard.ticket);
    const again = await run(name, hazard.ticket);
    expect(again.files.map((file) => file.sha256)).toEqual(job.files.map((file) => file.sha256));
    expect(again.manifest?.sha256).toBe(job.manifest?.sha256);
    for (const [index, file] of job.files.entries()) {
      const bytes = joinPieces(file.pieces);
      const rule = { pass: job.assignment.passes[index]!.role, rest: true };
      const second = await split(bytes, readTicket({ pinbar: 1, rules: [rule] }), { fileName: file.name });
      expect(
        second.files.map((item) => item.sha256),
        file.name,
      ).toEqual([file.sha256]);
    }
  });

  (hazard.variants ?? []).forEach((variant, i) => {
    it(`answers otherwise under ticket ${i + 2}`, async () => {
      const job = await run(name, variant.ticket);
      expect(listLoud(job)).toEqual([...variant.expect.findings].sort());
      if (variant.expect.passes === undefined) expect(job.files).toEqual([]);
      else checkDrawn(job, { ...hazard.expect, ...variant.expect });
    });
  });
});
