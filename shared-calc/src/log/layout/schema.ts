import { z } from 'zod'
import { type ResultKey, results } from '../../catalogue/figures.js'
import { refuseOtherKind } from '../../contract/file-kind.js'
import { check, pathText } from '../../contract/record/index.js'
import { LogError, problem } from '../problem.js'

export const LAYOUT_FORMAT = 'draughtbook/layout@1'

const text = z.string().min(1).max(200)
const address = z.string().regex(/^[A-Z]{1,3}[1-9]\d{0,6}$/, { error: 'must be a cell such as B4' })
const block = z
  .string()
  .regex(/^[A-Z]{1,3}[1-9]\d{0,6}(:[A-Z]{1,3}[1-9]\d{0,6})?$/, { error: 'must be cells such as B4:B13' })
const sheet = text.optional()
/** Which of several equal labels, counted from 1 down the rows. Left out: there must be only one. */
const nth = z.int().min(1).max(1000).optional()
const words = z.record(z.string().max(100), z.string().max(100))

/** Where one value stands. `*` in a text stands for anything. */
export const Locator = z.union([
  z.strictObject({ cell: address, sheet }),
  z.strictObject({ name: text }),
  z.strictObject({
    label: text,
    /** The value is the next filled cell to the right of the label, or the cell below it. */
    side: z.enum(['right', 'below']).default('right'),
    nth,
    sheet,
  }),
  /** For tests in rows or groups of rows: the column under this heading. */
  z.strictObject({ header: text, nth }),
])
export type Locator = z.infer<typeof Locator>

/** Where a row or column of values stands. */
export const ListLocator = z.union([
  z.strictObject({ range: block, sheet }),
  z.strictObject({ name: text }),
  /** Down from below a heading, to the first blank row; `skip` rows (a row of units) come between. */
  z.strictObject({ header: text, nth, skip: z.int().min(0).max(20).default(0), sheet }),
  /** To the right of a label, to the first blank cell. */
  z.strictObject({ label: text, nth, sheet }),
  /** For tests in rows: the columns under these headings, in the order of the sheet. */
  z.strictObject({ headers: z.union([text, z.array(text).min(1).max(200)]) }),
])
export type ListLocator = z.infer<typeof ListLocator>

/** A list with the unit its numbers are in, where neither heading nor cells say it. */
const Column = z.strictObject({ at: ListLocator, unit: z.string().max(20).optional() })

export const PressureSign = z.enum(['inside minus outside', 'outside minus inside', 'without sign'])

const zeroFlow = z.union([Column, z.strictObject({ depressurisation: Column, pressurisation: Column })])

/** One table of readings: a run, or both runs where a column or the sign parts them. */
export const RunLayout = z.strictObject({
  direction: z.union([
    z.enum(['depressurisation', 'pressurisation', 'by sign']),
    z.strictObject({ at: Locator, words: words.optional() }),
    z.strictObject({ column: ListLocator, words: words.optional() }),
  ]),
  /** How the log counts pressure differences. Without it they must be inside minus outside. */
  sign: z
    .strictObject({ readings: PressureSign, zeroFlow: PressureSign.exclude(['without sign']) })
    .optional(),
  zeroFlowBefore: zeroFlow.optional(),
  zeroFlowAfter: zeroFlow.optional(),
  pressure: Column,
  flow: Column.optional(),
  devicePressure: Column.optional(),
  range: z.union([Column, z.strictObject({ value: text })]).optional(),
  /** A column that says what each row of the table is, for logs that keep zero-flow values among the readings. */
  role: z
    .strictObject({
      column: ListLocator,
      words: z.record(z.string(), z.enum(['reading', 'zero-flow before', 'zero-flow after', 'skip'])),
    })
    .optional(),
  /** Rows of the sheet, as it numbers them, that are not readings. */
  skipRows: z.array(z.int().min(1)).max(1000).optional(),
})
export type RunLayout = z.infer<typeof RunLayout>

/** A gauge's time log instead of readings. Times in s. */
export const SeriesLayout = z.strictObject({
  direction: z.union([
    z.enum(['depressurisation', 'pressurisation', 'by sign']),
    z.strictObject({ at: Locator, words: words.optional() }),
  ]),
  sign: z.enum(['inside minus outside', 'outside minus inside']).optional(),
  time: Column,
  pressure: Column,
  flow: Column.optional(),
  devicePressure: Column.optional(),
  range: z.strictObject({ value: text }).optional(),
  /** A column whose words mark zero-flow blocks. Without it they are found by the flow. */
  marks: z
    .strictObject({
      column: ListLocator,
      words: z.record(z.string(), z.enum(['reading', 'zero-flow', 'skip'])),
    })
    .optional(),
  /** A column with the number or name of the step beside its samples: no average runs from one step into the next. */
  steps: ListLocator.optional(),
  averagingTime_s: z.number().min(1).max(600).default(20),
  /** Largest drift of the pressure over the averaging time, Pa. */
  driftLimit_Pa: z.number().positive().max(50).optional(),
})
export type SeriesLayout = z.infer<typeof SeriesLayout>

