import type { Direction, TestRecord } from '@draughtbook/shared-calc'
import { areaAddress, joinReference, parseArea } from '../host/address.js'
import type { AcceptedLog, FieldEntry, RunPicks, RunRole, TestEntries } from '../pane/one-test/entries.js'
import type { UnderstoodTest } from './understand.js'

const ROLES: readonly (readonly [RunRole | 'ranges', RegExp])[] = [
  ['pressure', /^readings\[\d+\]\.pressure_Pa$/],
  ['flow', /^readings\[\d+\]\.flow_m3_h$/],
  ['devicePressure', /^readings\[\d+\]\.devicePressure_Pa$/],
  ['ranges', /^readings\[\d+\]\.range$/],
  ['zeroFlowBefore', /^zeroFlowBefore_Pa(\[\d+\])?$/],
  ['zeroFlowAfter', /^zeroFlowAfter_Pa(\[\d+\])?$/],
]

/** The entries with everything the understood test holds; what it does not hold stays as it was typed. */
export function acceptedEntries(
  entries: TestEntries,
  { cells }: UnderstoodTest,
  record: TestRecord,
  log: AcceptedLog,
): TestEntries {
  const { format: _, runs, ...rest } = record
  const fields = Object.fromEntries(
    leaves(rest).map(([path, value]): [string, FieldEntry] => {
      const cell = cells[path]
      return [path, cell === undefined ? { text: String(value), kept: true } : { cell }]
    }),
  )
  return {
    ...entries,
    fields: { ...entries.fields, ...fields },
    runs: Object.fromEntries(
      runs.map(({ direction }, index): [Direction, RunPicks] => [
        direction,
        picksOf(cells, `runs[${index}].`),
      ]),
    ),
    log,
  }
}

function leaves(value: object, start = ''): [path: string, value: string | number][] {
  return Object.entries(value).flatMap(([key, part]: [string, unknown]): [string, string | number][] => {
    const path = Array.isArray(value) ? `${start}[${key}]` : start === '' ? key : `${start}.${key}`
    if (typeof part === 'object' && part !== null) return leaves(part, path)
    return typeof part === 'string' || typeof part === 'number' ? [[path, part]] : []
  })
}

function picksOf(cells: Readonly<Record<string, string>>, start: string): RunPicks {
  const picks: RunPicks = { understood: true }
  for (const [role, pattern] of ROLES) {
    const reference = spanOf(
      Object.entries(cells).flatMap(([path, cell]) =>
        path.startsWith(start) && pattern.test(path.slice(start.length)) ? [cell] : [],
      ),
    )
    if (reference !== undefined) picks[role] = { reference }
  }
  return picks
}

/** The block from the first to the last of the cells on the first one's sheet. */
function spanOf(cells: readonly string[]): string | undefined {
  const all = cells.flatMap((cell) => parseArea(cell) ?? [])
  const sheet = all[0]?.sheet
  if (sheet === undefined) return undefined
  const areas = all.filter((area) => area.sheet === sheet)
  return joinReference(
    sheet,
    areaAddress({
      top: Math.min(...areas.map(({ top }) => top)),
      left: Math.min(...areas.map(({ left }) => left)),
      bottom: Math.max(...areas.map(({ bottom }) => bottom)),
      right: Math.max(...areas.map(({ right }) => right)),
    }),
  )
}
