import { evaluate } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import type { Rows } from '../support/book'
import { dep, HEADINGS, pres, read, sheetOfForm, zeroRows } from './house'

// Truth: what is written into each sheet.
const RUNS: Rows = [dep, pres].flatMap(
  (run): Rows => [
    [run === dep ? 'Depressurisation' : 'Pressurisation'],
    ...zeroRows(run),
    HEADINGS,
    ...run.readings,
    [null],
  ],
)

describe('how the building was prepared', () => {
  it.each([
    ['Preparation', 'method 2', 'method 2'],
    ['Building preparation', 'Method 3', 'method 3'],
    ['Preparation', 'ISO 9972, method 2, as in use', 'method 2'],
    ['Vorbereitung', 'Verfahren 1', 'method 1'],
    ['Préparation du bâtiment', 'Méthode 3', 'method 3'],
  ])('"%s: %s" is read as %s', async (label, text, method) => {
    const { record, asked } = read(await sheetOfForm([[label, text], [null], ...RUNS]))
    expect(asked).toEqual([])
    expect(record?.test.preparation).toBe(method)
    const said = record && evaluate(record).findings.find(({ rule }) => rule === 'missing-preparation')
    expect(said?.message).not.toContain('preparation method')
  })

  it.each(['method 1 or method 2', 'windows closed', 'method 12'])(
    '"%s" names no one method',
    async (text) => {
      const { record } = read(await sheetOfForm([['Preparation', text], [null], ...RUNS]))
      expect(record?.test.preparation).toBe(undefined)
      expect(record?.test.method).toBe('iso-9972:2015')
    },
  )
})
