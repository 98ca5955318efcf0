import { monthFromWords } from '../../catalogue/words.js'
import { InputError } from '../../contract/problem.js'
import type { Cell, Sheet } from '../../log/grid/grid.js'
import { openNamed } from './open-named.js'
import type { Totals } from './totals.js'

/** Figures of a month that are followed over the months. */
export const trendFigures = [
  'tests',
  'counting',
  'meets',
  'misses',
  'notValid',
  'firstTests',
  'firstMet',
  'firstPassRate',
  'medianN50',
  'billable',
] as const satisfies readonly (keyof Totals)[]
export type TrendFigure = (typeof trendFigures)[number]

/** One month's figures. */
export interface MonthFigures extends Partial<Pick<Totals, TrendFigure>> {
  /** As 2026-10. */
  readonly month: string
  /** The register it was taken over from; absent where its tests are among the files given. */
  readonly from?: string
}

export const TREND_SHEET = 'Trends'
/** Row of the headings; the months follow, the earliest first. */
export const TREND_HEAD = 4

export const monthFigures = (month: string, totals: Totals): MonthFigures => ({
  month,
  ...Object.fromEntries(
    trendFigures.flatMap((key) => (totals[key] === undefined ? [] : [[key, totals[key]]])),
  ),
})

/** The months that an earlier register shows. Throws InputError where the workbook is no register with a sheet of months. */
export function readTrend(bytes: Uint8Array, file: string): MonthFigures[] {
  const grid = openNamed(bytes, file)
  const sheet = grid.sheetNames.includes(TREND_SHEET) ? grid.sheet(TREND_SHEET) : undefined
  if (!sheet || !grid.sheetNames.includes('Register'))
    throw new InputError([
      { path: file, message: `this is not a Draughtbook register: it has no sheet ${TREND_SHEET}` },
    ])
  return monthsOf(sheet).map(({ month, figures }) => ({ month, ...figures, from: file }))
}

/** The months of a sheet Trends, each with its row counted from 0; none where there is no sheet. */
export function monthsOf(
  sheet: Sheet | undefined,
): { readonly row: number; readonly month: string; readonly figures: ReturnType<typeof figuresOf> }[] {
  return Array.from(
    { length: Math.max(0, (sheet?.rows ?? 0) - TREND_HEAD) },
    (_, i) => TREND_HEAD + i,
  ).flatMap((row) => {
    const month = monthIn(sheet?.at(row, 0)?.value)
    return sheet && month !== undefined ? [{ row, month, figures: figuresOf(sheet, row) }] : []
  })
}

/** Registers written before 1.5.0 have 2026-10 where later ones have October 2026. */
const monthIn = (value: Cell['value'] | undefined): string | undefined =>
  typeof value !== 'string'
    ? undefined
    : /^\d{4}-(0[1-9]|1[0-2])$/.test(value)
      ? value
      : monthFromWords(value)

const figuresOf = (sheet: Sheet, row: number): Partial<Pick<Totals, TrendFigure>> =>
  Object.fromEntries(
    trendFigures.flatMap((key, i) => {
      const value = sheet.at(row, i + 1)?.value
      return typeof value === 'number' ? [[key, value]] : []
    }),
  )

/** Months in their order; one whose tests are given is not taken over. */
export function mergedTrend(
  own: readonly MonthFigures[],
  previous: readonly MonthFigures[],
  until: string | undefined,
): MonthFigures[] {
  const known = new Set(own.map(({ month }) => month))
  const kept = previous.filter(({ month }) => !known.has(month) && (until === undefined || month <= until))
  return [...own, ...kept].sort((a, b) => (a.month < b.month ? -1 : 1))
}
