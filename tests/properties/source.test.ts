// The scanner sees what an independent reader sees, and damaged files end in an error of pinbar's own.
import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { SaxesParser } from 'saxes';
import { describe, expect, test } from 'vitest';
import { decodeUtf8, encodeUtf8 } from '../../src/model/platform.js';
import { PinbarError } from '../../src/model/trouble.js';
import { elementName, readAttribute, readText } from '../../src/source/read-attribute.js';
import { readSource } from '../../src/source/read-source.js';
import { SVG_NAMESPACE } from '../../src/source/source.js';

const RUNS = 200;

/** What is compared of one element. */
interface Row {
  readonly name: string;
  readonly parent: number;
  readonly attributes: string[];
  text: string;
  /** Characters of the file up to the end of the start tag, and to the end of the element. */
  readonly headEnd: number;
  end: number;
}

function listOurs(document: string): Row[] {
  const source = readSource(encodeUtf8(document));
  const { elements } = source;
  const characters = (offset: number): number => decodeUtf8(source.text.subarray(0, offset)).length;
  return Array.from({ length: elements.count }, (_, row) => {
    const { namespace, qualified } = elementName(source, row);
    const attributes: string[] = [];
    for (let a = elements.attributeStart[row]!; a < elements.attributeStart[row + 1]!; a += 1) {
      const name = elements.attributes.names[elements.attributes.name[a]!]!;
      attributes.push(`${name.qualified}{${name.namespace}}=${readAttribute(source, a)}`);
    }
    return {
      name: `${qualified}{${namespace}}`,
      parent: elements.parent[row]!,
      attributes,
      text: readText(source, row),
      headEnd: characters(elements.headEnd[row]!),
      end: characters(elements.end[row]!),
    };
  });
}

function listTheirs(document: string): Row[] {
  const rows: Row[] = [];
  const open: number[] = [];
  const parser = new SaxesParser({ xmlns: true });
  const addText = (text: string): void => {
    const row = rows[open.at(-1) ?? -1];
    if (row !== undefined) row.text += text;
  };
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', (tag) => {
    rows.push({
      name: `${tag.name}{${tag.uri}}`,
      parent: open.at(-1) ?? -1,
      attributes: Object.values(tag.attributes).map(({ name, uri, value }) => `${name}{${uri}}=${value}`),
      text: '',
      headEnd: parser.position,
      end: 0,
    });
    open.push(rows.length - 1);
  });
  parser.on('text', addText);
  parser.on('cdata', addText);
  parser.on('closetag', () => {
    rows[open.pop()!]!.end = parser.position;
  });
  parser.write(document).close();
  return rows;
}

const blank = fc.constantFrom(' ', '\n', '\t', ' \r\n ');
const blanks = fc.constantFrom('', '', ' ', '\n');
const name = fc.constantFrom('g', 'path', 'a-b.c', 'ä', 'p:g', 'q:ö', 's:rect');
const piece = fc.constantFrom(
  'a',
  'ä€😀',
  '&amp;',
  '&lt;',
  '&#xE4;',
  '&#128512;',
  '\n',
  '\t',
  '\r\n',
  ' >',
  "''",
  ' ',
  ']',
);
const prose = fc.array(piece, { maxLength: 6 }).map((pieces) => pieces.join(''));

const attribute = fc
  .tuple(blank, fc.constantFrom('id', 'd', 'xml:space', 'p:id', 'q:id', 'ö'), blanks, blanks, prose, fc.boolean())
  .map(([gap, key, before, after, value, single]) => {
    const quoted = single ? `'${value.replaceAll("'", '"')}'` : `"${value}"`;
    return { key, text: `${gap}${key}${before}=${after}${quoted}` };
  });

const namespaces = fc.constantFrom(
  '',
  '',
  '',
  ' xmlns="u"',
  ' xmlns=""',
  ' xmlns:p="v"',
  ` xmlns:q="${SVG_NAMESPACE}"`,
);
const attributes = fc
  .tuple(fc.uniqueArray(attribute, { selector: ({ key }) => key, maxLength: 4 }), namespaces)
  .map(([list, declared]) => declared + list.map(({ text }) => text).join(''));

