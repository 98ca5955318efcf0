import fc from 'fast-check'
import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import { splitFields } from '../../shared-calc/src/log/grid/text/split-fields'

const fields = fc.array(
  fc.string({ unit: fc.constantFrom('a', '1', ' ', ',', ';', '"', '\n', 'é'), maxLength: 6 }),
  {
    minLength: 1,
    maxLength: 5,
  },
)

describe('fields of separated text', () => {
  it('are those that were written, whatever they hold (written and read by a general-purpose library too)', () => {
    fc.assert(
      fc.property(
        fc.array(fields, { minLength: 1, maxLength: 5 }),
        fc.constantFrom(',', ';'),
        (rows, delimiter) => {
          const text = Papa.unparse(rows, { delimiter, newline: '\r\n', quotes: true })
          expect(splitFields(text, delimiter)).toEqual({ rows })
          expect(Papa.parse(text, { delimiter, newline: '\r\n' }).data).toEqual(rows)
        },
      ),
    )
  })

  it('may hold quotation marks where no mark opens them, and blanks behind a closing mark', () => {
    expect(splitFields('5" pipe,"a ""b""" \t,c\r\n,\n', ',').rows).toEqual([
      ['5" pipe', 'a "b"', 'c'],
      ['', ''],
      [''],
    ])
  })

  it('part their lines by returns in files of old', () => {
    expect(splitFields('a,b\rc,d', ',').rows).toEqual([
      ['a', 'b'],
      ['c', 'd'],
    ])
  })

  it('are named where a mark is not closed, or text follows the closing one', () => {
    expect(splitFields('a,b\nc,"d\ne', ',').fault).toEqual({ row: 1, column: 1, kind: 'open' })
    expect(splitFields('a,b\n"c" d,e', ',').fault).toEqual({ row: 1, column: 0, kind: 'after' })
  })
})
