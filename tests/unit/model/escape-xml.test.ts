// Text escaped for XML reads back as it was, by another reader.
import { DOMParser } from '@xmldom/xmldom';
import { expect, it } from 'vitest';
import { escapeXml } from '../../../src/model/escape-xml.js';

it('reads back between tags and in attributes of both quotes, but for what no document may hold', () => {
  const text = `<b> & "it's" ]]> Žluťoučký 𝒳`;
  for (const [open, close] of ["''", '""'].map((pair) => [pair[0]!, pair[1]!] as const)) {
    const root = new DOMParser().parseFromString(
      `<a b=${open}${escapeXml(text)}${close}>${escapeXml(text)}</a>`,
      'text/xml',
    ).documentElement!;
    expect(root.getAttribute('b')).toBe(text);
    expect(root.textContent).toBe(text);
  }
  expect(escapeXml('\u0000a\u0007b\u001f\ufffe')).toBe('\ufffda\ufffdb\ufffd\ufffd');
  expect(escapeXml('\t\n')).toBe('\t\n');
});
