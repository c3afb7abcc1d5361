// A tangle of lines is told, and nothing else is said of its lines.
import { describe, expect, it } from 'vitest';
import { checkDoubledLines } from '../../../src/check/check-doubled-lines.js';
import { checkTangle } from '../../../src/check/check-tangle.js';
import { dieFacts } from './die-facts.js';

describe('checkTangle', () => {
  it('says why', async () => {
    const facts = await dieFacts({ cut: ['M10 10H90', 'M10 10H90'] });
    expect(checkTangle(facts)).toEqual([]);
    expect(checkTangle({ ...facts, tangle: 'pieces' })[0]!.data).toEqual({ why: 'pieces' });
    expect(checkTangle({ ...facts, tangle: 'meetings' })[0]!.data).toEqual({ why: 'meetings' });
  });

  it('is one where all lines run through one place', async () => {
    // 1,450 lines through a point: over a million meetings, where half a million and 8 for each line are allowed.
    const star = Array.from({ length: 1450 }, (_, i) => `M${10 + i / 10} 10L${155 - i / 10} 190`).join('');
    const facts = await dieFacts({ cut: [star] });
    expect(facts.tangle).toBe('meetings');
    expect(checkDoubledLines(facts)).toEqual([]);
    expect(checkTangle(facts)).toHaveLength(1);
  });
});
