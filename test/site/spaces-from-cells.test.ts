import { measureTakeOff, type TakeOff } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { readLists } from '../../addin/src/calc/read-lists.js'
import { spacesFromCells } from '../../addin/src/calc/spaces-from-cells.js'
import { Told } from '../../addin/src/calc/told.js'

const block = (texts: string[][]) => ({
  sheet: 'Rooms',
  address: 'A1:D9',
  asked: 'A1:D9',
  values: texts,
  texts,
  formats: texts.map((row) => row.map(() => 'General')),
})
const volumeOf = (texts: string[][]) => {
  const { rows, leftOut } = spacesFromCells(block(texts))
  const draft: Record<string, unknown> = { test: {} }
  const told = new Told()
  const faults = readLists(draft, { 'takeOff.spaces': rows }, told)
  return {
    leftOut,
    faults,
    rules: told.findings().map(({ rule }) => rule),
    volume: draft.takeOff && measureTakeOff(draft.takeOff as TakeOff).netVolume?.value,
  }
}

describe('rooms taken from selected cells', () => {
  it('reads a name with length, width and height, and skips the heading', () => {
    const read = volumeOf([
      ['Room', 'Length', 'Width', 'Height'],
      ['hall', '3', '2', '2,5'],
      ['kitchen', '4.2', '3', '2.5'],
    ])
    expect(read.volume).toBeCloseTo(3 * 2 * 2.5 + 4.2 * 3 * 2.5, 9)
    expect(read.leftOut).toStrictEqual([])
  })

  it('reads floor area and height, and takes units from the headings, with a finding', () => {
    const read = volumeOf([
      ['Room', 'Area (m²)', 'Height (cm)'],
      ['hall', '20', '250'],
    ])
    expect(read.volume).toBeCloseTo(50, 9)
    expect(read.rules.length).toBeGreaterThan(0)
  })

  it('takes a number with all its digits where the sheet shows a rounded one', () => {
    const shown = [['hall', '3', '2', '2.5']]
    const { rows } = spacesFromCells({ ...block(shown), values: [['hall', 3, 2, 2.54]] })
    expect(rows[0]?.['solid.height_m']).toBe('2.54')
  })

  it('leaves out what it cannot read, and says which row', () => {
    const read = volumeOf([
      ['Room', 'Length', 'Width', 'Height'],
      ['hall', '3', '2', '2.5'],
      ['total', '15'],
      ['', '1', '2', '3'],
    ])
    expect(read.volume).toBeCloseTo(15, 9)
    expect(read.leftOut).toStrictEqual([
      'row 3 of A1:D9: 1 number instead of two (floor area, height) or three (length, width, height)',
      'row 4 of A1:D9: no name',
    ])
  })
})
