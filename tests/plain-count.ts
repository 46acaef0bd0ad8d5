import type { Reporter, TestModule } from 'vitest/node';

/** Closes a run with one plain line that any reader of logs understands: `12 passed, 0 failed, 0 skipped`. */
export default class PlainCount implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const counts = { passed: 0, failed: 0, skipped: 0, pending: 0 };
    for (const module of modules)
      for (const test of module.children.allTests()) counts[test.result().state] += 1;
    process.stdout.write(`\n${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped\n`);
  }
}
