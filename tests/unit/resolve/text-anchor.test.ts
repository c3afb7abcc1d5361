// Points that live type is anchored at.
import { describe, expect, it } from 'vitest';
import { resolveBody, shapeOf, xywh } from './resolve-text.js';

function anchor(body: string): readonly number[] {
  return xywh(shapeOf(resolveBody(body), 't').fillBox);
}

describe('the anchor box', () => {
  it.each([
    ['a point', '<text id="t" x="10" y="20">a</text>', [10, 20, 0, 0]],
    ['the origin where nothing is said', '<text id="t">a</text>', [0, 0, 0, 0]],
    ['lists of places', '<text id="t" x="10 20, 30" y="5 6">abc</text>', [10, 5, 20, 1]],
    ['a list of y alone keeps the last x', '<text id="t" x="10" y="5 6 7">abc</text>', [10, 5, 0, 2]],
    ['the matrix', '<text id="t" x="10" y="20" transform="scale(2)">a</text>', [20, 40, 0, 0]],
    [
      'parts alone, where the text itself holds no letters',
      '<text id="t"><tspan x="30" y="40">a</tspan></text>',
      [30, 40, 0, 0],
    ],
    ['parts without places stay', '<text id="t" x="1" y="2">a<tspan>b</tspan></text>', [1, 2, 0, 0]],
    ['no hidden part', '<text id="t" x="1" y="2">a<tspan x="90" display="none">b</tspan></text>', [1, 2, 0, 0]],
    ['lengths with units and in percent', '<text id="t" x="1in" y="50%">a</text>', [96, 50, 0, 0]],
    [
      'a path and not the text before it',
      '<path id="p" d="M10 10H50"/><text id="t" x="5"><textPath href="#p" x="90">a</textPath></text>',
      [5, 0, 45, 10],
    ],
    [
      'a path with a transform',
      '<path id="p" d="M10 10H50" transform="translate(0 5)"/><text id="t"><textPath href="#p">a</textPath></text>',
      [10, 15, 40, 0],
    ],
  ])('%s', (_, body, box) => {
    expect(anchor(body)).toEqual(box);
  });
});
