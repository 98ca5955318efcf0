import { describe, expect, it } from 'vitest'
import { compareCached, type FormulaCell } from '../support/formula-cells'
import { recalculatedByGnumeric } from '../support/gnumeric'
import { everyKind } from './support/every-kind'

/** LibreOffice works the t distribution out to within 6e-9 near a half (measured); what cancels to zero leaves a rest. */
const TOLERANCE = { relative: 1e-8, absolute: 1e-9 }

const withFormulas = everyKind.filter(([name]) => name !== 'empty test log')

const listed = (cells: readonly FormulaCell[]) =>
  cells.map(
    ({ sheet, address, formula, cached, recalculated }) =>
      `${sheet}!${address} =${formula}: ${cached}, ${recalculated}`,
  )

/**
 * What Gnumeric 1.12 cannot work out (measured): functions of one number over a range inside SUMPRODUCT, which it does not take
 * row by row; the t distribution under its newer name; SUBTOTAL without filtered rows. It says so by an error value, not by a
 * wrong number.
 */
const LACKING = [
  /SUMPRODUCT\(.*\b(?:LN|EXP|ABS|SQRT|SIGN)\([^()]*\$[A-Z]+\$\d+:/,
  /_xlfn\.T\.DIST\(/,
  /SUBTOTAL\(10\d,/,
]

/** The cells that neither are lacking nor refer to one that is, directly or over others. */
function unexplained(cells: readonly FormulaCell[]): FormulaCell[] {
  const explained = new Set(
    cells.filter(({ formula }) => LACKING.some((pattern) => pattern.test(formula))).map(placeOf),
  )
  for (let before = -1; before !== explained.size; ) {
    before = explained.size
    for (const cell of cells) if (refersTo(cell, explained)) explained.add(placeOf(cell))
  }
  return cells.filter((cell) => !explained.has(placeOf(cell)))
}

const placeOf = ({ sheet, address }: FormulaCell): string => `${sheet}!${address}`

function refersTo({ sheet, formula }: FormulaCell, places: ReadonlySet<string>): boolean {
  const references = formula.matchAll(/(?:(\w+)!)?\$?([A-Z]{1,2})\$?(\d+)(?::\$?([A-Z]{1,2})\$?(\d+))?/g)
  for (const [, on = sheet, column = '', from, , to = from] of references)
    for (let row = Number(from); row <= Number(to); row += 1)
      if (places.has(`${on}!${column}${row}`)) return true
  return false
}

describe('every formula of every kind of workbook gives what is stored beside it', () => {
  it.concurrent.each(withFormulas)(
    'to LibreOffice: %s',
    async (_, make) => {
      expect(listed(await compareCached(await make(), TOLERANCE))).toEqual([])
    },
    300_000,
  )

  it.each(withFormulas)(
    'to Gnumeric, but for what it lacks: %s',
    async (_, make) => {
      const cells = await compareCached(await make(), { ...TOLERANCE, by: recalculatedByGnumeric })
      expect(listed(unexplained(cells))).toEqual([])
    },
    120_000,
  )
})