const filler = fc.constantFrom('', '<!-- <g> & - -->', '<![CDATA[<g a="1"> & ]] >]]>', '<?pi <g> ?>', '<![CDATA[]]>');

const { tree } = fc.letrec<{ tree: string; node: string }>((tie) => ({
  tree: fc
    .array(fc.oneof({ depthSize: 'small' }, prose, filler, tie('node')), { maxLength: 5 })
    .map((parts) => parts.join('')),
  node: fc
    .tuple(name, attributes, blanks, fc.option(tie('tree')))
    .map(([tag, own, gap, inside]) =>
      inside === null ? `<${tag}${own}${gap}/>` : `<${tag}${own}${gap}>${inside}</${tag}${gap}>`,
    ),
}));

const HEADS = ['', '<?xml version="1.0"?>\n', '<!-- x --><?pi?>\n'];
const ROOTS = [
  ['svg', `xmlns="${SVG_NAMESPACE}"`],
  ['s:svg', ''],
] as const;

const document = fc
  .tuple(fc.constantFrom(...HEADS), fc.constantFrom(...ROOTS), tree, fc.constantFrom('', '\n', '<!-- y -->'))
  .map(
    ([head, [root, declared], inside, tail]) =>
      `${head}<${root} ${declared} xmlns:s="${SVG_NAMESPACE}" xmlns:p="p" xmlns:q="q">${inside}</${root}>${tail}`,
  );

test('the table holds what saxes tells', () => {
  fc.assert(
    fc.property(document, (text) => {
      expect(listOurs(text)).toEqual(listTheirs(text));
    }),
    { numRuns: RUNS },
  );
});

const ENTITIES = '<!DOCTYPE svg [<!ENTITY e "one\ntwo"><!-- x --><!ATTLIST g a CDATA #IMPLIED>]>';

/** Files in all forms that are read: plain, with entities, in UTF-16, packed. */
const file = document.chain((text) => {
  const body = text.startsWith('<?xml') ? text.slice(text.indexOf('\n')) : text;
  const withEntities = ENTITIES + body.replace('">', '" x="&e;">');
  return fc.constantFrom(
    encodeUtf8(text),
    encodeUtf8(withEntities),
    new Uint8Array(Buffer.from(`\ufeff${withEntities}`, 'utf16le')),
    new Uint8Array(gzipSync(encodeUtf8(text))),
  );
});

/** How reading ends; an error that is not pinbar's own is thrown on. */
function readOutcome(bytes: Uint8Array): string {
  try {
    readSource(bytes);
    return 'accepted';
  } catch (error) {
    if (!(error instanceof PinbarError)) throw error;
    expect(error.code).toMatch(/^(?:source|limit)\//);
    return error.code;
  }
}

describe('damaged files', () => {
  test('whole ones are accepted', () => {
    fc.assert(
      fc.property(file, (bytes) => {
        expect(readOutcome(bytes)).toBe('accepted');
      }),
      { numRuns: RUNS },
    );
  });

  test('cut off anywhere within the root they are refused', () => {
    fc.assert(
      fc.property(file, (bytes) => {
        for (let length = 0; length < bytes.length; length += 1) {
          const outcome = readOutcome(bytes.subarray(0, length));
          // What follows the root may be missing.
          if (outcome === 'accepted') expect(bytes.length - length).toBeLessThanOrEqual('<!-- y -->'.length * 2);
        }
      }),
      { numRuns: RUNS / 5 },
    );
  });

  test('with bytes changed they are read or refused, never more', () => {
    const change = fc.tuple(fc.nat(), fc.oneof(fc.nat(255), fc.constantFrom(...encodeUtf8('<>&;"\'/=!?[]:% '))));
    fc.assert(
      fc.property(file, fc.array(change, { minLength: 1, maxLength: 4 }), (bytes, changes) => {
        const damaged = bytes.slice();
        for (const [at, byte] of changes) damaged[at % damaged.length] = byte;
        readOutcome(damaged);
      }),
      { numRuns: 5 * RUNS },
    );
  });
});
