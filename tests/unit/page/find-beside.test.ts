// The picture that is meant, by its name.
import { expect, it } from 'vitest';
import { findBesideIn } from '../../../src/page/find-beside.js';

const files = ['leaf.png', '100%.png', 'ein blatt.png'].map((name) => ({ name }));

it('goes by the last step of an address, as it was written', () => {
  const find = findBesideIn(files);
  expect(find('pictures/leaf.png?1#2')?.name).toBe('leaf.png');
  expect(find('ein%20blatt.png')?.name).toBe('ein blatt.png');
  expect(find('100%.png')?.name).toBe('100%.png');
  expect(find('100%25.png')?.name).toBeUndefined();
  expect(find('other.png')).toBeUndefined();
});

it('gives a file to one address alone, however that is written', () => {
  const find = findBesideIn(files);
  expect(find('a/leaf.png')?.name).toBe('leaf.png');
  expect(find('./a/leaf.png')?.name).toBe('leaf.png');
  expect(find('b/leaf.png')).toBeUndefined();
});
