// Closes a run with its count, and names every test that was skipped.
import type { Reporter, TestModule } from 'vitest/node';

export default class CountReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[]): void {
    let passed = 0;
    let failed = errors.length;
    const skipped: string[] = [];
    for (const module of modules) {
      if (module.errors().length > 0) failed += 1;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === 'passed') passed += 1;
        else if (state === 'failed') failed += 1;
        else skipped.push(test.fullName);
      }
    }
    for (const name of skipped) process.stdout.write(`SKIPPED ${name}\n`);
    // After the default reporter's own summary.
    setImmediate(() => process.stdout.write(`${passed} passed, ${failed} failed, ${skipped.length} skipped\n`));
  }
}
