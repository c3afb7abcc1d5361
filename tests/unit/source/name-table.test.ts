// Names are kept once, and prefixes mean what is in scope.
import { describe, expect, it } from 'vitest';
import { encodeUtf8 } from '../../../src/model/platform.js';
import { createExpandedNames, createNamespaceScope, createNameTable } from '../../../src/source/name-table.js';
import { XML_NAMESPACE, XMLNS_NAMESPACE } from '../../../src/source/source.js';

function intern(table: ReturnType<typeof createNameTable>, name: string): number {
  const bytes = encodeUtf8(`<${name}>`);
  return table.intern(bytes, 1, bytes.length - 1);
}

describe('createNameTable', () => {
  it('gives one number to one spelling, past every growth', () => {
    const table = createNameTable();
    const names = Array.from({ length: 3_000 }, (_, i) => `n${i}`);
    expect(names.map((name) => intern(table, name))).toEqual([...names.keys()]);
    expect(names.map((name) => intern(table, name))).toEqual([...names.keys()]);
    expect(table.written.map(({ text }) => text)).toEqual(names);
  });

  it.each([
    ['a', '', 'a', true],
    ['p:a', 'p', 'a', true],
    ['ä:ö', 'ä', 'ö', true],
    [':a', '', 'a', false],
    ['a:', 'a', '', false],
    ['a:b:c', 'a', 'b:c', false],
    ['a:1', 'a', '1', false],
    ['a:-b', 'a', '-b', false],
  ])('parts %s', (text, prefix, local, isQualified) => {
    const table = createNameTable();
    expect(table.written[intern(table, text)]).toEqual({ text, prefix, local, isQualified });
  });
});

describe('createNamespaceScope', () => {
  it('knows xml and xmlns from the start', () => {
    const scope = createNamespaceScope();
    expect(['xml', 'xmlns', '', 'p'].map(scope.lookUp)).toEqual([XML_NAMESPACE, XMLNS_NAMESPACE, undefined, undefined]);
  });

  it('takes the innermost declaration, and the outer again when that is forgotten', () => {
    const scope = createNamespaceScope();
    scope.declare('p', 'outer');
    scope.declare('p', 'inner');
    scope.declare('', 'default');
    expect([scope.lookUp('p'), scope.lookUp('')]).toEqual(['inner', 'default']);
    scope.forget(2);
    expect([scope.lookUp('p'), scope.lookUp('')]).toEqual(['outer', undefined]);
  });

  it('finds a prefix among very many declarations at once', () => {
    const scope = createNamespaceScope();
    for (let i = 0; i < 250_000; i += 1) {
      scope.declare(`p${i}`, `u${i}`);
      scope.lookUp('xmlns');
    }
    expect([scope.lookUp('p0'), scope.lookUp('p249999')]).toEqual(['u0', 'u249999']);
    scope.forget(250_000);
    expect(['p0', 'p249999', 'xml'].map(scope.lookUp)).toEqual([undefined, undefined, XML_NAMESPACE]);
  });

  it('has a new version after every change, and only then', () => {
    const scope = createNamespaceScope();
    const versions = [scope.version()];
    scope.declare('p', 'u');
    versions.push(scope.version());
    scope.forget(0);
    versions.push(scope.version());
    scope.forget(1);
    versions.push(scope.version());
    expect(versions).toEqual([0, 1, 1, 2]);
  });
});

it('createExpandedNames tells namespace and spelling apart', () => {
  const list = createExpandedNames();
  const name = (text: string, prefix: string) => ({ text, prefix, local: 'a', isQualified: true });
  const plain = name('a', '');
  const numbers = [
    list.number('u', plain),
    list.number('v', plain),
    list.number('u', name('p:a', 'p')),
    list.number('u', plain),
  ];
  expect(numbers).toEqual([0, 1, 2, 0]);
  expect(list.names[2]).toEqual({ namespace: 'u', local: 'a', qualified: 'p:a' });
});
