// Every finding of classification with the case that provokes it and the nearest that does not.
import { describe, expect, it } from 'vitest';
import type { Finding, FindingCode, Json } from '../../../src/model/finding.js';
import { isToolpath, ROLES } from '../../../src/model/pass.js';
import { parseTake } from '../../../src/ticket/parse-take.js';
import { classifyBy, type LayerDraft, makeArtwork, type ShapeDraft, tellPlaces } from './make-artwork.js';

interface Run {
  readonly places: readonly string[];
  readonly codes: readonly FindingCode[];
  readonly findings: readonly Finding[];
  readonly passes: readonly string[];
  readonly shown: readonly number[];
}

function run(
  layers: readonly (string | LayerDraft)[],
  shapes: readonly ShapeDraft[],
  ticket: { readonly [key: string]: Json } = {},
): Run {
  const drafts = layers.map((layer) => (typeof layer === 'string' ? { name: layer } : layer));
  const artwork = makeArtwork(drafts, shapes);
  const made = classifyBy(artwork, ticket);
  return {
    places: tellPlaces(artwork, made),
    codes: made.findings.map((item) => item.code),
    findings: made.findings,
    passes: made.assignment.passes.map((pass) => `${pass.order} ${pass.name} ${pass.role}`),
    shown: made.assignment.shownElements,
  };
}

const line = (layer?: number, more: ShapeDraft = {}): ShapeDraft => ({
  stroke: '#2a7f62',
  ...(layer === undefined ? {} : { layer }),
  ...more,
});
const area = (layer?: number, more: ShapeDraft = {}): ShapeDraft => ({
  fill: '#c9a227',
  ...(layer === undefined ? {} : { layer }),
  ...more,
});

describe('by the names of layers', () => {
  it('makes one pass per role, in the order of the roles', () => {
    const made = run(['Cut', 'Art', 'Crease'], [line(0), area(1), line(2)]);
    expect(made.places).toEqual(['cut', 'print', 'crease']);
    expect(made.passes).toEqual(['1 crease creasing', '2 print print', '3 cut cutting']);
    expect(made.codes).toEqual([]);
  });

  it('keeps to the passes and the order that the ticket declares, numbered without gaps', () => {
    const passes = [
      { name: 'last touch', role: 'varnish' },
      { name: 'knife', role: 'cutting' },
      { name: 'ink', role: 'print' },
    ];
    const made = run(['Cut', 'Art', 'Crease'], [line(0), area(1), line(2)], { passes });
    expect(made.passes).toEqual(['1 knife cutting', '2 ink print', '3 crease creasing']);
    expect(made.codes).toEqual(['classify/pass-empty']);
  });

  it('goes by the nearest layer that speaks', () => {
    const layers = ['Art', { name: 'Meadow', parent: 0 }, { name: 'Cut', parent: 1 }];
    expect(run(layers, [area(1), line(2)]).places).toEqual(['print', 'cut']);
  });
});

