// Corrected passes: every byte of the pass is there, and every shape lies where the fit puts it.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Matrix } from '../../../src/geometry/matrix.js';
import { DEFAULT_TICKET, joinPieces, split } from '../../../src/index.js';
import { correctPass } from '../../../src/road/correct-pass.js';
import { resolveSource, scanBytes } from '../../../src/road/read-artwork.js';

const FIT: Matrix = [1.0011, 0.0009, -0.0007, 1.0004, 0.35, -0.22];

async function splitSample(name: string): Promise<readonly { name: string; bytes: Uint8Array }[]> {
  const bytes = new Uint8Array(readFileSync(`samples/${name}.svg`));
  const ticket = { ...DEFAULT_TICKET, witness: 'never' as const };
  const job = await split(bytes, ticket, { fileName: `${name}.svg`, skipChecks: true });
  return job.files.map((file) => ({ name: file.name, bytes: joinPieces(file.pieces) }));
}

function shapesOf(bytes: Uint8Array) {
  const source = scanBytes(bytes, {});
  return resolveSource(source, {}, null);
}

describe.each(['tuck-carton', 'label-sheet'])('the passes of %s', (name) => {
  it('are moved by the fit, in mm from the top left', async () => {
    for (const pass of await splitSample(name)) {
      const made = await correctPass(pass, FIT);
      const moved = joinPieces(made.pieces);
      expect(made.deviationMm).toBeLessThan(1e-9);
      const before = shapesOf(pass.bytes);
      const after = shapesOf(moved);
      const { mmPerPx } = before.artboard;
      const [a, b, c, d, e, f] = FIT;
      before.shapes.forEach((shape, i) => {
        // The origin of each shape's own units, once moved by hand and once as resolved.
        const [x, y] = [shape.matrix[4] * mmPerPx, shape.matrix[5] * mmPerPx];
        const at = after.shapes[i]!.matrix;
        expect(at[4] * mmPerPx).toBeCloseTo(a * x + c * y + e, 8);
        expect(at[5] * mmPerPx).toBeCloseTo(b * x + d * y + f, 8);
      });
    }
  });

  it('keep every byte', async () => {
    for (const pass of await splitSample(name)) {
      const text = Buffer.from(joinPieces((await correctPass(pass, FIT)).pieces)).toString('utf8');
      const bare = text.replace(/<g id="pinbar-register" transform="[^"]*">/, '').replace(/<\/g>(<\/svg>\s*)$/, '$1');
      expect(bare).toBe(Buffer.from(pass.bytes).toString('utf8'));
    }
  });

  it('are not corrected twice', async () => {
    const [pass] = await splitSample(name);
    const made = await correctPass(pass!, FIT);
    const again = { name: pass!.name, bytes: joinPieces(made.pieces) };
    await expect(correctPass(again, FIT)).rejects.toMatchObject({ code: 'register/corrected-already' });
  });
});
