// Colours in all their spellings.
import { describe, expect, test } from 'vitest';
import { readColour } from '../../../src/resolve/colour.js';

/** The 148 names of CSS Color 4, section 6.1, as `name hex` (from memory, checked against the count the section states). */
const NAMES =
  `aliceblue f0f8ff antiquewhite faebd7 aqua 00ffff aquamarine 7fffd4 azure f0ffff beige f5f5dc bisque ffe4c4
black 000000 blanchedalmond ffebcd blue 0000ff blueviolet 8a2be2 brown a52a2a burlywood deb887 cadetblue 5f9ea0
chartreuse 7fff00 chocolate d2691e coral ff7f50 cornflowerblue 6495ed cornsilk fff8dc crimson dc143c cyan 00ffff
darkblue 00008b darkcyan 008b8b darkgoldenrod b8860b darkgray a9a9a9 darkgreen 006400 darkgrey a9a9a9 darkkhaki bdb76b
darkmagenta 8b008b darkolivegreen 556b2f darkorange ff8c00 darkorchid 9932cc darkred 8b0000 darksalmon e9967a
darkseagreen 8fbc8f darkslateblue 483d8b darkslategray 2f4f4f darkslategrey 2f4f4f darkturquoise 00ced1 darkviolet 9400d3
deeppink ff1493 deepskyblue 00bfff dimgray 696969 dimgrey 696969 dodgerblue 1e90ff firebrick b22222 floralwhite fffaf0
forestgreen 228b22 fuchsia ff00ff gainsboro dcdcdc ghostwhite f8f8ff gold ffd700 goldenrod daa520 gray 808080 green 008000
greenyellow adff2f grey 808080 honeydew f0fff0 hotpink ff69b4 indianred cd5c5c indigo 4b0082 ivory fffff0 khaki f0e68c
lavender e6e6fa lavenderblush fff0f5 lawngreen 7cfc00 lemonchiffon fffacd lightblue add8e6 lightcoral f08080
lightcyan e0ffff lightgoldenrodyellow fafad2 lightgray d3d3d3 lightgreen 90ee90 lightgrey d3d3d3 lightpink ffb6c1
lightsalmon ffa07a lightseagreen 20b2aa lightskyblue 87cefa lightslategray 778899 lightslategrey 778899
lightsteelblue b0c4de lightyellow ffffe0 lime 00ff00 limegreen 32cd32 linen faf0e6 magenta ff00ff maroon 800000
mediumaquamarine 66cdaa mediumblue 0000cd mediumorchid ba55d3 mediumpurple 9370db mediumseagreen 3cb371
mediumslateblue 7b68ee mediumspringgreen 00fa9a mediumturquoise 48d1cc mediumvioletred c71585 midnightblue 191970
mintcream f5fffa mistyrose ffe4e1 moccasin ffe4b5 navajowhite ffdead navy 000080 oldlace fdf5e6 olive 808000
olivedrab 6b8e23 orange ffa500 orangered ff4500 orchid da70d6 palegoldenrod eee8aa palegreen 98fb98 paleturquoise afeeee
palevioletred db7093 papayawhip ffefd5 peachpuff ffdab9 peru cd853f pink ffc0cb plum dda0dd powderblue b0e0e6
purple 800080 rebeccapurple 663399 red ff0000 rosybrown bc8f8f royalblue 4169e1 saddlebrown 8b4513 salmon fa8072
sandybrown f4a460 seagreen 2e8b57 seashell fff5ee sienna a0522d silver c0c0c0 skyblue 87ceeb slateblue 6a5acd
slategray 708090 slategrey 708090 snow fffafa springgreen 00ff7f steelblue 4682b4 tan d2b48c teal 008080 thistle d8bfd8
tomato ff6347 turquoise 40e0d0 violet ee82ee wheat f5deb3 white ffffff whitesmoke f5f5f5 yellow ffff00 yellowgreen 9acd32`
    .split(/\s+/)
    .reduce<[string, string][]>((pairs, word, index) => {
      if (index % 2 === 0) pairs.push([word, '']);
      else pairs.at(-1)![1] = word;
      return pairs;
    }, []);

