import { relative } from 'node:path'
import type { Reporter, TestModule } from 'vitest/node'

/**
 * Ends a run with the time of each folder and one plain line, "N passed, N failed" (", N skipped" where there are any), for CI to
 * read.
 */
export default class SummaryReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly unknown[]): void {
    for (const line of folderLines(modules)) console.log(line)
    for (const line of retriedLines(modules)) console.log(line)
    console.log(summaryLine(modules, unhandledErrors.length))
  }
}

/** The time of each folder's files together, the longest first. Files of two folders may have run at the same time. */
export function folderLines(modules: readonly TestModule[]): string[] {
  const seconds = new Map<string, number>()
  for (const module of modules) {
    const folder = folderOf(relative(module.project.config.root, module.moduleId))
    const { duration, setupDuration, collectDuration } = module.diagnostic()
    const own = (duration + setupDuration + collectDuration) / 1000
    seconds.set(folder, (seconds.get(folder) ?? 0) + own)
  }
  return [...seconds]
    .sort(([, one], [, other]) => other - one)
    .map(([folder, time]) => `${time.toFixed(1).padStart(7)} s  ${folder}`)
}

/** `test/service/stop.test.ts` → `test/service`. */
const folderOf = (path: string): string => path.split('/').slice(0, -1).slice(0, 2).join('/') || '.'

/** Tests that passed only when run again. */
export function retriedLines(modules: readonly TestModule[]): string[] {
  return modules.flatMap((module) =>
    [...module.children.allTests()]
      .filter((test) => test.diagnostic()?.flaky)
      .map((test) => `passed at the second attempt: ${test.fullName}`),
  )
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
