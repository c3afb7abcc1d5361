// Clip paths, masks and filters measured by the box of a group of which a sheet holds a part.
import { describe, expect, it } from 'vitest';
import { judgeBody, tellOrder } from './order-text.js';

const DEFINITIONS = `<clipPath id="c" clipPathUnits="objectBoundingBox"><circle cx=".5" cy=".5" r=".5"/></clipPath>
<clipPath id="user"><circle cx="50" cy="50" r="50"/></clipPath>
<mask id="m" maskContentUnits="objectBoundingBox"><circle cx=".5" cy=".5" r=".5" fill="#fff"/></mask>
<filter id="p" primitiveUnits="objectBoundingBox"><feOffset dx=".1"/></filter><filter id="f"><feOffset dx="4"/></filter>
<filter id="u" filterUnits="userSpaceOnUse" x="0" y="0" width="200" height="100"><feOffset dx="4"/></filter>`;
const ART = '<rect id="a" width="20" height="20" fill="#ccc"/>';
const LINE = '<path id="b" d="M50 0V40" fill="none" stroke="#f00"/>';
const BARE = '<rect id="n" x="60" width="20" height="20" fill="none"/>';
const tell = (body: string) => tellOrder(DEFINITIONS + body).filter((line) => !line.startsWith('effect-divided'));

describe('an effect measured by the box of a group', () => {
  it.each([
    ['a clip path', `<g clip-path="url(#c)">${ART}${LINE}</g>`],
    ['a clip path by style', `<g style="clip-path:url(#c)"><g>${ART}</g>${LINE}</g>`],
    ['a mask', `<g mask="url(#m)">${ART}${LINE}</g>`],
    ['a filter', `<g filter="url(#p)">${ART}${LINE}</g>`],
  ])('is told where two passes share it: %s', (_, body) => {
    expect(tell(body)).toEqual(['box-divided a,b: print,cut']);
  });

  it('is told where a shape without paint is left out, of one pass too', () => {
    expect(tell(`<g clip-path="url(#c)">${ART}${BARE}</g>`)).toEqual(['box-divided a,n: print']);
    expect(tell(`<g filter="url(#f)">${ART}${BARE}</g>`)).toEqual(['filter-region a,n: print']);
  });

  it('is told of the sheet alone that holds less', () => {
    const within = '<path id="b" d="M5 5V9" fill="none" stroke="#f00"/>';
    expect(tell(`<g clip-path="url(#c)">${ART}${within}</g>`)).toEqual(['box-divided a,b: cut']);
    // Turned, a box on the artboard says nothing of the box in the group.
    expect(tell(`<g transform="rotate(30)" clip-path="url(#c)">${ART}${within}</g>`)).toEqual([
      'box-divided a,b: print,cut',
    ]);
  });

  it('says what would sit elsewhere', () => {
    const [found] = judgeBody(`${DEFINITIONS}<g clip-path="url(#c)">${ART}${LINE}</g>`);
    expect(found!.message).toContain(
      'has a clip path measured by the box of all it holds; on the sheet of print and cut',
    );
    expect(found!.data.what).toBe('clip path');
  });

  it.each([
    ['in units of the drawing', `<g clip-path="url(#user)">${ART}${LINE}</g>`],
    ['over one pass', `<g clip-path="url(#c)">${ART}${ART}</g>${LINE}`],
    ['on a shape', `<rect width="9" height="9" clip-path="url(#c)"/>${LINE}`],
    ['with something hidden', `<g clip-path="url(#c)">${ART}<g display="none">${BARE}</g></g>`],
    ['with something unpainted within', `<g filter="url(#f)">${ART}<rect width="9" height="9" fill="none"/></g>`],
    ['with something that has no size', `<g clip-path="url(#c)">${ART}<path d=""/></g>`],
    ['a filter over two passes', `<g filter="url(#f)">${ART}${LINE}${BARE}</g>`],
    ['a filter with a region of its own', `<g filter="url(#u)">${ART}${BARE}</g>`],
    ['that names nothing', `<g clip-path="url(#gone)">${ART}${LINE}</g>`],
  ])('is not told: %s', (_, body) => {
    expect(tell(body)).toEqual([]);
  });
});
