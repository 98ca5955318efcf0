import type { z } from 'zod'

export const RECORD_FORMAT = 'draughtbook/record@1'
/** The format that may also hold a take-off, a plan, the preparation, the leaks and the uncertainty of the inputs. */
export const RECORD_FORMAT_2 = 'draughtbook/record@2'
/** The format that may also say what a flow is a flow of, how accurate the instruments are, and the loss area. */
export const RECORD_FORMAT_3 = 'draughtbook/record@3'
export const RECORD_FORMATS = [RECORD_FORMAT, RECORD_FORMAT_2, RECORD_FORMAT_3] as const
type RecordFormat = (typeof RECORD_FORMATS)[number]

/** A field that an older tool would read differently or not at all, by its path; `*` stands for every entry of a list. */
interface NewerField {
  readonly path: readonly string[]
  /** Values that came with the format; left out: all of them. */
  readonly values?: readonly unknown[]
}

const field = (path: string, values?: readonly unknown[]): NewerField => ({
  path: path.split('.'),
  ...(values && { values }),
})

const newerFields: readonly (readonly [RecordFormat, readonly NewerField[]])[] = [
  [
    RECORD_FORMAT_2,
    [
      ...['takeOff', 'plan', 'preparation', 'leaks', 'uncertainty', 'test.openings.*.kind'].map((path) =>
        field(path),
      ),
      ...['devices', 'pressureUncertainty_Pa', 'flowUncertainty_m3_h', 'devicePressureUncertainty_Pa'].map(
        (name) => field(`runs.*.readings.*.${name}`),
      ),
    ],
  ],
  [
    RECORD_FORMAT_3,
    [
      ...[
        'building.lossArea_m2',
        'test.adjoiningSpaces',
        'pressureGauge.accuracy_Pa',
        'pressureGauge.accuracy_relative',
        'flowDevice.accuracy_relative',
        'flowDevice.accuracy_m3_h',
        'thermometer',
        'runs.*.flowStatedAt',
        'runs.*.evenness',
        'target.sampled',
        'uncertainty.rangeStep_relative',
      ].map((path) => field(path)),
      field('test.preparation', ['method A', 'method B', 'as-operated', 'closed-up']),
      field('target.quantity', ['qT50', 'qT_pr', 'aE10', 'aE_pr']),
    ],
  ],
]

const rank = (format: unknown): number => RECORD_FORMATS.indexOf(format as RecordFormat)

/** Where a record holds a field, entry by entry. */
function* placesOf(
  value: unknown,
  newer: NewerField,
  at: readonly PropertyKey[] = [],
): Generator<readonly PropertyKey[]> {
  const { path, values } = newer
  const key = path[at.length]
  if (key === undefined) {
    if (value !== undefined && (!values || values.includes(value))) yield at
    return
  }
  if (typeof value !== 'object' || value === null) return
  if (key !== '*') return yield* placesOf((value as Record<string, unknown>)[key], newer, [...at, key])
  if (Array.isArray(value))
    for (const [i, entry] of value.entries()) yield* placesOf(entry, newer, [...at, i])
}

/** Whether a record holds a field anywhere. Nearly every record holds none of the newer ones: asked first, and without lists of places. */
function holds(value: unknown, newer: NewerField, depth = 0): boolean {
  const { path, values } = newer
  const key = path[depth]
  if (key === undefined) return value !== undefined && (!values || values.includes(value))
  if (typeof value !== 'object' || value === null) return false
  if (key !== '*') return holds((value as Record<string, unknown>)[key], newer, depth + 1)
  if (!Array.isArray(value)) return false
  for (let i = 0; i < value.length; i += 1) if (holds(value[i], newer, depth + 1)) return true
  return false
}

/** The oldest format that may hold everything in a draft of a record. */
export function formatNeeded(draft: object): RecordFormat {
  const newest = newerFields.findLast(([, fields]) => fields.some((newer) => holds(draft, newer)))
  return newest?.[0] ?? (hasShortRun(draft) ? RECORD_FORMAT_2 : RECORD_FORMAT)
}

/** Runs of fewer readings than a curve takes came with the second format: from then on the method says how many it needs. */
function hasShortRun({ runs }: { readonly runs?: unknown }): boolean {
  return (
    Array.isArray(runs) &&
    runs.some((run: { readings?: unknown } | undefined) => {
      const { length = 0 } = Array.isArray(run?.readings) ? run.readings : []
      return length > 0 && length < SHORT
    })
  )
}

/** Readings that the first format asked of every run. */
const SHORT = 3

/** The field, or the value of it that an older format does not know. */
function nameOf(record: unknown, path: readonly PropertyKey[], { values }: NewerField): string {
  const name = String(path.at(-1))
  if (!values) return `${name} is a field`
  const value = path.reduce((inner, key) => (inner as Record<PropertyKey, unknown>)[key], record)
  return `${name} "${String(value)}" is a value`
}

/** Refuses what came with a newer format than the record says, naming each field. */
export function refuseNewerParts(
  record: {
    readonly format: RecordFormat
    readonly runs: readonly { readonly readings: readonly unknown[] }[]
  },
  context: z.RefinementCtx,
): void {
  for (const [format, fields] of newerFields) {
    if (rank(format) <= rank(record.format)) continue
    for (const newer of fields) {
      if (!holds(record, newer)) continue
      for (const path of placesOf(record, newer))
        context.addIssue({
          code: 'custom',
          path: [...path],
          message: `${nameOf(record, path, newer)} of ${format}; this record says ${record.format}`,
        })
    }
  }
  if (record.format !== RECORD_FORMAT) return
  for (const [i, { readings }] of record.runs.entries())
    if (readings.length > 0 && readings.length < SHORT)
      context.addIssue({
        code: 'custom',
        path: ['runs', i, 'readings'],
        message: `a run in ${RECORD_FORMAT} needs at least ${SHORT} readings: use ${RECORD_FORMAT_2} for a method that needs fewer`,
      })
}
