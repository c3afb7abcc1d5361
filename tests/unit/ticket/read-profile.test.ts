// A shop profile is read whole, or all its faults are told at once.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { PinbarError } from '../../../src/model/trouble.js';
import { readProfile } from '../../../src/ticket/read-profile.js';
import { PROFILE_SCHEMA } from '../../../src/ticket/ticket-schema.js';

const figure = (value: unknown) => ({ value, from: 'typed', on: '2026-02-03', by: 'R. O.' });

const PLAIN = {
  pinbar: 1,
  shop: 'Corner shop',
  machines: [{ name: 'table', tools: [{ name: 'knife', roles: ['cutting'] }] }],
  materials: [{ name: 'board', settings: [{ tool: 'knife', speedCmS: figure(10) }] }],
};

function faultsOf(value: unknown): readonly (readonly [unknown, string, string])[] {
  try {
    readProfile(value);
    return [];
  } catch (error) {
    if (!(error instanceof PinbarError)) throw error;
    return error.findings.map(({ data, message, remedy }) => [data.path, message, remedy] as const);
  }
}

describe('readProfile', () => {
  it('takes text and objects, and leaves out what nobody entered', () => {
    const profile = readProfile(JSON.stringify(PLAIN));
    expect(profile).toEqual(readProfile(PLAIN));
    expect(profile.orders).toEqual([]);
    expect(profile.materials[0]!.settings[0]).toEqual({ tool: 'knife', speedCmS: figure(10) });
  });

  it('shares nothing with what it was read from', () => {
    const own = structuredClone(PLAIN);
    const profile = readProfile(own);
    own.machines[0]!.name = 'other';
    expect(profile.machines[0]!.name).toBe('table');
  });

  it('tells every fault of shape at once, with path and nearest word', () => {
    const faults = faultsOf({
      ...PLAIN,
      shoop: 'x',
      machines: [{ name: 'table', tools: [], widthMm: figure(-1), origin: figure('botom-left') }],
      materials: [{ name: 'board', settings: [{ tool: 'knife', pressureGf: { value: 300 } }] }],
    });
    expect(faults.map(([path]) => path)).toEqual([
      'shoop',
      'machines[0].widthMm.value',
      'machines[0].origin.value',
      'materials[0].settings[0].pressureGf.from',
      'materials[0].settings[0].pressureGf.on',
      'materials[0].settings[0].pressureGf.by',
    ]);
    expect(faults[0]![2]).toBe('Did you mean "shop"?');
    expect(faults[2]![2]).toBe('Did you mean "bottom-left"?');
    expect(faults[3]![1]).toContain('The profile lacks materials[0].settings[0].pressureGf.from');
  });

  it('tells every fault of meaning at once', () => {
    const faults = faultsOf({
      ...PLAIN,
      machines: [
        { name: 'table', tools: [{ name: 'knife', roles: ['cuting'], hazards: ['blad'] }] },
        { name: 'table', tools: [] },
      ],
      materials: [
        {
          name: 'board',
          settings: [
            { tool: 'knive', speedCmS: { ...figure(1), on: '2026-13-01' } },
            { tool: 'knife', machine: 'tabel' },
          ],
        },
      ],
    });
    expect(faults.map(([path, , remedy]) => [path, remedy])).toEqual([
      ['machines[1].name', 'Give each a name of its own.'],
      ['machines[0].tools[0].roles[0]', 'Did you mean "cutting"?'],
      ['machines[0].tools[0].hazards[0]', 'Did you mean "blade"?'],
      ['materials[0].settings[0].tool', 'Did you mean "knife"?'],
      ['materials[0].settings[1].machine', 'Did you mean "table"?'],
      ['materials[0].settings[0].speedCmS.on', 'Write it as 2026-03-31.'],
    ]);
  });

  it.each([
    ['2026-02-28', true],
    ['2026-02-29', false],
    ['2028-02-29', true],
    ['1900-02-29', false],
    ['2000-02-29', true],
    ['2026-04-30', true],
    ['2026-04-31', false],
    ['2026-00-10', false],
    ['2026-01-00', false],
    ['0001-01-01', true],
    ['26-01-01', false],
    ['2026-1-1', false],
  ])('takes %s for a day of the calendar: %s', (on, isDay) => {
    const settings = [{ tool: 'knife', speedCmS: { ...figure(1), on } }];
    const faults = faultsOf({ ...PLAIN, materials: [{ name: 'board', settings }] });
    expect(faults.map(([, message]) => message)).toEqual(
      isDay ? [] : [`materials[0].settings[0].speedCmS.on is "${on}", which is no day.`],
    );
  });

  it('takes the starter profile, in which every figure says that nobody tried it', () => {
    const text = readFileSync('samples/shop.profile.json', 'utf8');
    expect(() => readProfile(text)).not.toThrow();
    const states: unknown[] = [];
    const visit = (value: unknown): void => {
      if (typeof value !== 'object' || value === null) return;
      if (Object.hasOwn(value, 'value')) states.push((value as { readonly state?: string }).state);
      Object.values(value).forEach(visit);
    };
    visit(JSON.parse(text));
    expect(states.length).toBeGreaterThan(25);
    expect(new Set(states)).toEqual(new Set(['untested starting point']));
  });
});

describe('the schema of profiles', () => {
  it('closes every object and asks for what a figure needs', () => {
    let figures = 0;
    const visit = (node: unknown): void => {
      if (typeof node !== 'object' || node === null) return;
      const { type, additionalProperties, properties, required } = node as {
        readonly type?: unknown;
        readonly additionalProperties?: unknown;
        readonly properties?: object;
        readonly required?: readonly string[];
      };
      if (type === 'object') expect(additionalProperties).toBe(false);
      if (properties !== undefined && Object.hasOwn(properties, 'value')) {
        figures += 1;
        expect(required).toEqual(['value', 'from', 'on', 'by']);
      }
      Object.values(node).forEach(visit);
    };
    visit(PROFILE_SCHEMA);
    expect(figures).toBe(30);
  });
});
