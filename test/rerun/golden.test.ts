import { readdirSync, readFileSync } from 'node:fs'
import { digestOf, parseRecord } from '@draughtbook/shared-calc'
import { rerunFile } from '@draughtbook/shared-calc/rerun'
import { describe, expect, it } from 'vitest'

const folder = 'test/archive/golden/'
const names = readdirSync(folder).filter((name) => name.endsWith('.xlsx'))

describe('the golden archive', () => {
  it('holds a workbook for each kind of test', () => {
    expect(names.length).toBeGreaterThanOrEqual(6)
  })

  // A difference here means: a figure or a cell of the summary changed. If it was meant to, read golden/README.md.
  it.each(names)('re-runs as it was issued, in every figure and cell: %s', async (name) => {
    const [test] = await rerunFile(readFileSync(folder + name), name)
    expect(test?.differences).toEqual([])
    expect(['exactly as issued', 'older calculation version'], test?.why).toContain(test?.outcome)
    expect(test?.recordDigest).toBe(
      digestOf(parseRecord(JSON.parse(readFileSync(folder + name.replace(/xlsx$/, 'json'), 'utf8')))),
    )
  })
})