const Tests = z.union([
  z.strictObject({ each: z.literal('workbook') }),
  /** One test per sheet whose name fits. */
  z.strictObject({ each: z.literal('sheet'), sheets: text }),
  /** One test per row under a row of headings. */
  z.strictObject({ each: z.literal('row'), sheet, headerRow: z.int().min(1) }),
  /** Rows with the same entry under a heading belong to one test. */
  z.strictObject({ each: z.literal('group'), sheet, headerRow: z.int().min(1), by: text }),
  /** Blocks below each other, each beginning where a column holds a label. Cells are given as for the first block. */
  z.strictObject({ each: z.literal('block'), sheet, label: text }),
])

/** How far a recorded figure may be from ours beside rounding, as a share: firms take air or zero flow otherwise. */
const tolerance_relative = z.number().positive().max(0.2).optional()

/** A result the firm's own workbook shows, for Re-run to compare; in the units of the evaluation. */
export const RecordedResult = z.union([
  z.strictObject({
    figure: z.enum(Object.keys(results) as ResultKey[]),
    /** Of one direction; left out: of the test as a whole. */
    direction: z.enum(['depressurisation', 'pressurisation']).optional(),
    at: Locator,
    tolerance_relative,
  }),
  z.strictObject({
    figure: z.enum(['airFlowCoefficient', 'airLeakageCoefficient', 'airFlowExponent', 'rSquared']),
    direction: z.enum(['depressurisation', 'pressurisation']),
    at: Locator,
    tolerance_relative,
  }),
  z.strictObject({
    figure: z.literal('outcome'),
    at: Locator,
    /** What the workbook says → the outcome it means. */
    words: z.record(z.string().max(100), z.enum(['meets', 'misses', 'not valid', 'no target'])),
  }),
])
export type RecordedResult = z.infer<typeof RecordedResult>

/** Where a firm's log keeps each thing. */
export const Layout = z
  .strictObject({
    format: z.literal(LAYOUT_FORMAT, { error: `it must be "${LAYOUT_FORMAT}"` }),
    name: text,
    note: z.string().max(2000).optional(),
    /** A log fits when it has all of these. */
    fingerprint: z
      .strictObject({
        sheets: z.array(text).max(50).optional(),
        cells: z
          .array(z.strictObject({ sheet, cell: address, text }))
          .max(50)
          .optional(),
        /** Labels and headings, wherever they stand; most of them must be there. */
        labels: z.array(text).max(100).optional(),
      })
      .optional(),
    /** What was answered about logs of this make: they are read without a described layout, with these answers. */
    answers: z.record(z.string().max(120), z.string().max(4000)).optional(),
    decimal: z.enum(['.', ',']).optional(),
    dateOrder: z.enum(['dmy', 'mdy', 'ymd']).optional(),
    /** Rows hidden or filtered away are read, and said so, unless they are to be left out. */
    hiddenRows: z.enum(['read', 'leave out']).default('read'),
    tests: Tests.default({ each: 'workbook' }),
    /** Fields the log never states, by path. Each is told of in a finding. */
    constants: z.record(z.string().max(120), z.union([z.string().max(4000), z.number()])).default({}),
    fields: z
      .array(
        z.strictObject({
          path: z.string().max(120),
          at: Locator,
          unit: z.string().max(20).optional(),
          words: words.optional(),
        }),
      )
      .max(300),
    /** Tables of things that are not readings: one entry per row, as long as its first column holds something. */
    lists: z
      .array(
        z.strictObject({
          path: z.enum(['test.openings', 'flowDevice.ranges']),
          columns: z.record(z.string().max(60), Column.extend({ words: words.optional() })),
        }),
      )
      .max(10)
      .default([]),
    /** Results that are in the workbook itself. */
    results: z.array(RecordedResult).max(100).optional(),
    runs: z.array(RunLayout).max(4).default([]),
    series: z.array(SeriesLayout).max(4).default([]),
  })
  .refine(({ runs, series, answers }) => runs.length + series.length > 0 || answers !== undefined, {
    error: 'the layout names no runs, no series and no answers',
  })
/** A layout with its defaults filled in. */
export type Layout = z.infer<typeof Layout>
/** A layout as written in a file. */
export type LayoutInput = z.input<typeof Layout>

/** A layout from JSON, with its defaults filled in. @throws LogError `layout-invalid`, one problem per fault with its path */
export function parseLayout(input: unknown): Layout {
  refuseOtherKind(input, 'layout')
  const result = check(Layout, input)
  if (result.success) return result.data
  throw new LogError(
    result.error.issues.map((issue) =>
      problem('layout-invalid', issue.message, { path: pathText(issue.path) }),
    ),
  )
}
