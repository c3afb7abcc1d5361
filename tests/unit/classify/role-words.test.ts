// Names of layers read as roles: whole words of nine languages, never parts of words. Common practice, no source.
import { describe, expect, it } from 'vitest';
import { foldWord, LAYER_WORDS, readName, splitWords } from '../../../src/classify/role-words.js';
import type { Role } from '../../../src/model/pass.js';

describe('words of every language', () => {
  it.each<[string, Role, readonly string[]]>([
    ['English', 'creasing', ['Crease', 'creases', 'Creasing', 'Score', 'Fold', 'Fold lines', 'SCORING']],
    ['English', 'cutting', ['Cut', 'cutting', 'Die', 'Die cut', 'Dieline', 'Knife', 'Contour']],
    ['English', 'partial-cutting', ['Kiss cut', 'half-cut', 'Partial_Cut', 'kisscut', 'HalfCut']],
    ['English', 'perforating', ['Perf', 'Perforation', 'perforate']],
    ['English', 'print', ['Print', 'Art', 'Artwork', 'Colour', 'Color', 'CMYK', 'Images']],
    ['English', 'white', ['White', 'White ink', 'Print white', 'White print']],
    ['English', 'varnish', ['Varnish', 'Gloss']],
    ['English', 'foil-stamping', ['Foil', 'Hot foil', 'Foil stamping']],
    ['English', 'cold-foil-stamping', ['Cold foil', 'cold foil stamping']],
    ['English', 'embossing', ['Emboss', 'Embossing']],
    ['English', 'debossing', ['Deboss']],
    ['English', 'gluing', ['Glue', 'Glue area', 'Gluing']],
    ['English', 'drilling', ['Drill', 'Drill holes']],
    ['English', 'punching', ['Punch']],
    ['English', 'reverse-creasing', ['Reverse crease', 'reverse score']],
    ['English', 'reverse-partial-cutting', ['Reverse partial cut']],
    [
      'English',
      'ignore',
      ['Guides', 'Notes', 'Dimensions', 'Legend', 'Info', 'No print', 'Do not print', "Don't print"],
    ],
    ['German', 'creasing', ['Rillen', 'Rilllinien', 'Falz', 'Falzlinie']],
    ['German', 'cutting', ['Schnitt', 'Stanze', 'Stanzkontur', 'Schneiden', 'Kontur', 'Die Stanze']],
    ['German', 'print', ['Druck', 'Druckbild', 'Farbe']],
    ['German', 'white', ['Weiß', 'WEISS']],
    ['German', 'varnish', ['Lack']],
    ['German', 'embossing', ['Prägung']],
    ['German', 'gluing', ['Klebefläche']],
    ['German', 'ignore', ['Bemaßung', 'Hilfslinien', 'Nicht drucken']],
    ['French', 'creasing', ['Rainage', 'Plis', 'Ligne de pli']],
    ['French', 'cutting', ['Découpe', 'Coupe', 'Ligne de coupe']],
    ['French', 'partial-cutting', ['Mi-chair']],
    ['French', 'print', ['Impression', 'Ligne d’impression', "Calque d'impression"]],
    ['French', 'perforating', ['Prédécoupe']],
    ['French', 'white', ['Blanc']],
    ['French', 'ignore', ['Repères', 'Ne pas imprimer']],
    ['Spanish', 'creasing', ['Hendido', 'Pliegue', 'Plegado']],
    ['Spanish', 'cutting', ['Corte', 'Troquel', 'Línea de corte']],
    ['Spanish', 'partial-cutting', ['Medio corte', 'Semicorte']],
    ['Spanish', 'perforating', ['Perforación']],
    ['Spanish', 'print', ['Impresión']],
    ['Spanish', 'ignore', ['Guías', 'No imprimir']],
    ['Italian', 'creasing', ['Cordonatura', 'Piega']],
    ['Italian', 'cutting', ['Taglio', 'Fustella']],
    ['Italian', 'partial-cutting', ['Mezzo taglio']],
    ['Italian', 'print', ['Stampa']],
    ['Italian', 'white', ['Bianco']],
    ['Italian', 'ignore', ['Non stampare']],
    ['Portuguese', 'creasing', ['Vinco', 'Dobras']],
    ['Portuguese', 'cutting', ['Faca', 'Corte']],
    ['Portuguese', 'partial-cutting', ['Meio-corte']],
    ['Portuguese', 'perforating', ['Picote', 'Perfuração']],
    ['Portuguese', 'print', ['Impressão']],
    ['Portuguese', 'ignore', ['Não imprimir']],
    ['Dutch', 'creasing', ['Rillijn', 'Vouwlijnen']],
    ['Dutch', 'cutting', ['Snijlijn', 'Stans']],
    ['Dutch', 'print', ['Druk', 'Opdruk']],
    ['Dutch', 'white', ['Wit']],
    ['Dutch', 'ignore', ['Hulplijnen', 'Niet drukken']],
    ['Polish', 'creasing', ['Bigowanie', 'Zagięcie']],
    ['Polish', 'cutting', ['Cięcie', 'Wykrojnik']],
    ['Polish', 'perforating', ['Perforacja']],
    ['Polish', 'white', ['Biały']],
    ['Polish', 'varnish', ['Lakier']],
    ['Polish', 'ignore', ['Nie drukować']],
    ['Japanese', 'creasing', ['罫線', '折り線', 'スジ', '折り線レイヤー']],
    ['Japanese', 'cutting', ['カット', '抜き型', 'カットライン', 'ｶｯﾄ', 'カット線 2']],
    ['Japanese', 'partial-cutting', ['ハーフカット']],
    ['Japanese', 'perforating', ['ミシン目']],
    ['Japanese', 'print', ['印刷', '印刷データ']],
    ['Japanese', 'white', ['白', '白版']],
    ['Japanese', 'varnish', ['ニス']],
    ['Japanese', 'ignore', ['ガイド', '印刷しない']],
  ])('%s, %s: %j', (_, role, names) => {
    for (const name of names) expect([name, readName(name).role]).toEqual([name, role]);
  });
});

