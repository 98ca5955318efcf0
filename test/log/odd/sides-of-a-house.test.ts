import { describe, expect, it } from 'vitest'
import { book, type Rows } from '../support/book'
import { dep, FORM, HEADINGS, read, zeroRows } from './house'

const logWith = (...volume: Rows[number]) =>
  book({
    Test: [
      ...FORM.map((row) => (row[0] === 'Internal volume (m³)' ? volume : row)),
      [null],
      ...zeroRows(dep),
      HEADINGS,
      ...dep.readings,
    ],
  })

describe('a volume given as three lengths', () => {
  it.each([
    ['House', '12.4 x 8.2 x 2.5 m', '254.2 m3'],
    ['Size', '12,4 m × 8,2 m × 2,5 m', '254.2 m3'],
    ['Inside dimensions 40 x 28 x 8 ft', null, '8960 ft3'],
  ] as const)(
    '%s %s is offered as the answer to the question, with its cell',
    async (label, text, answer) => {
      const bytes = await logWith(label, text)
      const { asked, texts, choices, record } = read(bytes)
      expect(record).toBeUndefined()
      expect(asked).toEqual(['building.volume_m3'])
      expect(texts.join()).toMatch(text === null ? /Cell A3 says/ : /Cell B3 says/)
      expect(choices).toEqual([answer])
      expect(read(bytes, { volume: answer }).n50).toBeDefined()
    },
  )

  it.each([
    ['without a unit', '12.4 x 8.2 x 2.5'],
    ['with a fourth', '12.4 x 8.2 x 2.5 x 2 m'],
  ])('is not offered %s', async (_, text) => {
    expect(read(await logWith('Volume', text)).choices).toEqual([])
  })
})
