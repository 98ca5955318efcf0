import { readdirSync, readFileSync } from 'node:fs'
import { digestOf, parseRecord } from '@draughtbook/shared-calc'
import { rerunFile } from '@draughtbook/shared-calc/rerun'
import { describe, expect, it } from 'vitest'

// A difference here means: a figure or a cell of the summary changed. If it was meant to, read golden/README.md.
describe.each([
  { folder: 'test/archive/golden/', as: 'exactly as issued' },
  { folder: 'test/archive/golden-1.0.0/', as: 'older calculation version' },
  { folder: 'test/archive/golden-1.1.0/', as: 'older calculation version' },
  { folder: 'test/archive/golden-1.2.0/', as: 'older calculation version' },
  { folder: 'test/archive/golden-1.3.0/', as: 'older calculation version' },
  { folder: 'test/archive/golden-1.4.0/', as: 'older calculation version' },
  { folder: 'test/archive/golden-1.5.0/', as: 'older calculation version' },
  { folder: 'test/archive/golden-1.6.0/', as: 'older calculation version' },
  { folder: 'test/archive/golden-1.7.0/', as: 'older calculation version' },
  { folder: 'test/archive/golden-1.8.0/', as: 'older calculation version' },
  { folder: 'test/archive/golden-1.9.0/', as: 'older calculation version' },
  { folder: 'test/archive/golden-1.10.0/', as: 'older calculation version' },
  { folder: 'test/archive/golden-1.11.0/', as: 'older calculation version' },
  { folder: 'test/archive/golden-1.12.0/', as: 'older calculation version' },
  { folder: 'test/archive/golden-1.13.0/', as: 'older calculation version' },
])('the golden archive $folder', ({ folder, as }) => {
  const names = readdirSync(folder).filter((name) => name.endsWith('.xlsx'))

  it('holds a workbook for each kind of test', () => {
    expect(names.length).toBeGreaterThanOrEqual(6)
  })

  it.each(names)('re-runs as it was issued, in every figure and cell: %s', async (name) => {
    const [test] = await rerunFile(readFileSync(folder + name), name)
    expect(test?.differences).toEqual([])
    expect(test?.outcome, test?.why).toBe(as)
    expect(test?.recordDigest).toBe(
      digestOf(parseRecord(JSON.parse(readFileSync(folder + name.replace(/xlsx$/, 'json'), 'utf8')))),
    )
  })
})