describe('words are whole', () => {
  it.each([
    'cute',
    'scorecard',
    'party',
    'Artist',
    'start',
    'heart',
    'cutlery',
    'shortcut',
    'uncut',
    'haircut',
    'diet',
    'Unfold',
    'manifold',
    'fingerprint',
    'printer',
    'blueprint',
    'whiteboard',
    'offwhite',
    'glossary',
    'guideposts',
    'notebook',
    'perfume',
    'performance',
    'glueten',
    'footnote',
    'increase',
    'kniferest',
    'colourful',
    'Stanzenwerk',
    'カットソー',
    '白黒',
    '面白い',
    '折り鶴',
    'Layer 1',
    '',
    '   ',
    '123',
    '#',
  ])('%j says nothing', (name) => {
    expect(readName(name)).toEqual({ role: null, words: [], roles: [], doubt: null });
  });

  it.each([
    ['FoldLines', ['fold', 'lines']],
    ['CUT_1', ['cut']],
    ['cutLine', ['cut', 'line']],
    ['Cut2Front', ['cut', 'front']],
    ['SVGCut', ['svg', 'cut']],
    ['die-cut.final', ['die', 'cut', 'final']],
    ['Crease (inner)', ['crease', 'inner']],
    ['Découpe/intérieure', ['decoupe', 'interieure']],
    ["Don't print", ['dont', 'print']],
    ["d'impression", ['d', 'impression']],
    ['ＣＵＴ', ['cut']],
    ['カット　線', ['カット', '線']],
  ])('%s falls into %j', (name, words) => {
    expect(splitWords(name)).toEqual(words);
  });
});

describe('names in doubt', () => {
  it.each<[string, readonly Role[]]>([
    ['cut and crease', ['cutting', 'creasing']],
    ['Print & Cut', ['print', 'cutting']],
    ['Cut guides', ['cutting', 'ignore']],
    ['Fold_Perf', ['creasing', 'perforating']],
  ])('%s names several roles and decides none', (name, roles) => {
    expect(readName(name)).toMatchObject({ role: null, roles, doubt: 'several' });
  });

  it.each([
    'Do not cut',
    'no crease',
    'NoCut',
    "Don't fold",
    'nicht schneiden',
    'ne pas couper',
    'sin corte',
    'bez bigowania',
  ])('%s says the opposite and decides nothing', (name) => {
    expect(readName(name)).toMatchObject({ role: null, doubt: 'negated' });
  });

  it('takes a word of negation only before the word it turns', () => {
    expect(readName('Cut No 2').role).toBe('cutting');
    expect(readName('Artwork, no bleed').role).toBe('print');
  });

  it('hears the article "die" only where nothing else is said', () => {
    expect(readName('Die')).toMatchObject({ role: 'cutting', words: ['die'] });
    expect(readName('die Farbe')).toMatchObject({ role: 'print', words: ['farbe'] });
    expect(readName('die Falzlinien')).toMatchObject({ role: 'creasing' });
  });

  it('lets the longest phrase count', () => {
    expect(readName('reverse partial cut').words).toEqual(['reverse partial cut']);
    expect(readName('partial cut, partial cut').roles).toEqual(['partial-cutting']);
  });
});

describe('the list', () => {
  const all = Object.entries(LAYER_WORDS).flatMap(([role, words]) => words.split(' ').map((word) => [word, role]));

  it('says every word once, folded as names are', () => {
    const words = all.map(([word]) => word!);
    expect(words.filter((word, i) => words.indexOf(word) !== i)).toEqual([]);
    expect(words.filter((word) => foldWord(word) !== word)).toEqual([]);
    expect(words.length).toBeGreaterThan(250);
  });

  it('is read as it stands', () => {
    for (const [word, role] of all) expect([word, readName(word!).role]).toEqual([word, role]);
  });
});

it('folds case and accents, and keeps the marks that make other letters', () => {
  expect(['Łódź', 'STRASSE', 'Straße', 'Größe', 'ﬁne'].map(foldWord)).toEqual([
    'lodz',
    'strasse',
    'strasse',
    'grosse',
    'fine',
  ]);
  expect(foldWord('ガ')).not.toBe(foldWord('カ'));
});

it('reads a name of any length in a moment', () => {
  expect(readName('cut '.repeat(1_000_000)).role).toBe('cutting');
  expect(readName(`${'折'.repeat(100_000)}`).role).toBeNull();
});
