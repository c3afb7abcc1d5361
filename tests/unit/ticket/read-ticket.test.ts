// Tickets: complete after reading, every fault told at once with its path and the way out.
import { describe, expect, it } from 'vitest';
import { FINDING_KINDS, type Finding } from '../../../src/model/finding.js';
import { PinbarError } from '../../../src/model/trouble.js';
import { DEFAULT_TICKET } from '../../../src/ticket/default-ticket.js';
import { readTicket } from '../../../src/ticket/read-ticket.js';

function refusal(value: unknown): PinbarError {
  try {
    readTicket(value);
  } catch (error) {
    expect(error).toBeInstanceOf(PinbarError);
    return error as PinbarError;
  }
  throw new Error('the ticket was taken');
}

function faults(value: unknown): readonly Finding[] {
  const error = refusal(value);
  expect(error.code).toBe('ticket/wrong');
  return error.findings;
}

function paths(value: unknown): readonly unknown[] {
  return faults(value)
    .map((item) => item.data.path)
    .sort();
}

describe('a ticket that is right', () => {
  it('gets every default', () => {
    expect(readTicket({ pinbar: 1 })).toEqual(DEFAULT_TICKET);
    expect(readTicket('{"pinbar":1}')).toEqual(DEFAULT_TICKET);
    expect(readTicket('\ufeff{"pinbar":1,"$schema":"./ticket.schema.json"}')).toEqual(DEFAULT_TICKET);
    expect(readTicket({ pinbar: 1, hidden: undefined, marks: { label: undefined } })).toEqual(DEFAULT_TICKET);
  });

  it('knows one edge that the machine holds, for copies and checks alike', () => {
    const { sheet, checks } = readTicket({
      pinbar: 1,
      sheet: { widthMm: 700, heightMm: 500 },
      checks: { gripperMm: 12 },
    });
    expect([sheet!.gripperSide, checks.gripperSide]).toEqual(['bottom', 'bottom']);
  });

  it('keeps what it says and fills in the rest', () => {
    const ticket = readTicket({ pinbar: 1, marks: { crossSizeMm: 8 }, userUnitsPerInch: 72, hidden: 'include' });
    expect(ticket.marks).toEqual({ ...DEFAULT_TICKET.marks, crossSizeMm: 8 });
    expect(ticket.userUnitsPerInch).toBe(72);
    const { checks } = readTicket({ pinbar: 1, checks: { gripperMm: 12, gripperSide: 'left' } });
    expect(checks).toEqual({ ...DEFAULT_TICKET.checks, gripperMm: 12, gripperSide: 'left' });
    expect(ticket.hidden).toBe('include');
    expect(ticket).not.toHaveProperty('pinbar');
  });

  it('shares nothing with the object it was read from', () => {
    const rules = [{ pass: 'cutting', layer: 'Cut' }];
    const ticket = readTicket({ pinbar: 1, rules });
    rules[0]!.layer = 'Art';
    expect(ticket.rules).toEqual([{ pass: 'cutting', layer: 'Cut' }]);
  });

  it('knows passes to be marked by any name that a pass can have', () => {
    const passes = [{ name: 'first', role: 'creasing' }];
    const marked = ['first', 'cut', 'print', 'partial-cut', 'cutting'];
    expect(readTicket({ pinbar: 1, passes, marks: { passes: marked } }).marks.passes).toEqual(marked);
  });

  it('knows a pass by its name and by its role', () => {
    const passes = [{ name: 'first', role: 'creasing' }];
    const rules = [
      { pass: 'first', layer: 'A' },
      { pass: 'creasing', layer: 'B' },
      { pass: 'cutting', dashed: false },
    ];
    expect(readTicket({ pinbar: 1, passes, rules }).rules).toEqual(rules);
  });
});