describe('classify/unclaimed', () => {
  it('is one finding per layer, with a count, the first ids and an answer that settles it', () => {
    const shapes = Array.from({ length: 30 }, (_, i) => area(0, { id: `s${i}` }));
    const { findings, places } = run(['Meadow', 'Cut'], [...shapes, line(1)]);
    expect(places.slice(-2)).toEqual(['(open)', 'cut']);
    expect(findings.length).toBe(1);
    const [found] = findings as [Finding];
    expect(found.code).toBe('classify/unclaimed');
    expect(found.message).toContain('30 shapes in layer "Meadow" (s0, s1, s2, s3, s4, ...)');
    expect(found.place).toEqual({ layerPath: 'Meadow' });
    expect(found.data.count).toBe(30);
    expect(found.data.shapes).toEqual(Array.from({ length: 30 }, (_, i) => i));
    expect(found.data.ids).toEqual(Array.from({ length: 20 }, (_, i) => `s${i}`));
    expect(found.remedy).toContain('--take print=layer:"Meadow"');
    expect(found.remedy).toContain('--take print=rest');
  });

  it('gives an answer that the command line takes, whatever the layer is called', () => {
    for (const name of ['Meadow', 'a, b', 'say "x"', "Summer's", 'a/b', 'x=y:z', '*']) {
      const shapes = [area(0), line(1)];
      const { findings } = run([name, 'Other'], shapes);
      const take = /--take (print=layer:".*?"),? /.exec(`${findings[0]!.remedy} `)![1]!;
      const { pass, layer } = parseTake(take);
      const answered = run([name, 'Other'], shapes, { rules: [{ pass, layer: layer! }] });
      expect([name, answered.places[0]]).toEqual([name, 'print']);
    }
  });

  it('speaks of loose shapes apart, and of one in the singular', () => {
    const { findings } = run(['Meadow'], [area(0), area(), area()]);
    expect(findings.map((item) => item.message.slice(0, 32))).toEqual([
      '1 shape in layer "Meadow" is cla',
      '2 shapes outside every layer are',
    ]);
    expect(findings[1]!.place).toEqual({});
    expect(findings[1]!.remedy).toContain('--take print=rest');
    expect(run(['Art'], [area(0)]).codes).toEqual([]);
  });

  it('lists a thousand shapes at most, and counts all', () => {
    const { findings } = run(
      ['Meadow'],
      Array.from({ length: 1500 }, () => area(0)),
    );
    expect(findings.map((item) => [item.data.count, (item.data.shapes as number[]).length])).toEqual([[1500, 1000]]);
  });

  it('says why a name that names two roles decides nothing', () => {
    const { findings, places } = run(['Art', { name: 'cut and crease', parent: 0 }], [area(0), line(1)]);
    expect(places).toEqual(['print', '(open)']);
    expect(findings[0]!.message).toContain('"cut, crease", which is for cutting and for creasing');
    const negated = run(['Do not cut'], [line(0)]);
    expect(negated.codes).toEqual(['classify/unclaimed']);
    expect(negated.findings[0]!.message).toContain('a word such as "not"');
  });

  it('with rules, goes by the rules alone and offers what the name suggests', () => {
    const made = run(['Crease', 'Art'], [line(0), area(1)], { rules: [{ pass: 'print', layer: 'Art' }] });
    expect(made.places).toEqual(['(open)', 'print']);
    expect(made.findings[0]!.message).toContain('is taken by no rule');
    expect(made.findings[0]!.remedy).toContain('--take creasing=layer:"Crease"');
  });
});

describe('classify/name-unsure', () => {
  it('asks where a toolpath holds what is no line', () => {
    const { places, findings } = run(['Cut'], [line(0), area(0)]);
    expect(places).toEqual(['(open)', '(open)']);
    expect(findings.map((item) => item.code)).toEqual(['classify/name-unsure']);
    expect(findings[0]!.message).toContain('1 of its 2 shapes');
    expect(findings[0]!.remedy).toContain('--take cutting=layer:"Cut"');
    expect(findings[0]!.data).toMatchObject({ role: 'cutting', count: 2, shapes: [0, 1] });
    expect(run(['Cut'], [line(0), line(0)]).codes).toEqual([]);
  });

  it('does not ask of layers that cover areas', () => {
    for (const name of ['Print', 'White', 'Varnish']) expect(run([name], [line(0), area(0)]).codes).toEqual([]);
  });

  it('asks for every toolpath', () => {
    const names = ['Cut', 'Crease', 'Perf', 'Partial cut', 'Reverse crease', 'Reverse partial cut'];
    for (const name of names) expect([name, run([name], [area(0)]).codes]).toEqual([name, ['classify/name-unsure']]);
    expect(ROLES.filter(isToolpath).length).toBe(names.length);
  });
});

