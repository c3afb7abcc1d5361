// Reads the shop profile that the command line names, and what goes with it.
import { readFile } from 'node:fs/promises';
import { PinbarError, type RunRequest, readProfile } from '../index.js';

/** Options of the command line that ask for a run sheet. */
export interface RunFlags {
  readonly profile?: string;
  readonly machine?: string;
  readonly material?: string;
  readonly sheets?: number;
}

async function readText(path: string): Promise<string> {
  try {
    return await readFile(path, 'utf8');
  } catch (error) {
    throw new PinbarError(
      'use/wrong',
      { message: `The profile ${path} could not be read.`, remedy: 'Check the name and the rights.' },
      [],
      error,
    );
  }
}

/**
 * What the command line asks of a run sheet; null where it names no profile.
 *
 * @throws PinbarError `profile/...` or `use/wrong`.
 */
export async function readRunRequest(flags: RunFlags): Promise<RunRequest | null> {
  const { profile, machine, material, sheets } = flags;
  if (profile === undefined) {
    if (machine === undefined && material === undefined && sheets === undefined) return null;
    throw new PinbarError('use/wrong', {
      message: '--machine, --material and --sheets are of a run sheet, and no profile is named.',
      remedy: 'Add --profile shop.json, or leave them out.',
    });
  }
  return {
    profile: readProfile(await readText(profile)),
    ...(machine === undefined ? {} : { machine }),
    ...(material === undefined ? {} : { material }),
    ...(sheets === undefined ? {} : { sheets }),
  };
}
