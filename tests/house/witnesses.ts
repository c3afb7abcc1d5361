// Tests that need something from outside: where it is missing they are skipped loudly, and on CI they fail.
import { existsSync } from 'node:fs';
import { describe } from 'vitest';

const WITNESSES = {
  chromium: '/usr/bin/chromium',
  openclipart: '/usr/share/openclipart/svg',
  librsvg: '/usr/libexec/installed-tests/RSVG/fixtures/reftests/svg1.1',
} as const;

/** `describe` for tests that need a witness. */
export function describeWith(witness: keyof typeof WITNESSES, name: string, tests: () => void): void {
  if (existsSync(WITNESSES[witness]) || process.env['CI'] !== undefined) describe(name, tests);
  else describe.skip(`${name} (${witness} is missing)`, tests);
}
