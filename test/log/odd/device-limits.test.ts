import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { interpretLog, openLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'

const DEMO = fileURLToPath(new URL('../../demo/demo-log.xlsx', import.meta.url))

describe('a log with a sheet of device ranges and a volume with its uncertainty', () => {
  it('holds one test of 2 × 10 readings and one volume, and leaves nothing open', async () => {
    const read = interpretLog(openLog(new Uint8Array(await readFile(DEMO)), 'demo-log.xlsx'), {})
    expect(read.questions).toEqual([])
    expect(read.tests.map(({ record }) => record?.runs.map(({ readings }) => readings.length))).toEqual([
      [10, 10],
    ])
    expect(read.tests[0]?.record?.building.volume_m3).toBe(243.6)
    // The lowest and highest pressures of the device's ranges, on their own sheet, are not readings of a test.
    expect(read.tests[0]?.record?.flowDevice?.ranges?.map(({ coefficient }) => coefficient)).toEqual([
      11.86, 36.4,
    ])
  })
})
