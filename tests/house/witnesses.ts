// Tests that need something from outside: where it is missing they are skipped loudly, and on CI they fail.
import { existsSync } from 'node:fs';
import { describe, it } from 'vitest';

/** Where each witness stands once its Debian package is installed. */
const WITNESSES = {
  chromium: { path: '/usr/bin/chromium', debian: 'chromium' },
  openclipart: { path: '/usr/share/openclipart/svg', debian: 'openclipart-svg' },
  librsvg: { path: '/usr/libexec/installed-tests/RSVG/fixtures/reftests/svg1.1', debian: 'librsvg2-tests' },
} as const;

/** Something from outside that tests may need. */
export type Witness = keyof typeof WITNESSES;

/** Path of a witness. */
export function witnessPath(witness: Witness): string {
  return WITNESSES[witness].path;
}

/** `describe` for tests that need a witness. */
export function describeWith(witness: Witness, name: string, tests: () => void): void {
  const { path, debian } = WITNESSES[witness];
  if (existsSync(path)) {
    describe(name, tests);
    return;
  }
  const reason = `${witness} is missing; Debian package ${debian}`;
  if (process.env.CI === undefined) {
    describe.skip(`${name} (${reason})`, tests);
    return;
  }
  describe(name, () => {
    it('has its witness', () => {
      throw new Error(reason);
    });
  });
}
