// Where a job may go: what is in the way is told apart from what cannot be written.
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { publishFiles } from '../../../src/cli/publish-files.js';
import type { OutputFile } from '../../../src/model/sheet.js';

const FILE: OutputFile = {
  name: 'carton.1-cut.svg',
  mediaType: 'image/svg+xml',
  pieces: [new Uint8Array([1, 2]), new Uint8Array([3])],
  byteLength: 3,
  sha256: '',
};

describe('publishFiles', () => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'pinbar-publish-'));
    writeFileSync(join(folder, 'letter'), 'Dear printer');
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  const publish = (to: string, files = [FILE]): Promise<void> =>
    publishFiles(join(folder, to), files, { inputPath: null, force: false });

  it('makes the folders on the way', async () => {
    await publish('friday/passes');
    expect(readdirSync(join(folder, 'friday/passes'))).toEqual(['carton.1-cut.svg']);
    expect(readdirSync(join(folder, 'friday'))).toEqual(['passes']);
  });

  it('refuses a place where a file is', async () => {
    await expect(publish('letter')).rejects.toMatchObject({ code: 'write/exists' });
  });

  it('says that a place under a file cannot be written', async () => {
    await expect(publish('letter/passes')).rejects.toMatchObject({
      code: 'write/failed',
      message: expect.stringMatching(/passes could not be written: a file stands on the way/),
    });
    expect(readdirSync(folder)).toEqual(['letter']);
  });

  it('leaves nothing behind when a file cannot be written whole', async () => {
    await expect(publish('passes', [{ ...FILE, byteLength: 4 }])).rejects.toMatchObject({ code: 'write/failed' });
    expect(readdirSync(folder)).toEqual(['letter']);
  });
});
