// Troubles of many shapes put into few findings, each put in words once.
import { describe, expect, it } from 'vitest';
import { answerUnclaimed, createTroubleLog, keepNames, quoteLayer } from '../../../src/classify/describe-trouble.js';
import { suggestRoles } from '../../../src/classify/suggest.js';
import { makeArtwork } from './make-artwork.js';

const ARTWORK = makeArtwork(
  [{ name: 'Meadow' }, { name: 'Crease' }, { name: 'Inner', parent: 1 }],
  [{ layer: 0, id: 'a' }, { layer: 0 }, { layer: 1, id: 'c' }, {}],
);

describe('createTroubleLog', () => {
  it('puts shapes of one code, layer and detail together, whoever tells them', () => {
    const log = createTroubleLog(ARTWORK);
    const say = () => ({ detail: 'are taken by no rule.', remedy: 'Add one.' });
    for (const shape of ARTWORK.shapes) log.add(shape, 'classify/unclaimed', {}, say);
    expect(log.list().map((item) => [item.place, item.data])).toEqual([
      [{ layerPath: 'Meadow' }, { count: 2, shapes: [0, 1], ids: ['a'] }],
      [
        { layerPath: 'Crease', id: 'c' },
        { count: 1, shapes: [2], ids: ['c'] },
      ],
      [{}, { count: 1, shapes: [3], ids: [] }],
    ]);
    expect(log.list()[1]!.message).toBe('1 shape in layer "Crease" (c) is taken by no rule.');
  });

  it('tells codes and details apart', () => {
    const log = createTroubleLog(ARTWORK);
    const [first, second] = ARTWORK.shapes as unknown as [
      (typeof ARTWORK.shapes)[number],
      (typeof ARTWORK.shapes)[number],
    ];
    log.add(first, 'classify/unclaimed', {}, () => ({ detail: 'are x.', remedy: '' }));
    log.add(second, 'classify/unclaimed', {}, () => ({ detail: 'are y.', remedy: '' }));
    log.add(second, 'classify/name-unsure', {}, () => ({ detail: 'are x.', remedy: '' }));
    expect(log.list().length).toBe(3);
  });

  it('asks for words once per cause and layer', () => {
    const log = createTroubleLog(ARTWORK);
    const cause = {};
    let asked = 0;
    const say = () => {
      asked += 1;
      return { detail: 'are x.', remedy: '' };
    };
    for (const shape of ARTWORK.shapes) log.add(shape, 'classify/unclaimed', cause, say);
    expect(asked).toBe(3);
  });
});

it('offers the role that a layer suggests, else print', () => {
  const suggestions = suggestRoles(ARTWORK);
  expect(answerUnclaimed(ARTWORK, 0, suggestions)).toContain('--take print=layer:"Meadow"');
  expect(answerUnclaimed(ARTWORK, 2, suggestions)).toContain('--take creasing=layer:"Crease/Inner"');
  expect(answerUnclaimed(ARTWORK, -1, suggestions)).toContain('--take print=rest');
  expect(quoteLayer(makeArtwork([{ name: 'say "x"' }], []), 0)).toBe('layer:"say *x*"');
});

it('repeats what layer names say, which rules take the place of', () => {
  const named = makeArtwork(
    [{ name: 'Meadow' }, { name: 'Crease' }, { name: 'Cut' }, { name: 'Dull print' }],
    [{ layer: 0 }, { layer: 1, stroke: '#123' }, { layer: 2, stroke: '#456' }, { layer: 3, fill: '#789' }],
  );
  const suggestions = suggestRoles(named);
  const sure = suggestions.layers.flatMap((one, layer) =>
    one?.sure ? [`${one.role}=${quoteLayer(named, layer)}`] : [],
  );
  expect(sure.length).toBeGreaterThan(1);
  const said = keepNames(named, 0, suggestions);
  expect([...said.matchAll(/--take (\S+?=layer:"[^"]*")/g)].map(([, take]) => take)).toEqual(sure.toSorted());
  expect(keepNames(named, 3, suggestions)).not.toContain('Dull print');
  const alone = makeArtwork([{ name: 'Meadow' }], [{ layer: 0 }]);
  expect(keepNames(alone, 0, suggestRoles(alone))).toBe('');
});
