import { mean } from '../../mean.js'
import type { View } from '../grid/view.js'
import type { FoundRun } from '../tables/runs.js'
import { says } from '../words/label.js'
import type { FoundField } from './found-field.js'
import { fieldsAbove, fieldsOfRow } from './lists.js'
import { withValue } from './of-moments.js'

type Columns = Parameters<typeof fieldsOfRow>[2]

/** Values of a test that stand in the rows of its readings. */
export function fieldsOfRun(run: FoundRun): FoundField[] {
  const { segment, walked } = run.block
  if (run.row !== undefined) return fieldsOfRow(run.view, run.row, segment.columns)
  if (run.houseColumn !== undefined) return fieldsAbove(run, run.houseColumn)
  if (walked.rows.length === 0 || run.view.turned) return []
  const row = run.readings[0]?.row ?? 0
  const isOfTest = run.test !== undefined
  const others = segment.columns.filter(
    ({ role, at }) =>
      role === 'other' || (role === 'test' && (!isOfTest || isNameIn(run.test, run.view.text(row, at)))),
  )
  const isSame = ({ at }: { readonly at: number }) => {
    const value = textIn(run.view, row, at)
    return run.readings.length > 2 && run.readings.every((one) => textIn(run.view, one.row, at) === value)
  }
  // A list of readings repeats the values of its test in every line.
  const repeated = others.filter(isSame)
  return [
    ...(isOfTest ? fieldsOfTest(run, others) : fieldsOfRow(run.view, row, repeated)),
    ...meansOf(
      run,
      others.filter((one) => !repeated.includes(one)),
    ),
  ]
}

/** "School" in "School, 2026-05-04": the house of a test that its day names too. */
const isNameIn = (test: string | undefined, name: string | undefined): boolean =>
  name !== undefined && test !== undefined && test !== name && test.startsWith(name)

/** Values of a test in a list of readings: in the line of its first reading, or only where its name stands, as in merged cells. */
function fieldsOfTest({ view, block, test, readings }: FoundRun, columns: Columns): FoundField[] {
  const row = readings[0]?.row ?? 0
  const name = block.segment.columns.find(({ role }) => role === 'test')
  let first = row
  while (name && first > block.segment.head.first && textIn(view, first, name.at) !== test) first--
  const stands = ({ at }: { readonly at: number }) => textIn(view, row, at) !== undefined
  const above = columns.filter((column) => !stands(column))
  return [...fieldsOfRow(view, row, columns.filter(stands)), ...fieldsOfRow(view, first, above)]
}

/** Temperatures logged with every reading: their mean is that of the run. */
function meansOf(run: FoundRun, columns: Columns): FoundField[] {
  const [first, ...more] = run.readings.map(({ row }) => row)
  if (first === undefined || more.length < 2) return []
  return fieldsOfRow(run.view, first, columns).flatMap((field) => {
    const { name, content, column, label, unit } = field
    // "N.º" has the letter of an outdoor temperature.
    if (unit?.kind !== 'temperature' && !says(label, 'temperature')) return []
    if (content.kind !== 'number' || (name !== 'indoorTemperature' && name !== 'outdoorTemperature'))
      return []
    const values = [first, ...more].flatMap((row) => run.view.number(row, column) ?? [])
    if (values.length <= more.length) return []
    const value = Number((mean(values) as number).toPrecision(6))
    const meanWith = more.map((row) => run.view.address(row, column))
    return [{ ...withValue(field, content, value, meanWith), ofReadings: true }]
  })
}

const textIn = (view: View, row: number, column: number): string | undefined =>
  view.text(row, column) ?? view.number(row, column)?.toString() ?? dayIn(view, row, column)

const dayIn = (view: View, row: number, column: number): string | undefined => {
  const content = view.at(row, column)
  return content?.kind === 'date' ? content.dates.join() : undefined
}