describe('a ticket that is wrong', () => {
  it('registers a pass to nothing that is there', () => {
    const passes = [
      { name: 'first', role: 'print', registersTo: 'edge' },
      { name: 'second', role: 'cutting', registersTo: 'frist' },
      { name: 'third', role: 'creasing', registersTo: 'printed-marks' },
    ];
    const [fault] = faults({ pinbar: 1, passes });
    expect(paths({ pinbar: 1, passes })).toEqual(['passes[1].registersTo']);
    expect(fault!.remedy).toBe('Did you mean "first"?');
  });

  it('tells every fault at once, two unknown keys of one object among them', () => {
    const wrong = {
      pinbar: 1,
      rules: [{ pass: 'cutting', strok: '#f00', colour: 'red' }, { pass: 'cuting', layer: 'A' }, { layer: 'B' }],
      hiden: 'skip',
      marks: { discDiameterMm: 500, lable: true },
      marginMm: '3',
      witness: 'somtimes',
    };
    expect(paths(wrong)).toEqual(
      [
        'rules[0].strok',
        'rules[0].colour',
        'rules[1].pass',
        'rules[2].pass',
        'hiden',
        'marks.discDiameterMm',
        'marks.lable',
        'marginMm',
        'witness',
      ].sort(),
    );
  });

  it.each<[unknown, string, string, string]>([
    [{ pinbar: 1, rules: [{ pass: 'cutting', strok: '#f00' }] }, 'rules[0].strok', 'unknown key', '"stroke"'],
    [{ pinbar: 1, zzz: 1 }, 'zzz', 'unknown key', 'linkedPictures'],
    [{ pinbar: 2 }, 'pinbar', 'from 1 to 1', 'run again'],
    [{}, 'pinbar', 'lacks pinbar', 'from 1 to 1'],
    [{ pinbar: 1, hidden: 'inclde' }, 'hidden', 'ask, skip, include, stop', '"include"'],
    [{ pinbar: 1, marks: { lineWidthMm: 0 } }, 'marks.lineWidthMm', '0.01 to 5', 'run again'],
    [{ pinbar: 1, marks: [] }, 'marks', 'an object', 'run again'],
    [{ pinbar: 1, rules: {} }, 'rules', 'a list', 'run again'],
    [{ pinbar: 1, rules: [7] }, 'rules[0]', 'a list', 'run again'],
    [{ pinbar: 1, userUnitsPerInch: Number.NaN }, 'userUnitsPerInch', 'or null', 'run again'],
    [{ pinbar: 1, passes: [{ name: 'a', role: 'cuttin' }] }, 'passes[0].role', 'creasing', '"cutting"'],
    [{ pinbar: 1, passes: [{ name: '', role: 'cutting' }] }, 'passes[0].name', '1 to 500', 'run again'],
    [{ pinbar: 1, severities: { 'verify/lost': 'note' } }, 'severities.verify/lost', 'is an error', 'line out'],
    [
      { pinbar: 1, severities: { 'resolve/live-tekst': 'error' } },
      'severities.resolve/live-tekst',
      'unknown key',
      '"resolve/live-text"',
    ],
    [{ pinbar: 1, severities: { zzz: 'error' } }, 'severities.zzz', 'unknown key', 'codes of warnings and notes'],
    [{ pinbar: 1, severities: { 'resolve/live-text': 'fatal' } }, 'severities.resolve/live-text', 'error', 'run again'],
    [{ pinbar: 1, rules: [{ pass: 'cut', layer: 'A' }] }, 'rules[0].pass', 'nor a role', '"cutting"'],
    [{ pinbar: 1, rules: [{ pass: 'zzz', layer: 'A' }] }, 'rules[0].pass', 'nor a role', 'partial-cutting'],
    [{ pinbar: 1, marks: { passes: ['print', 'creese'] } }, 'marks.passes[1]', 'no pass can have', '"crease"'],
    [{ pinbar: 1, marks: { passes: ['zzz'] } }, 'marks.passes[0]', 'no pass can have', 'partial-cut'],
    [{ pinbar: 1, rules: [{ pass: 'cutting' }] }, 'rules[0]', 'no condition', 'rest'],
    [{ pinbar: 1, rules: [{ pass: 'cutting', rest: false }] }, 'rules[0]', 'no condition', 'rest'],
    [{ pinbar: 1, rules: [{ pass: 'print', rest: true, layer: 'A' }] }, 'rules[0].rest', 'layer too', 'alone'],
    [
      { pinbar: 1, rules: [{ pass: 'cutting', layer: 'A', colourTolerance: 3 }] },
      'rules[0].colourTolerance',
      'no colour',
      'stroke or fill',
    ],
    [
      {
        pinbar: 1,
        rules: [
          { pass: 'print', rest: true },
          { pass: 'cutting', rest: true },
        ],
      },
      'rules[1].rest',
      'takes already',
      'one of them',
    ],
    [
      {
        pinbar: 1,
        passes: [
          { name: 'a', role: 'cutting' },
          { name: 'a', role: 'print' },
        ],
      },
      'passes[1].name',
      'Two passes',
      'name of its own',
    ],
  ])('%j: %s', (value, path, found, way) => {
    const all = faults(value);
    expect(all.map((item) => item.data.path)).toEqual([path]);
    expect(all[0]!.message).toContain(found);
    expect(all[0]!.remedy).toContain(way);
  });

  it('does not blame a rule for a pass whose role is wrong', () => {
    const passes = [{ name: 'first', role: 'cuttin' }];
    expect(paths({ pinbar: 1, passes, rules: [{ pass: 'first', layer: 'A' }] })).toEqual(['passes[0].role']);
  });

  it('refuses every code of severity error, and takes every other', () => {
    for (const [code, kind] of Object.entries(FINDING_KINDS)) {
      const ticket = { pinbar: 1, severities: { [code]: 'note' } };
      if (kind.severity === 'error') expect(paths(ticket)).toEqual([`severities.${code}`]);
      else expect(readTicket(ticket).severities).toEqual({ [code]: 'note' });
    }
  });

  it.each([null, 3, true, [], [{ pinbar: 1 }], undefined, () => 1, new Date(0), 'null', '[]', '3'])(
    'is no object: %s',
    (value) => {
      expect(faults(value).map((item) => item.message)).toEqual(['The ticket is not an object.']);
    },
  );

  it('does not take the names that every object has for keys of its own', () => {
    for (const key of ['__proto__', 'constructor', 'toString', 'hasOwnProperty']) {
      expect(paths(`{"pinbar":1,"${key}":{"x":1}}`)).toEqual([key]);
      expect(paths(`{"pinbar":1,"severities":{"${key}":"note"}}`)).toEqual([`severities.${key}`]);
    }
  });

  it('stands values that JSON cannot say', () => {
    const round: { pinbar: number; hidden?: unknown } = { pinbar: 1 };
    round.hidden = round;
    expect(paths(round)).toEqual(['hidden']);
    expect(paths({ pinbar: 1, marginMm: 3n })).toEqual(['marginMm']);
  });

  it('bounds its lists', () => {
    const rule = { pass: 'cutting', layer: 'A' };
    expect(readTicket({ pinbar: 1, rules: Array(1000).fill(rule) }).rules.length).toBe(1000);
    expect(paths({ pinbar: 1, rules: Array(1001).fill(rule) })).toEqual(['rules']);
    expect(paths({ pinbar: 1, marks: { passes: Array(1001).fill('a') } })).toEqual(['marks.passes']);
    expect(paths({ pinbar: 1, rules: [{ pass: 'cutting', layer: 'x'.repeat(501) }] })).toEqual(['rules[0].layer']);
  });
});

describe('a ticket that is not JSON', () => {
  it.each([
    ['{\n  "pinbar": 1,\n  "hidden" "skip"\n}', 3, 12, '"\\"skip\\""'],
    ['{"pinbar": 1', 1, 13, 'ends too soon'],
    ['', 1, 1, 'ends too soon'],
    ['{\r\n"pinbar": 1,\r\n}', 3, 1, '"}"'],
    ['\ufeff{"é𝄞": x}', 1, 8, '"x}"'],
  ])('%j tells line and column', (text, line, column, found) => {
    const error = refusal(text);
    expect(error.code).toBe('ticket/not-json');
    expect(error.findings.at(-1)!.place).toEqual({ line, column });
    expect(error.message).toContain(found.replaceAll('\\"', '"'));
    expect(error.message).toContain(`line ${line}, column ${column}`);
    expect(error.cause).toBeInstanceOf(SyntaxError);
  });
});
