// Every finding code of the closed table has a sample that provokes it and a clean twin that does not.
import { describe, expect, it } from 'vitest';
import { FINDING_KINDS, type Finding, type FindingCode } from '../../src/index.js';
import { runVariant } from './run-sample.js';
import { listSamples, type NamedSample, type Sample } from './sample.js';
import { listTextFaults } from './text-faults.js';

const SAMPLES = listSamples();
const CODES = Object.keys(FINDING_KINDS) as FindingCode[];

/** About the whole file, the whole job, the ticket or a rule: no element, so no line. */
const WITHOUT_LINE: ReadonlySet<string> = new Set<FindingCode>([
  'source/gzip-broken',
  'source/transcoded',
  'limit/bytes',
  'limit/unpacked-bytes',
  'classify/rule-unused',
  'classify/pass-empty',
  'classify/draws-nothing',
  'classify/no-sheet',
  'mark/no-room',
  'mark/percent-lengths',
  'mark/left-out',
  'mark/no-such-pass',
  'check/artboard-too-large',
  'check/size-suspicious',
  'check/lines-tangled',
  'check/bleed-unchecked',
  'check/white-unchecked',
  'check/pass-size-differs',
  'check/marks-not-there',
  'check/turn-axis-unsaid',
  'compact/moved',
  'compact/too-large',
  'register/turned',
  'register/flipped',
  'register/names-mixed',
  'register/outlier',
  'register/no-residual',
  'register/beyond-tolerance',
  'register/file-changed',
  'register/corrected-already',
  'register/not-kept',
  'sequence/stayed',
  'sequence/order-kept',
  'sequence/start-kept',
  'sequence/no-such-pass',
  'ties/no-such-pass',
  'turn/not-made',
  'turn/off-artboard',
  'sheet/too-small',
  'sheet/bleed-into-neighbour',
  'sheet/laid-out-already',
  'sheet/not-kept',
  'sheet/scaled',
  'sheet/copy-mark-missing',
  'ties/few',
  'ties/far-apart',
  'ties/stretched',
  'ties/line-short',
  'ties/left-whole',
  'verify/artboard-differs',
  'verify/marks-differ',
  'verify/extents-differ',
  'witness/not-asked',
  'ticket/wrong',
  'profile/wrong',
  'write/exists',
  'write/failed',
  'read/failed',
  'use/wrong',
  'cancelled',
]);

/** The second judge tells elements by name and id; its reader counts no lines. */
function isWitness({ how, judge }: Sample): boolean {
  return how === 'verify' || judge === 'witness';
}

function hasLine({ place }: Finding): boolean {
  return (place.line ?? 0) >= 1;
}

function isAboutElement({ place }: Finding): boolean {
  return place.element !== undefined || place.id !== undefined || place.layerPath !== undefined;
}

function codesOf(findings: readonly Finding[]): readonly string[] {
  return [...new Set(findings.map((item) => item.code))].sort();
}

async function provoke(named: NamedSample): Promise<{ all: readonly Finding[]; own: readonly Finding[] }> {
  const { findings } = await runVariant(named, named.sample);
  return { all: findings, own: findings.filter((item) => item.code === named.code) };
}

describe('the table of findings', () => {
  it.each(CODES)('%s has a sample', (code) => {
    expect(SAMPLES.some((named) => named.code === code)).toBe(true);
  });

  it('has no sample for a code that is not in it', () => {
    expect(SAMPLES.map((named) => named.code).filter((code) => !(code in FINDING_KINDS))).toEqual([]);
  });
});

describe.each(SAMPLES)('$name', (named) => {
  const { code, sample } = named;

  it('is provoked by its sample, and by nothing that it does not tell', async () => {
    const { all, own } = await provoke(named);
    expect(codesOf(all)).toEqual([code, ...(sample.also ?? [])].sort());
    for (const item of own) expect(item.severity).toBe(FINDING_KINDS[code].severity);
  });

  it('says where, and what was measured', async () => {
    const { own } = await provoke(named);
    const { place, data, says } = sample.expect;
    expect(own).toContainEqual(
      expect.objectContaining({
        place: expect.objectContaining(place ?? {}),
        // Without the type of recursive JSON, over which the matcher's own type does not end.
        data: expect.objectContaining((data ?? {}) as Record<string, unknown>),
        message: expect.stringContaining(says ?? ''),
      }),
    );
    if (isWitness(sample)) return;
    expect(own.filter((item) => isAboutElement(item) && !hasLine(item)).map((item) => item.message)).toEqual([]);
    expect(own.some(hasLine)).toBe(!WITHOUT_LINE.has(code));
  });

  it('speaks in plain sentences', async () => {
    const { own } = await provoke(named);
    expect(own.flatMap(listTextFaults)).toEqual([]);
  });

  it('is not given by its clean twin', async () => {
    const twin = { ...sample, ...sample.clean };
    const { findings, outcome } = await runVariant(named, twin);
    expect(codesOf(findings)).toEqual([...(sample.clean.also ?? [])].sort());
    if (twin.how === 'split') expect(outcome).toBe('in-register');
    if (twin.how === 'check') expect(outcome).toBe('fit');
  });
});
