/** What the second column of readings typed by hand holds. */
export type SecondColumn = 'flow' | 'devicePressure'

/** One reading as typed: texts, so that nothing half typed is lost. */
export interface TypedReading {
  readonly pressure: string
  readonly second: string
  /** Range of the device, where device pressures are typed. */
  readonly range?: string
  /** Local time at which it was entered, as `14:05`. */
  readonly at?: string
  /** Values that were asked about and kept as they stand. */
  readonly kept?: readonly string[]
}

/** A run typed by hand. Units are those of numbers typed without one. */
export interface TypedRun {
  readonly second: SecondColumn
  readonly pressureUnit: string
  readonly secondUnit: string
  readonly zeroFlowBefore: readonly string[]
  readonly zeroFlowAfter: readonly string[]
  readonly readings: readonly TypedReading[]
  /** Zero-flow values that were asked about and kept as they stand. */
  readonly kept?: readonly string[]
}

export const emptyRun = (second: SecondColumn = 'flow', secondUnit = 'm³/h'): TypedRun => ({
  second,
  pressureUnit: 'Pa',
  secondUnit,
  zeroFlowBefore: [],
  zeroFlowAfter: [],
  readings: [],
})

const EMPTY: TypedReading = { pressure: '', second: '' }

export const isBlank = ({ pressure, second }: TypedReading): boolean =>
  pressure.trim() === '' && second.trim() === ''

/** The rows to show: those typed, and one more to type into. */
export function rowsOf({ readings }: TypedRun): readonly TypedReading[] {
  const last = readings.at(-1)
  return last && isBlank(last) ? readings : [...readings, EMPTY]
}

/** The run with one reading changed; rows that are missing before it are blank. */
export function withReading(run: TypedRun, row: number, change: Partial<TypedReading>): TypedRun {
  const readings = [...run.readings]
  while (readings.length <= row) readings.push(EMPTY)
  readings[row] = { ...(readings[row] ?? EMPTY), ...change }
  return { ...run, readings }
}

export const withoutReading = (run: TypedRun, row: number): TypedRun => ({
  ...run,
  readings: run.readings.filter((_, at) => at !== row),
})

/** What was kept is checked before it is used. */
export function isTypedRun(value: unknown): value is TypedRun {
  if (typeof value !== 'object' || value === null) return false
  const { second, pressureUnit, secondUnit, zeroFlowBefore, zeroFlowAfter, readings, kept } =
    value as Partial<TypedRun>
  return (
    (second === 'flow' || second === 'devicePressure') &&
    typeof pressureUnit === 'string' &&
    typeof secondUnit === 'string' &&
    areTexts(zeroFlowBefore) &&
    areTexts(zeroFlowAfter) &&
    Array.isArray(readings) &&
    readings.every(isTypedReading) &&
    (kept === undefined || areTexts(kept))
  )
}

function isTypedReading(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false
  const { pressure, second, range = '', at = '', kept = [] } = value as Partial<TypedReading>
  return areTexts([pressure, second, range, at]) && areTexts(kept)
}

const areTexts = (value: unknown): boolean =>
  Array.isArray(value) && value.every((one) => typeof one === 'string')

/** Rows that are taken from the clipboard at once; no run has as many readings. */
const MOST_ROWS = 200

/** Cells copied in a spreadsheet, row by row; undefined where the text is a single value, which the field itself takes. */
export function pastedRows(text: string): string[][] | undefined {
  const lines = text.trimEnd().split(/\r\n|\n|\r/)
  if (lines.length === 1 && !lines[0]?.includes('\t')) return undefined
  return lines.map((line) => line.split('\t').map((cell) => cell.trim()))
}

/** Why these cells do not fit into a table with so many columns from the cursor on; undefined where they do. */
export function whyNotPasted(rows: readonly (readonly string[])[], columns: number): string | undefined {
  const widest = Math.max(...rows.map(({ length }) => length))
  if (rows.length > MOST_ROWS)
    return `Nothing was pasted: the clipboard holds ${rows.length} rows, and at most ${MOST_ROWS} are taken at once.`
  if (widest > columns)
    return `Nothing was pasted: the clipboard holds ${widest} columns, and from here on the table has ${columns}. Copy only these columns.`
  return undefined
}
