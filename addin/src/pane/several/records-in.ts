import { InputError, parseRecord, problemsInWords } from '@draughtbook/shared-calc'
import type { Layout } from '@draughtbook/shared-calc/log'
import { type ReadRecords, readRecords } from '@draughtbook/shared-calc/register'
import { strFromU8, unzipSync } from 'fflate'

/**
 * The records of one file: a summary workbook, a log by a layout, a record (.json), or a test handed over as one file (.zip). What
 * cannot be used is left out, with the reason.
 */
export function recordsIn(bytes: Uint8Array, file: string, layouts: readonly Layout[]): ReadRecords {
  if (/\.json$/i.test(file)) return recordIn(bytes, file)
  if (!/\.zip$/i.test(file)) return readRecords(bytes, file, layouts)
  const record = handedOver(bytes)
  if (typeof record === 'string') return { records: [], leftOut: [{ file, why: record }] }
  return recordIn(record, file)
}

const RECORD = 'record.json'
/** More than the largest record takes. */
const MOST_BYTES = 20e6

/** The record of a test of the page, or why there is none. */
function handedOver(bytes: Uint8Array): Uint8Array | string {
  try {
    const found = unzipSync(bytes, {
      filter: ({ name, originalSize }) => name === RECORD && originalSize <= MOST_BYTES,
    })
    return found[RECORD] ?? 'the test is not finished: entries are missing'
  } catch {
    return 'not a zip file, or it is cut off'
  }
}

/** As much of a record that cannot be used as says which run is which. */
function directionsOf(given: unknown): { runs: { direction?: string }[] } {
  const { runs } = (given ?? {}) as { runs?: unknown }
  return {
    runs: (Array.isArray(runs) ? runs : []).map((run: unknown) => {
      const { direction } = (run ?? {}) as { direction?: unknown }
      return typeof direction === 'string' ? { direction } : {}
    }),
  }
}

function recordIn(bytes: Uint8Array, file: string): ReadRecords {
  const left = (why: string): ReadRecords => ({ records: [], leftOut: [{ file, why }] })
  let given: unknown
  try {
    given = JSON.parse(strFromU8(bytes))
    return { records: [{ file, record: parseRecord(given) }], leftOut: [] }
  } catch (error) {
    if (error instanceof InputError) return left(problemsInWords(error.problems, directionsOf(given)))
    if (error instanceof SyntaxError) return left('it is not valid JSON')
    throw error
  }
}
