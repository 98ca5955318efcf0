import { type RunnableVersion, rerunFile, runnable, versions } from '@draughtbook/shared-calc/rerun'

/**
 * The current version, making each workbook only once: many altered copies of one file are compared with the same expected
 * workbook, and making it takes most of the time of a re-run.
 */
export async function sharedVersion(): Promise<RunnableVersion> {
  const latest = versions.at(-1)
  if (!latest) throw new Error('no version')
  const version = await runnable(latest)
  const laidOut = new Map<string, ReturnType<typeof version.layOutSummary>>()
  const packed = new Map<unknown, Promise<Map<string, Uint8Array>>>()
  const evaluated = new Map<string, ReturnType<typeof version.evaluateWorked>>()
  return {
    ...version,
    evaluateWorked(record, options) {
      const key = JSON.stringify([record, options])
      const known = evaluated.get(key) ?? version.evaluateWorked(record, options)
      evaluated.set(key, known)
      return known
    },
    layOutSummary(record, again, signature) {
      const key = JSON.stringify([record, again.evaluation, signature])
      const known = laidOut.get(key) ?? version.layOutSummary(record, again, signature)
      laidOut.set(key, known)
      return known
    },
    async packSummary(layout) {
      const pack = version.packSummary
      if (!pack) throw new Error('the version packs nothing')
      const known = packed.get(layout) ?? pack(layout)
      packed.set(layout, known)
      // The rows of digests are put into the parts afterwards.
      return new Map(await known)
    },
  }
}

/** Re-runs a file against a version. */
export async function rerunOnce(bytes: Uint8Array, version: RunnableVersion) {
  const [test] = await rerunFile(bytes, 'archived.xlsx', { versions: [version] })
  if (!test) throw new Error('no test came back')
  return test
}