describe('classify/claimed-twice and classify/name-against-paint', () => {
  it('name the passes and rules, once per layer and pair', () => {
    const rules = [
      { pass: 'cutting', stroke: '#2a7f62' },
      { pass: 'creasing', dashed: false },
      { pass: 'print', rest: true },
    ];
    const { findings } = run(['A', 'B'], [line(0), line(0), line(1), area(1)], { rules });
    expect(findings.map((item) => [item.code, item.place.layerPath, item.data.count])).toEqual([
      ['classify/claimed-twice', 'A', 2],
      ['classify/claimed-twice', 'B', 1],
    ]);
    expect(findings[0]!.message).toContain('cut and crease (rule 1: stroke "#2a7f62"; rule 2: solid)');
    expect(findings[0]!.data.passes).toEqual(['cut', 'crease']);
    expect(run(['A'], [line(0)], { rules: rules.slice(0, 1) }).codes).toEqual([]);
  });

  it('name against paint', () => {
    const rules = [
      { pass: 'cutting', layer: 'A' },
      { pass: 'creasing', stroke: '#2a7f62' },
    ];
    const { findings } = run(['A'], [line(0)], { rules });
    expect(findings.map((item) => item.code)).toEqual(['classify/name-against-paint']);
    expect(findings[0]!.message).toContain('goes to cut by name and to crease by paint');
    expect(findings[0]!.data.passes).toEqual(['cut', 'crease']);
    expect(run(['A'], [line(0, { stroke: '#000' })], { rules: rules.slice(0, 1) }).codes).toEqual([]);
  });
});

describe('classify/fill-and-stroke', () => {
  const both = line(0, { fill: '#ffffff' });
  const byStroke = { pass: 'cutting', stroke: '#2a7f62' };
  const rest = { pass: 'print', rest: true };

  it('asks of a fill that a stroke rule would take to a tool', () => {
    const made = run(['A'], [both], { rules: [byStroke, rest] });
    expect(made.places).toEqual(['(open)']);
    expect(made.codes).toEqual(['classify/fill-and-stroke']);
    expect(made.findings[0]!.remedy).toContain('--part-paint');
    expect(run(['A'], [line(0)], { rules: [byStroke, rest] }).codes).toEqual([]);
  });

  it('parts the paint where the ticket says so', () => {
    const made = run(['A'], [both, line(0), area(0)], { rules: [byStroke, rest], partPaint: true });
    expect(made.places).toEqual(['print:fill+cut:stroke', 'cut', 'print']);
    expect(made.codes).toEqual([]);
  });

  it('uses the print pass that the ticket declares', () => {
    const passes = [
      { name: 'knife', role: 'cutting' },
      { name: 'ink', role: 'print' },
    ];
    const made = run(['A'], [both], { rules: [byStroke], partPaint: true, passes });
    expect(made.places).toEqual(['knife:stroke+ink:fill']);
  });

  it('says so where no pass prints', () => {
    const made = run(['A'], [both], { rules: [byStroke], partPaint: true });
    expect(made.places).toEqual(['(open)']);
    expect(made.codes).toEqual(['classify/fill-and-stroke']);
    expect(made.findings[0]!.remedy).toContain('No pass prints');
  });

  it('parts by a stroke rule and a fill rule too', () => {
    const rules = [byStroke, { pass: 'print', fill: '#fff' }];
    expect(run(['A'], [both], { rules }).codes).toEqual(['classify/claimed-twice']);
    const made = run(['A'], [both], { rules, partPaint: true });
    expect([made.places, made.codes]).toEqual([['print:fill+cut:stroke'], []]);
  });

  it.each<[string, { readonly [key: string]: Json }, string]>([
    ['a layer alone takes it whole', { layer: 'A' }, 'cut'],
    ['an id alone takes it whole', { id: 'x' }, 'cut'],
    ['a class alone takes it whole', { class: 'k' }, 'cut'],
    ['a rule for the fill takes it whole', { fill: '#fff' }, 'cut'],
    ['a layer with a stroke asks', { layer: 'A', stroke: '#2a7f62' }, '(open)'],
    ['the rest asks', { rest: true }, '(open)'],
    ['a kind of element asks', { element: 'path' }, '(open)'],
  ])('%s', (_, conditions, place) => {
    const shape = { ...both, id: 'x', classes: ['k'] };
    expect(run(['A'], [shape], { rules: [{ pass: 'cutting', ...conditions }] }).places).toEqual([place]);
  });

  it('does not speak of a shape without stroke, nor of passes that cover areas', () => {
    expect(run(['A'], [area(0)], { rules: [{ pass: 'cutting', rest: true }] }).places).toEqual(['cut']);
    expect(run(['A'], [both], { rules: [{ pass: 'varnish', stroke: '#2a7f62' }] }).places).toEqual(['varnish']);
  });
});