describe('readColour', () => {
  test('knows the 148 named colours', () => {
    expect(NAMES).toHaveLength(148);
    for (const [name, hex] of NAMES) expect([name, readColour(name)?.key]).toEqual([name, `#${hex}`]);
  });

  test.each([
    ['#abc', '#aabbcc', 1],
    ['#AbCd', '#aabbcc', 0xdd / 255],
    ['#e5007d', '#e5007d', 1],
    ['#E5007D80', '#e5007d', 0x80 / 255],
    ['  Red\t', '#ff0000', 1],
    ['RGB(229, 0, 125)', '#e5007d', 1],
    ['rgb(229 0 125)', '#e5007d', 1],
    ['rgba(229,0,125,.5)', '#e5007d', 0.5],
    ['rgb(229 0 125 / 50%)', '#e5007d', 0.5],
    ['rgb(100%,0%,0%)', '#ff0000', 1],
    ['rgb(300,-5,0)', '#ff0000', 1],
    ['rgb(12.6, 0, 0)', '#0d0000', 1],
    ['hsl(120,100%,25%)', '#008000', 1],
    ['hsl(40deg 80% 50%)', '#e6a21a', 1],
    ['hsl(0.5turn 100% 50%)', '#00ffff', 1],
    ['hsla(240deg,100%,50%,0.25)', '#0000ff', 0.25],
    ['hwb(0 0% 0%)', '#ff0000', 1],
    ['transparent', '#000000', 0],
    ['rgb(none 2 3)', '#000203', 1],
    ['color(srgb 1 0 0)', '#ff0000', 1],
    ['color(display-p3 1 0 0)', '#ff0000', 1],
  ])('%s is %s at %d', (text, key, alpha) => {
    const colour = readColour(text);
    expect(colour?.key).toBe(key);
    expect(colour?.alpha).toBeCloseTo(alpha, 12);
  });

  // CSS Color 4, section 9.4: lab(29.2345% 39.3825 20.0664) is #7d2329 (from memory of the section's example).
  test('reads lab as the standard computes it', () => {
    expect(readColour('lab(29.2345% 39.3825 20.0664)')?.key).toBe('#7d2329');
  });

  test('takes the sRGB stand-in of a profile colour', () => {
    // SVG 1.1, section 11.2.
    const colour = readColour('#CD853F icc-color(acmecmyk, 0.11, 0.48, 0.83, 0.00)');
    expect(colour).toEqual({ key: '#cd853f', rgb: [0xcd, 0x85, 0x3f], alpha: 1 });
    expect(readColour('rgb(205, 133, 63) device-cmyk(0.11, 0.48, 0.83, 0)')?.key).toBe('#cd853f');
    expect(readColour('icc-color(acmecmyk, 0.11, 0.48, 0.83, 0.00)')).toBeNull();
  });

  test.each([
    ['device-cmyk(0 1 1 0)', 'device-cmyk(0 1 1 0)', [255, 0, 0], 1],
    ['device-cmyk(0, 1, 1, 0)', 'device-cmyk(0 1 1 0)', [255, 0, 0], 1],
    ['device-cmyk(0% 100% 100% 0% / 50%)', 'device-cmyk(0 1 1 0)', [255, 0, 0], 0.5],
    ['device-cmyk(0 0 0 0.5)', 'device-cmyk(0 0 0 0.5)', [128, 128, 128], 1],
    ['device-cmyk(0 1 1 0, #b00)', 'device-cmyk(0 1 1 0)', [187, 0, 0], 1],
    ['device-cmyk(0 1 1 0, rgb(187, 0, 0))', 'device-cmyk(0 1 1 0)', [187, 0, 0], 1],
  ])('%s', (text, key, rgb, alpha) => {
    expect(readColour(text)).toEqual({ key, rgb, alpha });
  });

  test.each([
    '',
    'none',
    'currentColor',
    'inherit',
    'ff0000',
    'fff',
    'fade',
    'beef',
    '#ab',
    '#abcde',
    '#ggg',
    'rgb(1,2)',
    'rgb(1,2,3',
    'rgb(10%, 20, 30)',
    'rgb(1, 2, 3 / 0.5)',
    'constructor',
    '__proto__',
    'toString',
    'notacolour',
    'url(#a)',
    'device-cmyk(0 1 1)',
    'device-cmyk(0 1 1 0, nonsense)',
    'red blue',
    'rgb(0currentColor)',
  ])('%s is no colour', (text) => {
    expect(readColour(text)).toBeNull();
  });
});
