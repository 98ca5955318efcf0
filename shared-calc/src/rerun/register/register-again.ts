import type { Grid, Sheet } from '../../log/grid/grid.js'
import { arrange } from '../../reports/register/arrange.js'
import type { BuildingLine } from '../../reports/register/building-line.js'
import { type LeftOut, leftOutKinds } from '../../reports/register/read-lines.js'
import { makeRegister, type Register } from '../../reports/register/register.js'
import type { TestLine } from '../../reports/register/test-line.js'
import { type MonthFigures, monthsOf, TREND_SHEET, trendFigures } from '../../reports/register/trend.js'
import { BUILDINGS_SHEET, FIRST_BUILDING } from '../../reports/register/workbook/buildings-sheet.js'
import { FIRST_LEFT_OUT, LEFT_OUT_SHEET, otherKinds } from '../../reports/register/workbook/left-out-sheet.js'
import type { RegisterRead } from '../report.js'
import { numberAt, textAt } from '../several/sheet-content.js'

/** A test with the name of its file as the register has it. */
export interface NamedLine {
  /** Row of the register, counted from 0; absent for a test of another month. */
  readonly row?: number
  readonly file: string
  readonly line: TestLine
}

/** The register made again from its tests, with what the office entered and what came from other files as its own sheets have it. */
export function registerAgain(
  grid: Grid,
  read: Pick<RegisterRead, 'places' | 'month' | 'client' | 'asOf'>,
  tests: readonly NamedLine[],
): Register {
  const { month, client, places } = read
  const sheet = grid.sheet('Register')
  const lines = tests.map(({ row, file, line }): TestLine => {
    const at = (key: string) => (row === undefined ? undefined : (places[key] ?? 0) + 1)
    const [order, fee] = [at('order'), at('fee')]
    const orderNumber = order === undefined ? '' : textAt(sheet, (row ?? 0) + 1, order)
    const amount = fee === undefined ? undefined : numberAt(sheet, (row ?? 0) + 1, fee)
    return {
      ...line,
      ...nameAndPart(file),
      ...(orderNumber !== '' && { orderNumber }),
      ...(amount !== undefined && { fee: amount }),
    }
  })
  const register = makeRegister(lines, [], {
    asOf: read.asOf ?? '',
    previous: takenOver(grid),
    ...(month !== undefined && { month }),
    ...(client !== undefined && { client }),
  })
  return { ...inOrder(register, tests), leftOut: withBuildings(leftOutOf(grid), grid.sheet(BUILDINGS_SHEET)) }
}

/** Whether the rows of a register stand in another order than it was written in: an office sorts them. */
export const isSorted = (tests: readonly NamedLine[]): boolean => {
  const written = arrange(tests.map(({ file, line }) => ({ ...line, ...nameAndPart(file) })))
  const position = new Map(written.map((one, i) => [keyOf(one), i]))
  const found = tests
    .filter(({ row }) => row !== undefined)
    .map(({ file }) => position.get(keyOf(nameAndPart(file))) ?? 0)
  return found.some((at, i) => i > 0 && at < (found[i - 1] ?? 0))
}

const keyOf = ({ file, part }: Pick<TestLine, 'file' | 'part'>): string => JSON.stringify([file, part])

/** Rows as the file has them. */
function inOrder(register: Register, tests: readonly NamedLine[]): Register {
  const position = new Map(tests.map(({ file, row }) => [keyOf(nameAndPart(file)), row ?? 0]))
  const at = (row: Register['rows'][number]) => position.get(keyOf(row)) ?? 0
  return { ...register, rows: [...register.rows].sort((a, b) => at(a) - at(b)) }
}

/** A test of a file with several is named `log.xlsx (test 2)`. */
function nameAndPart(text: string): Pick<TestLine, 'file' | 'part'> {
  const [, file, part] = /^(.*) \((test \d{1,4})\)$/s.exec(text) ?? []
  return file !== undefined && part !== undefined ? { file, part } : { file: text }
}

/** Months of sheet Trends that name an earlier register. */
export function takenOver(grid: Grid): (MonthFigures & { readonly from: string })[] {
  const sheet = grid.sheet(TREND_SHEET)
  return monthsOf(sheet).flatMap(({ row, month, figures }) => {
    const from = textAt(sheet, row + 1, trendFigures.length + 2)
    return from === '' || from === 'this register' || from === 'files given'
      ? []
      : [{ month, ...figures, from }]
  })
}

/** The lines of sheet Left out. */
export function leftOutOf(grid: Grid): LeftOut[] {
  const sheet = grid.sheet(LEFT_OUT_SHEET)
  const lines: LeftOut[] = []
  for (let row = FIRST_LEFT_OUT; row <= (sheet?.rows ?? 0); row += 1) {
    const [file, word, why] = [1, 2, 3].map((column) => textAt(sheet, row, column)) as [
      string,
      string,
      string,
    ]
    if (word === '' && why === '') break
    const kind = leftOutKinds.find((one) => one === word)
    lines.push({
      ...nameAndPart(file),
      why,
      ...((kind !== undefined || word === otherKinds.expected) && { expected: true as const }),
      ...(kind !== undefined && { kind }),
    } as LeftOut)
  }
  return lines
}

/** Buildings of several homes, as their own sheet has them: nothing of them can be made again. */
function withBuildings(leftOut: readonly LeftOut[], sheet: Sheet | undefined): LeftOut[] {
  const buildings = new Map<string, BuildingLine>()
  for (let row = FIRST_BUILDING; row <= (sheet?.rows ?? 0); row += 1) {
    const [value, margin, probability] = [5, 6, 7].map((column) => numberAt(sheet, row, column))
    buildings.set(textAt(sheet, row, 9), {
      name: textAt(sheet, row, 1),
      target: textAt(sheet, row, 2),
      judged: textAt(sheet, row, 3),
      tests: textAt(sheet, row, 4),
      verdict: textAt(sheet, row, 8),
      ...(value !== undefined && { value }),
      ...(margin !== undefined && { margin }),
      ...(probability !== undefined && { probability }),
    })
  }
  return leftOut.map((one) => {
    const building = one.kind === 'own report' ? buildings.get(one.file) : undefined
    return building ? { ...one, building } : one
  })
}
