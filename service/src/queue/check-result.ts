import { Finding, Outcome, TestRecord } from '@draughtbook/shared-calc'
import { LIMITS } from '@draughtbook/shared-calc/log'
import {
  leftOutKinds,
  lineQuantities,
  type ReadLines,
  type ReadRecords,
} from '@draughtbook/shared-calc/register'
import { differenceKinds, outcomes, type RerunTest, rerunKinds } from '@draughtbook/shared-calc/rerun'
import { z } from 'zod'
import type { ArchiveResult, ArchiveTask } from '../archive/archive-tasks.js'
import { outOfBounds } from './out-of-bounds.js'

const text = z.string().max(32_767)
const number = z.number()
const interval = z.tuple([number, number]).optional()
const instrument = z.strictObject({ serial: text.optional(), calibrationDue: text.optional() })

const Line = z.strictObject({
  file: text,
  part: text.optional(),
  source: z.enum(['summary workbook', 'own layout']),
  building: text,
  site: text.optional(),
  client: text.optional(),
  tester: text.optional(),
  stage: text.optional(),
  date: z.iso.date(),
  testNumber: text.optional(),
  recordDigest: z.string().regex(/^[0-9a-f]{64}$/),
  readingsDigest: z.string().regex(/^[0-9a-f]{64}$/),
  calculationVersion: text,
  results: z.partialRecord(z.enum(lineQuantities), number),
  judged: z
    .strictObject({ quantity: text, label: text, value: number, limit: number, unit: text, margin: number })
    .optional(),
  outcome: Outcome,
  findings: z.array(Finding.pick({ rule: true, severity: true, message: true })),
  gauge: instrument,
  device: instrument,
  curves: z.array(
    z.strictObject({ direction: text, coefficient: number, exponent: number, q50: interval, q4: interval }),
  ),
  altered: text.optional(),
})

const leftOut = z.array(
  z.strictObject({
    file: text,
    part: text.optional(),
    why: text,
    expected: z.literal(true).optional(),
    kind: z.enum(leftOutKinds).optional(),
    building: z
      .strictObject({
        name: text,
        target: text,
        judged: text,
        tests: text,
        verdict: text,
        value: number.optional(),
        margin: number.optional(),
        probability: number.optional(),
      })
      .optional(),
  }),
)
const Lines = z.strictObject({ lines: z.array(Line), leftOut })
const Records = z.strictObject({
  records: z.array(
    z.strictObject({ file: text, part: text.optional(), record: TestRecord, altered: text.optional() }),
  ),
  leftOut,
})

const value = z.union([number, text, z.boolean(), z.null()])
const difference = {
  kind: z.enum(differenceKinds),
  label: text,
  unit: text.optional(),
  cell: text.optional(),
  path: text.optional(),
  recorded: value,
  expected: value,
  change: number.optional(),
  rounding: z.boolean(),
  working: text.optional(),
}
const Difference = z.strictObject({
  ...difference,
  follows: z.array(z.strictObject(difference)).optional(),
})

/** Of a report on several tests, in hex: no larger than a file that is read. */
const MOST_HEX = 2 * LIMITS.fileBytes

const quoted = z.record(text, z.union([number, text]))

const Tests = z.array(
  z.strictObject({
    file: text,
    part: text.optional(),
    outcome: z.enum(outcomes),
    why: text,
    kind: z.enum(rerunKinds).optional(),
    building: text.optional(),
    site: text.optional(),
    date: text.optional(),
    testNumber: text.optional(),
    verdict: z.strictObject({ recorded: text, recomputed: text }).optional(),
    calculationVersion: text.optional(),
    recordDigest: text.optional(),
    signature: z
      .union([
        z.strictObject({ state: z.literal('not signed') }),
        z.strictObject({ state: z.enum(['valid', 'invalid', 'key not given']), keyId: text }),
      ])
      .optional(),
    compared: z.strictObject({ figures: z.int(), cells: z.int() }),
    differences: z.array(Difference),
    sinceIssue: z.array(Difference),
    remarks: z.array(text).optional(),
    notes: z.array(text),
    line: Line.optional(),
    given: z.strictObject({ record: TestRecord, altered: text.optional() }).optional(),
    register: z
      .strictObject({
        rows: z.array(
          z.strictObject({
            row: z.int(),
            file: text,
            role: text,
            counts: z.boolean(),
            billed: z.boolean(),
            retest: z.boolean(),
            shown: quoted,
          }),
        ),
        places: z.record(text, z.int()),
        month: text.optional(),
        client: text.optional(),
        asOf: text.optional(),
      })
      .optional(),
    bytes: z
      .string()
      .regex(/^[0-9a-f]*$/)
      .max(MOST_HEX)
      .optional(),
  }),
)

const filesOf = {
  register: (result: unknown) => {
    const { lines, leftOut } = result as ReadLines
    return [...lines, ...leftOut].map(({ file }) => file)
  },
  records: (result: unknown) => {
    const { records, leftOut } = result as ReadRecords
    return [...records, ...leftOut].map(({ file }) => file)
  },
  rerun: (result: unknown) => (result as RerunTest[]).map(({ file }) => file),
}
const schemas = { register: Lines, records: Records, rerun: Tests }

const Sent = z.strictObject({ job: z.string(), result: z.unknown() })

/** What a result must be about. */
export interface About {
  /** Name of the job, from the content of the file, what is asked and the calculation version. */
  readonly job: string
  readonly file: string
}

/**
 * A result as it lay in the queue, checked before anything is made of it: whoever can write into the Redis could have put anything
 * there. All of it is text and numbers, so nothing of it can become a formula of a report.
 * @param sent - what a worker sends: the result with the name of its job
 * @throws Error saying where it does not fit
 */
export function checkResult<Task extends ArchiveTask>(
  task: Task,
  { job, file }: About,
  sent: unknown,
): ArchiveResult<Task> {
  const fault = outOfBounds(sent)
  if (fault !== undefined) throw new Error(`the queue returned a result that cannot be used (${fault})`)
  const { job: named, result } = checked(Sent, sent)
  if (named !== job)
    throw new Error(
      'the queue returned the result of another job; if workers have another version of Draughtbook, install the same everywhere',
    )
  const sound = checked<unknown>(schemas[task], result)
  if (filesOf[task](sound).some((about) => about !== file))
    throw new Error('the queue returned the result of another file')
  return sound as ArchiveResult<Task>
}

function checked<T>(schema: z.ZodType<T>, value: unknown): T {
  const read = schema.safeParse(value)
  if (read.success) return read.data
  const [first] = read.error.issues
  throw new Error(
    `the queue returned a result that cannot be used (${first?.path.join('.') || 'its form'}: ${first?.message})`,
  )
}
