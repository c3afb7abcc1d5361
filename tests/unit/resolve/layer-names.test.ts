// The places a name can stand in, escapes, and names that no person gave.
import { describe, expect, it } from 'vitest';
import { decodeName, isMachineName, readNaming } from '../../../src/resolve/layer-names.js';
import { scanText } from './resolve-text.js';

function naming(attributes: string, content = '') {
  const xml = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:e="urn:editor" xmlns:xlink="http://www.w3.org/1999/xlink"><g ${attributes}>${content}</g></svg>`;
  return readNaming(scanText(xml), 1);
}

describe('the place of a name', () => {
  it.each([
    ['e:label="Cut" data-name="x" e:id="x" id="x" class="x"', 'label', 'Cut'],
    ['data-name="Cut line" e:id="x" id="x" class="x"', 'data-name', 'Cut line'],
    ['e:id="Cut" id="x" class="x"', 'foreign-id', 'Cut'],
    ['id="Cut" class="x"', 'id', 'Cut'],
    ['class="cut line"', 'class', 'cut line'],
    ['', 'position', ''],
    ['label="x" xlink:label="x" xml:id="x"', 'position', ''],
  ])('%s', (attributes, nameSource, name) => {
    expect(naming(attributes)).toMatchObject({ nameSource, name });
  });

  it('is the title child before the id, but not that of a group inside', () => {
    expect(naming('id="g1"', '<title> Cut\n line </title>')).toMatchObject({ nameSource: 'title', name: 'Cut line' });
    expect(naming('id="g1"', '<g><title>Cut</title></g>')).toMatchObject({ nameSource: 'id', name: 'g1' });
  });

  it('is the id before the title where layer="yes" stands in a foreign namespace', () => {
    expect(naming('e:layer="yes" id="Cut"', '<title>x</title>')).toMatchObject({ nameSource: 'id', name: 'Cut' });
  });

  it('passes over an empty label', () => {
    expect(naming('e:label=" " id="Cut"')).toMatchObject({ nameSource: 'id', name: 'Cut' });
  });
});

describe('what a file says of a layer', () => {
  it('marks', () => {
    expect(naming('e:groupmode="layer"').isMarked).toBe(true);
    expect(naming('e:layer="yes"').isMarked).toBe(true);
    expect(naming('e:groupmode="group"').isMarked).toBe(false);
    expect(naming('groupmode="layer"').isMarked).toBe(false);
  });

  it('visible, printed, editable, insensitive', () => {
    expect(naming('e:visible="no"').isSwitchedOff).toBe(true);
    expect(naming('e:printed="no"').isPrintable).toBe(false);
    expect(naming('e:editable="no"').isLocked).toBe(true);
    expect(naming('e:insensitive="true"').isLocked).toBe(true);
    expect(naming('e:visible="yes" e:printed="yes" e:editable="yes" e:insensitive="false"')).toMatchObject({
      isSwitchedOff: false,
      isPrintable: true,
      isLocked: false,
    });
  });
});

describe('an escaped id', () => {
  it.each([
    ['Fold_x0020_lines', 'Fold lines'],
    ['_x31_st_x2F_Cut', '1st/Cut'],
    ['_x30_', '0'],
    ['Cut_1_', 'Cut'],
    ['Cut_00000012345678901234_', 'Cut'],
    ['Fold_lines', 'Fold_lines'],
    ['Layer_1', 'Layer_1'],
    ['Cut_x31_', 'Cut1'],
    ['_1_', '_1_'],
    ['_x3C_Group_x3E_', '<Group>'],
    ['_xZZ_', '_xZZ_'],
    ['_xC4_tzen', 'Ätzen'],
  ])('%s is %s', (id, name) => {
    expect(decodeName(id)).toBe(name);
  });
});

describe('a name no person gave', () => {
  it.each('g123 path12 group-4-2 Group_12 svg1 layer12 g <Group> st0 cls-1 SVGID_1_ 12 a3f09bc2d1 _2'.split(' '))(
    '%s',
    (name) => {
      expect(isMachineName(name)).toBe(true);
    },
  );

  it.each([
    'Cut',
    'Fold_lines',
    'Die 2',
    'front-panel',
    '1st cut',
    'Crease',
    'st0 cut',
    'Überdruck',
    '折り線',
    'group photo',
  ])('but not %s', (name) => {
    expect(isMachineName(name)).toBe(false);
  });

  it('also where every class is one', () => {
    expect(isMachineName('st0 st1')).toBe(true);
  });
});
