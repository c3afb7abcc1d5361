// Pixels to the inch: closed forms for every way of placing a picture.
import { describe, expect, it } from 'vitest';
import { checkPictureResolution, pictureResolution } from '../../../src/check/check-picture-resolution.js';
import { carton, factsOf } from './carton-facts.js';

const PLACED = { x: 0, y: 0, width: 100, height: 50 } as const;
const PIXELS = { widthPx: 400, heightPx: 400 };
/** A px of the artboard is a 96th of an inch. */
const PX = 25.4 / 96;

function ppi(
  fit: 'none' | 'meet' | 'slice',
  matrix: readonly [number, number, number, number, number, number],
): number {
  return pictureResolution({ ...PLACED, fit }, PIXELS, { matrix, mmPerPx: PX })!;
}

describe('pictureResolution', () => {
  it('takes the axis with fewer pixels where the picture is stretched', () => {
    // 400 pixels over 100 px across, and over 50 px down.
    expect(ppi('none', [1, 0, 0, 1, 0, 0])).toBeCloseTo(96 * 4, 9);
  });

  it('takes the one scale of a picture that is fitted in, or cut', () => {
    expect(ppi('meet', [1, 0, 0, 1, 0, 0])).toBeCloseTo(96 * 8, 9);
    expect(ppi('slice', [1, 0, 0, 1, 0, 0])).toBeCloseTo(96 * 4, 9);
  });

  it('follows the matrix: scaled, turned, mirrored, drawn out', () => {
    const [c, s] = [Math.cos(0.7), Math.sin(0.7)];
    expect(ppi('meet', [2, 0, 0, 2, 9, 9])).toBeCloseTo(96 * 4, 9);
    expect(ppi('meet', [c, s, -s, c, 0, 0])).toBeCloseTo(96 * 8, 9);
    expect(ppi('meet', [c, s, s, -c, 0, 0])).toBeCloseTo(96 * 8, 9);
    expect(ppi('meet', [c * 3, s * 3, -s, c, 0, 0])).toBeCloseTo((96 * 8) / 3, 9);
    // A skew by 1 draws out by the golden ratio: the singular values of [1 1; 0 1].
    expect(ppi('meet', [1, 0, 1, 1, 0, 0])).toBeCloseTo((96 * 8) / ((1 + Math.sqrt(5)) / 2), 9);
  });

  it('knows none of a picture that is drawn out to nothing', () => {
    const nothing = pictureResolution({ ...PLACED, width: 0, height: 0, fit: 'none' }, PIXELS, {
      matrix: [1, 0, 0, 1, 0, 0],
      mmPerPx: PX,
    });
    expect(nothing).toBeNull();
  });
});

/** A GIF of a size, as far as its header goes. */
function gif(width: number, height: number): Uint8Array {
  return Uint8Array.of(0x47, 0x49, 0x46, 0x38, 0x39, 0x61, width & 255, width >> 8, height & 255, height >> 8, 0, 0, 0);
}

const embedded = (width: number, height: number): string =>
  `data:image/gif;base64,${Buffer.from(gif(width, height)).toString('base64')}`;

function image(href: string, size: number, more = ''): string {
  return `<image x="60" y="60" width="${size}" height="${size}" href="${href}" ${more}/>`;
}

const CUT = '<path d="M50 50H150V110H50Z"/>';

async function codes(print: string, options: Parameters<typeof factsOf>[2] = {}): Promise<readonly string[]> {
  return checkPictureResolution(await factsOf(carton(print, CUT), {}, options)).map(({ code }) => code);
}

describe('checkPictureResolution', () => {
  it('keeps to its bounds: each counts as enough, and as useful', async () => {
    // 25.4 mm are an inch.
    expect(await codes(image(embedded(99, 99), 25.4))).toEqual(['check/picture-too-coarse']);
    expect(await codes(image(embedded(101, 101), 25.4))).toEqual(['check/picture-coarse']);
    expect(await codes(image(embedded(199, 199), 25.4))).toEqual(['check/picture-coarse']);
    expect(await codes(image(embedded(201, 201), 25.4))).toEqual([]);
    expect(await codes(image(embedded(599, 599), 25.4))).toEqual([]);
    expect(await codes(image(embedded(601, 601), 25.4))).toEqual(['check/picture-oversized']);
  });

  it('tells the worst of many and lists all', async () => {
    const print = image(embedded(60, 60), 25.4) + image(embedded(80, 90), 25.4) + image(embedded(300, 300), 25.4);
    const [found, ...more] = checkPictureResolution(await factsOf(carton(print, CUT)));
    expect(more).toEqual([]);
    expect(found).toMatchObject({
      code: 'check/picture-too-coarse',
      data: { measuredPpi: 60, allowedPpi: 100, count: 2 },
    });
    expect(found!.message).toContain(
      '2 pictures in layer "Print" come out at down to 60 pixels to the inch (60 x 60 pixels)',
    );
  });

  it('counts a picture once per use, each at its own size', async () => {
    const print = `<symbol id="photo">${image(embedded(200, 200), 25.4)}</symbol><use href="#photo"/><use href="#photo" transform="scale(2.1)"/>`;
    const found = checkPictureResolution(await factsOf(carton(print, CUT)));
    expect(found.map(({ code, data }) => [code, data.count])).toEqual([['check/picture-too-coarse', 1]]);
    expect(found[0]!.data.measuredPpi).toBeCloseTo(200 / 2.1, 1);
  });

  it('says nothing of a drawing in a picture', async () => {
    expect(await codes(image('data:image/svg+xml,%3Csvg/%3E', 25.4))).toEqual([]);
  });

  it('reads a linked picture that the caller hands in, and says so where there is none', async () => {
    const options = { ticket: { linkedPictures: 'embed' as const }, loadPicture: async () => gif(150, 150) };
    expect(await codes(image('photo.gif', 25.4), options)).toEqual(['check/picture-coarse']);
    expect(await codes(image('photo.gif', 25.4))).toEqual(['check/picture-unread']);
  });

  it('unpacks more of a picture whose size stands far behind', async () => {
    const segment = [0xff, 0xe2, 0xff, 0xff, ...new Array<number>(0xfffd).fill(7)];
    const frame = [0xff, 0xc0, 0, 11, 8, 0, 150, 0, 150, 1, 1, 0x11, 0];
    const jpeg = Buffer.from([0xff, 0xd8, ...segment, ...segment, ...frame]).toString('base64');
    expect(await codes(image(`data:image/jpeg;base64,${jpeg}`, 25.4))).toEqual(['check/picture-coarse']);
  });
});
