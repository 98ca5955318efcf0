import type { Before } from './before.js'
import type { Draft } from './draft.js'

/** What a log has of its own: of a field that it leaves open, nothing. */
export function beforeAnswers({ record, collector, questions }: Draft): Before {
  const cells = { ...collector.cells }
  const known = structuredClone(record) as Record<string, Record<string, unknown>>
  for (const { path } of questions) {
    const [part = '', name = ''] = path.split('.', 2)
    delete known[part]?.[name]
  }
  return { record: known, cells }
}
