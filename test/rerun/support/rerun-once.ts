import {
  type RerunOptions,
  type RunnableVersion,
  rerunFile,
  runnable,
  versions,
} from '@draughtbook/shared-calc/rerun'

/** What many altered copies of one file are re-run with. */
export type ForCopies = Pick<RerunOptions, 'versions' | 'kept'>

/**
 * The current version, working out and making each workbook only once: many altered copies of one file are compared with the same
 * expected workbook, and making it takes most of the time of a re-run.
 */
export async function forCopies(): Promise<ForCopies> {
  const latest = versions.at(-1)
  if (!latest) throw new Error('no version')
  const version = await runnable(latest)
  const evaluated = new Map<string, ReturnType<typeof version.evaluateWorked>>()
  const shared: RunnableVersion = {
    ...version,
    evaluateWorked(record, options) {
      const key = JSON.stringify([record, options])
      const known = evaluated.get(key) ?? version.evaluateWorked(record, options)
      evaluated.set(key, known)
      return known
    },
  }
  return { versions: [shared], kept: new Map() }
}

/** Re-runs a file with that. */
export async function rerunOnce(bytes: Uint8Array, options: ForCopies = {}) {
  const [test] = await rerunFile(bytes, 'archived.xlsx', options)
  if (!test) throw new Error('no test came back')
  return test
}
