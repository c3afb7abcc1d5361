// Names and messages of a stranger's file reach the proof page as text.
import { expect, it } from 'vitest';
import { DEFAULT_TICKET, split } from '../../../src/index.js';
import { drawProofPage } from '../../../src/report/draw-proof-page.js';

const art = `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">
  <g id="Print"><rect x="20" y="20" width="60" height="60"/></g></svg>`;

it('writes names, messages and remedies as text', async () => {
  const job = await split(new TextEncoder().encode(art), DEFAULT_TICKET);
  const hostile = '</title><script>alert(1)</script>';
  const found = {
    code: 'check/hairline',
    severity: 'warning',
    message: `a ${hostile}`,
    remedy: `b ${hostile}`,
    place: {},
    data: {},
  } as const;
  const page = await drawProofPage({ ...job, stem: hostile, widthMm: 100, heightMm: 100, findings: [found] });
  expect(page).not.toContain('<script>alert');
  expect(page.match(/&lt;script&gt;alert/g)).toHaveLength(4);
  expect(page.match(/<script>/g)).toHaveLength(1);
});

it('counts the findings that it does not list', async () => {
  const job = await split(new TextEncoder().encode(art), DEFAULT_TICKET);
  const found = { code: 'check/hairline', severity: 'warning', message: 'thin', place: {}, data: {} } as const;
  const page = await drawProofPage({ ...job, widthMm: 100, heightMm: 100, findings: Array(203).fill(found) });
  expect(page.match(/<b>warning<\/b>/g)).toHaveLength(200);
  expect(page).toContain('and 3 more; see manifest.json');
});
