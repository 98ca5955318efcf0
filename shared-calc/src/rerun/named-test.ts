import { dayInWords } from '../catalogue/words.js'
import type { RerunTest } from './report.js'

/** A row of a report on several tests, and the file it names. */
export interface NamedTest {
  readonly file: string
  readonly plot?: string | undefined
  /** As 2026-11-26 or, in newer workbooks, 26 November 2026. */
  readonly date?: string | undefined
}

/** Whether a test has the home and the date of a row. */
export const isOfRow = (test: RerunTest, { plot, date }: NamedTest): boolean =>
  [test.building, `${test.site}, ${test.building}`].includes(plot) &&
  dayInWords(date ?? '') === dayInWords(test.date ?? '')

const stepsOf = (path: string): string[] => path.split(/[\\/]/).filter(Boolean)

/** The test of the file that a row names: of several files of one name, the one whose path, home and date agree furthest. */
export function testNamed(row: NamedTest, tests: readonly RerunTest[]): RerunTest | undefined {
  const wanted = stepsOf(row.file).reverse()
  const ranked = tests
    .map((test) => {
      const name = test.part === undefined ? test.file : `${test.file} (${test.part})`
      const steps = stepsOf(name).reverse()
      const alike = steps.findIndex((step, i) => step !== wanted[i])
      return { test, rank: (alike < 0 ? steps.length : alike) + (isOfRow(test, row) ? 0.5 : 0) }
    })
    .filter(({ rank }) => rank >= 1)
    .sort((a, b) => b.rank - a.rank)
  return ranked[0]?.test
}
