// The rough count before a style sheet is read.
import { describe, expect, it } from 'vitest';
import { countSelectorSigns } from '../../../src/resolve/selector-signs.js';
import { readStyleSheet } from '../../../src/resolve/style-sheets.js';

describe('countSelectorSigns', () => {
  it.each([
    ['', 0, 0],
    ['.a{fill:red}', 1, 1],
    ['a,b, .c{fill:red;stroke:blue}#d>e{fill:rgb(1,2,3)}', 4, 4],
    ['@media print{.a{fill:red}.b{fill:red}}', 3, 3],
    ['@import "a,b"; .a{fill:red}', 1, 2],
    [':is(a,b){}', 2, 1],
    ['.a,.b', 0, 0],
  ])('%s', (text, selectors, parts) => {
    expect(countSelectorSigns(text)).toEqual({ selectors, parts });
  });

  it('never counts fewer than there are', () => {
    const sheet = 'a,b{fill:red}@media print{c,d,e{}f{}}g:not(h,i){stroke:red}/* x{ */ j{}';
    expect(readStyleSheet(sheet).selectorCount).toBe(8);
    expect(countSelectorSigns(sheet).selectors).toBeGreaterThanOrEqual(8);
  });
});