describe('classify/use-divided', () => {
  const rules = [
    { pass: 'cutting', stroke: '#2a7f62' },
    { pass: 'print', rest: true },
  ];

  it('refuses a copy whose shapes go to two passes', () => {
    const shapes = [
      line(0, { carrier: 9 }),
      area(0, { carrier: 9 }),
      area(0),
      line(0, { carrier: 8 }),
      line(0, { carrier: 8 }),
    ];
    const made = run(['A'], shapes, { rules });
    expect(made.places).toEqual(['(open)', '(open)', 'print', 'cut', 'cut']);
    expect(made.codes).toEqual(['classify/use-divided']);
    expect(made.findings[0]!.data).toMatchObject({ passes: ['cut', 'print'], shapes: [0, 1] });
  });

  it('refuses one that is half ignored, and one whose paint is parted', () => {
    const ignored = [...rules.slice(0, 1), { pass: 'ignore', rest: true }];
    const copy = [line(0, { carrier: 9 }), area(0, { carrier: 9 })];
    expect(run(['A'], copy, { rules: ignored }).codes).toContain('classify/use-divided');
    const both = [line(0, { carrier: 9, fill: '#fff' })];
    const made = run(['A'], both, { rules, partPaint: true });
    expect([made.places, made.codes]).toEqual([['(open)'], ['classify/use-divided']]);
  });

  it('does not mind what stays hidden or draws nothing inside it', () => {
    const shapes = [
      line(0, { carrier: 9 }),
      area(0, { carrier: 9, hidden: true }),
      area(0, { carrier: 9, draws: false }),
    ];
    expect(run(['A'], shapes, { rules, hidden: 'skip' }).codes).not.toContain('classify/use-divided');
    expect(run(['A'], shapes, { rules, hidden: 'include' }).codes).toContain('classify/use-divided');
  });

  it('leaves a pass that only a divided copy feeds out of the passes', () => {
    const shapes = [line(0, { carrier: 9 }), area(0, { carrier: 9 }), area(0)];
    expect(run(['A'], shapes, { rules }).passes).toEqual(['1 print print']);
  });
});

describe('classify/no-sheet', () => {
  it('refuses a drawing of which nothing goes to any pass', () => {
    expect(run([], []).findings.map((item) => [item.code, item.message])).toEqual([
      ['classify/no-sheet', 'Nothing is drawn: there is no file to write.'],
    ]);
    const guides = run(['Guides'], [line(0), line(0)]).findings;
    expect(guides.map((item) => item.code)).toEqual(['classify/ignored', 'classify/no-sheet']);
    expect(guides[1]!.message).toBe('None of the 2 shapes goes to a pass: there is no file to write.');
    expect(guides[1]!.remedy).toContain('ignored by a rule');
  });

  it('adds nothing to a question', () => {
    expect(run([{ name: 'Cut', hidden: true }], [area(0)]).codes).toEqual(['layer/hidden-asked']);
    expect(run(['Meadow'], [area(0)]).codes).toEqual(['classify/unclaimed']);
  });
});

describe('classify/ignored and classify/draws-nothing', () => {
  it('leave out guides and say how many', () => {
    const made = run(['Guides', 'Art'], [line(0), line(0), area(1)]);
    expect(made.places).toEqual(['(ignored)', '(ignored)', 'print']);
    expect(made.findings.map((item) => [item.code, item.data.count])).toEqual([['classify/ignored', 2]]);
    expect(run(['Art'], [area(0)]).codes).toEqual([]);
  });

  it('say one thing per rule and layer', () => {
    const rules = [
      { pass: 'ignore', id: 'a*' },
      { pass: 'ignore', stroke: '#00f' },
      { pass: 'print', rest: true },
    ];
    const shapes = [
      area(0, { id: 'a1' }),
      area(0, { id: 'a2' }),
      line(0, { stroke: '#00f' }),
      area(1, { id: 'a3' }),
      area(1),
    ];
    const made = run(['A', 'B'], shapes, { rules });
    expect(made.findings.map((item) => [item.code, item.place.layerPath, item.data.count])).toEqual([
      ['classify/ignored', 'A', 2],
      ['classify/ignored', 'A', 1],
      ['classify/ignored', 'B', 1],
    ]);
  });

  it('count what draws nothing in one note', () => {
    const made = run(['Art', 'Meadow'], [area(0), { layer: 0, draws: false }, { layer: 1, draws: false }]);
    expect(made.places).toEqual(['print', '(draws-nothing)', '(draws-nothing)']);
    expect(made.findings.map((item) => [item.code, item.data])).toEqual([['classify/draws-nothing', { count: 2 }]]);
    expect(made.findings[0]!.message).toContain('2 shapes draw nothing');
    expect(run(['Art'], [{ layer: 0, draws: false }]).findings[0]!.message).toContain('1 shape draws nothing');
  });
});

