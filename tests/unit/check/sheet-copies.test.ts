// Checks of sheets look at the laid-out sheet, not at the artboard of the drawing.
import { describe, expect, it } from 'vitest';
import { check, readTicket } from '../../../src/index.js';

const art = (
  more = '',
  x = 30,
): string => `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="60mm" viewBox="0 0 100 60">
<g id="Artwork"><rect x="${x - 3}" y="12" width="46" height="36" fill="#c9a227"/></g>
<g id="Cut"><path d="M${x} 15H${x + 40}V45H${x}Z" fill="none" stroke="#2a7f62" stroke-width="0.2"/></g>${more}</svg>`;

const SHEET = { widthMm: 300, heightMm: 200, gripperMm: 12, gutterMm: 6, ups: '2x2' };

async function codesOf(svg: string, ticket: Record<string, unknown>): Promise<readonly string[]> {
  const result = await check(new Uint8Array(Buffer.from(svg)), readTicket({ pinbar: 1, marginMm: 20, ...ticket }));
  return result.findings.map(({ code }) => code);
}

describe('checks of a sheet of copies', () => {
  it('hold the sheet, not the artboard, against the material', async () => {
    const checks = { materialWidthMm: 250, materialHeightMm: 200 };
    expect(await codesOf(art(), { checks })).not.toContain('check/artboard-too-large');
    expect(await codesOf(art(), { checks, sheet: SHEET })).toContain('check/artboard-too-large');
    const fits = { ...SHEET, widthMm: 250 };
    expect(await codesOf(art(), { checks, sheet: fits })).not.toContain('check/artboard-too-large');
  });

  it('hold the sheet against the size that a pass is set up for', async () => {
    const passes = [
      { name: 'print', role: 'print' },
      { name: 'cut', role: 'cutting', widthMm: 300, heightMm: 200 },
    ];
    expect(await codesOf(art(), { passes })).toContain('check/pass-size-differs');
    expect(await codesOf(art(), { passes, sheet: SHEET })).not.toContain('check/pass-size-differs');
  });

  it('do not mind where the blank lies on the artboard of the drawing', async () => {
    const off = art('', 70);
    expect(await codesOf(off, { marginMm: 0, marks: { wanted: false } })).toContain('check/blank-off-sheet');
    const sheet = { ...SHEET, gutterMm: 4 };
    expect(await codesOf(off, { marginMm: 0, sheet })).not.toContain('check/blank-off-sheet');
  });

  it('take the gripper of the sheet, not that of the drawing', async () => {
    const checks = { gripperMm: 40, gripperSide: 'top' };
    expect(await codesOf(art(), { checks })).toContain('check/art-in-gripper');
    expect(await codesOf(art(), { checks, sheet: SHEET })).not.toContain('check/art-in-gripper');
  });

  it("find a mark of the designer's own that comes to stand in the blank of a neighbour", async () => {
    // 9 mm right of the blank: in the waste of its own copy, and 3 mm within the next one, 6 mm further on.
    const marked = art('<g id="Marks"><circle cx="79" cy="30" r="1" fill="#000000"/></g>');
    const ticket = {
      rules: [
        { pass: 'cutting', layer: 'Cut' },
        { pass: 'print', rest: true },
      ],
    };
    expect(await codesOf(marked, ticket)).not.toContain('check/marks-in-blank');
    expect(await codesOf(marked, { ...ticket, sheet: SHEET })).toContain('check/marks-in-blank');
    expect(await codesOf(marked, { ...ticket, sheet: { ...SHEET, gutterMm: 12 } })).not.toContain(
      'check/marks-in-blank',
    );
  });
});
