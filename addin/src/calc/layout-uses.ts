import { type Layout, type Use, withSheet } from '@draughtbook/shared-calc/log'
import { labelOf } from '../pane/fields.js'

const ROLES = [
  ['zeroFlowBefore', 'zero-flow pressure before the readings'],
  ['pressure', 'pressure across the building'],
  ['flow', 'air flow'],
  ['devicePressure', 'device pressure'],
  ['zeroFlowAfter', 'zero-flow pressure after the readings'],
] as const

/** The cells that a layout names, so that an empty log shows where each value belongs. */
export function layoutUses({ fields = [], runs = [] }: Layout): Use[] {
  const single = fields.flatMap(({ path, at }) => {
    const cells = placeOf(at)
    return cells === undefined ? [] : [{ cells, heading: '', usedAs: labelOf(path), path }]
  })
  const columns = runs.flatMap((run, index) =>
    ROLES.flatMap(([key, usedAs]) => {
      const cells = placeOf((run[key] as { at?: unknown } | undefined)?.at)
      return cells === undefined
        ? []
        : [{ cells, heading: '', usedAs: `${usedAs}, ${run.direction}`, path: `runs[${index}].${key}` }]
    }),
  )
  return [...single, ...columns]
}

/** A cell or a range; places found by a label are not known before the log is read. */
function placeOf(at: unknown): string | undefined {
  const { cell, range, sheet } = (at ?? {}) as { cell?: string; range?: string; sheet?: string }
  const address = cell ?? range
  return address === undefined || sheet === undefined ? undefined : withSheet(sheet, address)
}