describe('hidden layers', () => {
  const layers = [
    { name: 'Art' },
    { name: 'Cut', hidden: true },
    { name: 'Sketch', hidden: true },
    { name: 'Print 2', hidden: true },
  ];
  const shapes = [area(0), line(1), area(2), area(3), area(3)];

  it('are left out with a warning, but asked about where they hold a toolpath', () => {
    const made = run(layers, shapes);
    expect(made.places).toEqual(['print', '(open)', '(hidden)', '(hidden)', '(hidden)']);
    expect(made.findings.map((item) => [item.code, item.place.layerPath, item.data.count])).toEqual([
      ['layer/hidden-asked', 'Cut', 1],
      ['layer/hidden-skipped', 'Sketch', 1],
      ['layer/hidden-skipped', 'Print 2', 2],
    ]);
    expect(made.findings[0]!.message).toContain('would go to cut');
    expect(made.shown).toEqual([]);
  });

  it('are all left out where the ticket says skip', () => {
    const made = run(layers, shapes, { hidden: 'skip' });
    expect(made.places).toEqual(['print', '(hidden)', '(hidden)', '(hidden)', '(hidden)']);
    expect(new Set(made.codes)).toEqual(new Set(['layer/hidden-skipped']));
    expect(made.codes.length).toBe(3);
  });

  it('all stop the job where the ticket says stop', () => {
    const made = run(layers, shapes, { hidden: 'stop' });
    expect(made.places.slice(1)).toEqual(['(open)', '(open)', '(open)', '(open)']);
    expect(new Set(made.codes)).toEqual(new Set(['layer/hidden-asked']));
  });

  it('are treated as shown where the ticket says include, and listed by their carriers', () => {
    const copies = [...shapes.slice(0, 4), area(3, { carrier: 77 })];
    const made = run(layers, copies, { hidden: 'include' });
    expect(made.places).toEqual(['print', 'cut', '(open)', 'print', 'print']);
    expect(made.codes).toEqual(['classify/unclaimed']);
    expect([...made.shown].sort((a, b) => a - b)).toEqual([1, 2, 3, 77]);
  });

  it('are asked about where a rule names them, or takes them to a tool', () => {
    const hidden = [{ name: 'Sketch', hidden: true }, 'Art'];
    const shapes = [line(0), area(1)];
    const asked = (rule: { readonly [key: string]: Json }) =>
      run(hidden, shapes, { rules: [rule, { pass: 'print', layer: 'Art' }] }).codes;
    expect(asked({ pass: 'print', layer: 'Sketch' })).toEqual(['layer/hidden-asked']);
    expect(asked({ pass: 'cutting', stroke: '#2a7f62' })).toEqual(['layer/hidden-asked']);
    expect(asked({ pass: 'cutting', rest: true })).toEqual(['layer/hidden-asked']);
    expect(asked({ pass: 'print', stroke: '#2a7f62' })).toEqual(['layer/hidden-skipped']);
    expect(asked({ pass: 'print', rest: true })).toEqual(['layer/hidden-skipped']);
    expect(asked({ pass: 'ignore', layer: 'Sketch' })).toEqual(['classify/ignored']);
  });

  it('are asked about where the name is unsure of a toolpath, not where it is of guides', () => {
    expect(run([{ name: 'Cut', hidden: true }], [area(0)]).codes).toEqual(['layer/hidden-asked']);
    expect(run([{ name: 'Notes', hidden: true }, 'Art'], [area(0), area(1)]).codes).toEqual(['layer/hidden-skipped']);
  });

  it('are not spoken of where nothing in them would draw', () => {
    expect(run([{ name: 'Cut', hidden: true }, 'Art'], [line(0, { draws: false }), area(1)]).codes).toEqual([
      'classify/draws-nothing',
    ]);
  });
});
