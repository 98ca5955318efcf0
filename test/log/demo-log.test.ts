import { readFile } from 'node:fs/promises'
import { builtInLayouts, readLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'

const demo = async () => new Uint8Array(await readFile('test/demo/demo-log.xlsx'))
const record = async () => JSON.parse(await readFile('test/demo/demo-record.json', 'utf8'))

describe('the demonstration log', () => {
  it('is read by the layout that comes with the tool into the demonstration record', async () => {
    const read = readLog(await demo(), 'demo-log.xlsx', { layouts: builtInLayouts })
    expect(read.problems).toEqual([])
    expect(read.tests.map((test) => test.record)).toEqual([await record()])
    expect(read.tests[0]?.findings.map(({ rule, cells }) => [rule, cells])).toEqual([
      ['log-layout', []],
      ['log-unit', ['Log!B26']],
    ])
  })

  it('is understood from its own words but for the device’s ranges, and says so', async () => {
    const { tests, questions } = readLog(await demo(), 'demo-log.xlsx', { acceptProposal: true })
    expect(questions).toEqual([])
    const { runs } = await record()
    expect(tests[0]?.record?.runs.map(({ readings }) => readings)).toEqual(
      runs.map(({ readings }: { readings: unknown }) => readings),
    )
  })
})
