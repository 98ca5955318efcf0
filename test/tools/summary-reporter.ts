import type { Reporter, TestModule } from 'vitest/node'

/** Ends a run with one plain line, "N passed, N failed" (", N skipped" where there are any), for CI to read. */
export default class SummaryReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly unknown[]): void {
    console.log(summaryLine(modules, unhandledErrors.length))
  }
}

/** A file or group that broke outside its tests, and an error nobody caught, count as failures of their own. */
export function summaryLine(modules: readonly TestModule[], unhandledErrors: number): string {
  const count = { passed: 0, failed: unhandledErrors, skipped: 0, pending: 0 }
  for (const module of modules) {
    count.failed += module.errors().length > 0 ? 1 : 0
    for (const suite of module.children.allSuites()) count.failed += suite.errors().length > 0 ? 1 : 0
    for (const test of module.children.allTests()) count[test.result().state] += 1
  }
  const skipped = count.skipped + count.pending
  return `${count.passed} passed, ${count.failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`
}
