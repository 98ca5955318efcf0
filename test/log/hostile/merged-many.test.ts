import { expect, it } from 'vitest'
import { Merges } from '../../../shared-calc/src/log/grid/merges'

/** How often a block was looked at to find one for each of so many cells among as many blocks. */
function looksAmong(count: number): number {
  let looks = 0
  const blockAt = (row: number) => ({
    get top() {
      looks++
      return row
    },
    bottom: row,
    left: 0,
    right: 1,
  })
  const merges = new Merges()
  for (let row = 0; row < count; row++) merges.add(blockAt(row))
  for (let row = 0; row < count; row++) expect(merges.at(row, 1)?.bottom).toBe(row)
  return looks
}

// Processor time does not show it: a sheet that may be read has 50,000 blocks at most, and going through them is quick each time.
it('merged blocks are found without going through them one by one: four times as many cells and blocks take four times the work', () => {
  const [few, many] = [looksAmong(500), looksAmong(2000)]
  expect(few).toBeGreaterThan(0)
  expect(many / few).toBeLessThan(5)
})
