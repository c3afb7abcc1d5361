// The size of the drawing, and what is said where it is not sure.
import { describe, expect, it } from 'vitest';
import { readArtboard } from '../../../src/resolve/artboard.js';
import { scanText } from './resolve-text.js';

function read(attributes: string, perInch: number | null = null, body = '') {
  const { artboard, findings } = readArtboard(
    scanText(`<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${body}</svg>`),
    perInch,
  );
  return { ...artboard, findings, codes: findings.map((item) => item.code) };
}

describe('a size in a unit of length', () => {
  // Factors of CSS Values 3, section 5.2.
  it.each([
    ['mm', 96 / 25.4],
    ['cm', 960 / 25.4],
    ['in', 96],
    ['pt', 4 / 3],
    ['pc', 16],
    ['Q', 96 / 101.6],
  ])('%s is sure', (unit, factor) => {
    const board = read(`width="10${unit}" height="20${unit}"`);
    expect(board.width).toBeCloseTo(10 * factor, 10);
    expect(board.height).toBeCloseTo(20 * factor, 10);
    expect(board.sizeIsSure).toBe(true);
    expect(board.mmPerPx).toBe(25.4 / 96);
    expect(board.codes).toEqual([]);
  });

  it('keeps its scale whatever the caller says of user units', () => {
    expect(read('width="10mm" height="10mm"', 72).mmPerPx).toBe(25.4 / 96);
  });

  it('maps the viewBox', () => {
    const board = read('width="100mm" height="50mm" viewBox="0 0 100 50"');
    expect(board.matrix[0]).toBeCloseTo(96 / 25.4, 12);
    expect(board.viewBox).toEqual([0, 0, 100, 50]);
    expect(board.statedWidth).toBe('100mm');
  });

  it('can come from CSS, which beats the attributes', () => {
    const board = read('width="5" height="5" style="width:20mm;height:10mm"');
    expect(board.sizeIsSure).toBe(true);
    expect(board.width).toBeCloseTo((20 * 96) / 25.4, 10);
  });
});

describe('a size that is not sure', () => {
  it('is told in mm at 96 and at 72 to the inch', () => {
    const board = read('width="960" height="480px"');
    expect(board.codes).toEqual(['resolve/size-unsure']);
    expect(board.findings[0]!.message).toContain('254 x 127 mm');
    expect(board.findings[0]!.message).toContain('338.67 x 169.33 mm');
    expect(board.sizeIsSure).toBe(false);
    expect(board.mmPerPx).toBe(25.4 / 96);
  });

  it('is what the caller says, without a warning', () => {
    const board = read('width="720" height="72"', 72);
    expect(board.mmPerPx).toBe(25.4 / 72);
    expect(board.sizeIsSure).toBe(false);
    expect(board.codes).toEqual([]);
  });

  it('is 96 to the inch as long as one side has a unit', () => {
    const board = read('width="10mm" height="96"', 72);
    expect(board.mmPerPx).toBe(25.4 / 96);
    expect(board.codes).toEqual(['resolve/size-unsure']);
  });
});

describe('a size that is missing', () => {
  it.each([
    ['viewBox="0 0 80 40"', 80, 40],
    ['width="100%" height="100%" viewBox="0 0 80 40"', 80, 40],
    ['width="50%" viewBox="0 0 80 40"', 40, 40],
    ['width="160" viewBox="0 0 80 40"', 160, 80],
    ['height="10mm" viewBox="0 0 80 40"', (20 * 96) / 25.4, (10 * 96) / 25.4],
    ['', 300, 150],
    ['width="0" height="-5"', 300, 150],
    ['width="wide" height="20"', 300, 20],
  ])('%s', (attributes, width, height) => {
    const board = read(attributes);
    expect(board.width).toBeCloseTo(width, 10);
    expect(board.height).toBeCloseTo(height, 10);
    expect(board.codes).toEqual(['resolve/size-missing']);
    expect(board.findings[0]!.place.line).toBe(1);
  });

  it('is not warned of where the viewBox and the caller say all', () => {
    expect(read('viewBox="0 0 72 72"', 72).codes).toEqual([]);
    expect(read('', 72).codes).toEqual(['resolve/size-missing']);
  });
});

it('ignores a viewBox that cannot be read, and says so', () => {
  for (const text of ['0 0 10', '0 0 0 10', '0 0 -5 10']) {
    const board = read(`width="10mm" height="10mm" viewBox="${text}"`);
    expect(board.viewBox).toBeNull();
    expect(board.matrix).toEqual([1, 0, 0, 1, 0, 0]);
    expect(board.codes).toEqual(['resolve/view-box-invalid']);
  }
});
