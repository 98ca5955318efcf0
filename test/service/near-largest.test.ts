import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { parseRecord } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { JSON_BYTES } from '../../service/src/http/read-body'
import { folder } from './support/command-line'
import { nearLargestRecord } from './support/near-largest'
import { runCommand } from './support/spawned'

/** Memory of one worker of the service, MB. */
const WORKER_MB = 512

describe('a record about as large as the schema allows', () => {
  it('has its workbook written in the memory of one worker', async () => {
    const here = await folder()
    const [record, workbook] = [join(here, 'record.json'), join(here, 'summary.xlsx')]
    const text = JSON.stringify(nearLargestRecord())
    expect(text.length).toBeLessThan(JSON_BYTES)
    await writeFile(record, text)
    const { code, err } = await runCommand(['evaluate', record, '--out', workbook], undefined, {
      NODE_OPTIONS: `--max-old-space-size=${WORKER_MB}`,
    })
    expect({ code, err: code === 0 ? '' : err }).toEqual({ code: 0, err: '' })
    expect((await readFile(workbook)).subarray(0, 2).toString()).toBe('PK')
  }, 300_000)

  it('is refused, naming the run, where it has more readings of devices than can be evaluated', () => {
    const record = nearLargestRecord({ stations: 501, devices: 2 })
    expect(() => parseRecord(record)).toThrow(
      expect.objectContaining({
        problems: ['runs[0].readings', 'runs[1].readings'].map((path) => ({
          path,
          message: expect.stringMatching(/1002 readings of single devices; at most 1000/),
        })),
      }),
    )
  })

  // The record of the first test has this many of each: what the schema promises beyond is not known to be written in that memory.
  it.each([
    ['test.openings', 500, (record) => record.test.openings],
    ['leaks.list', 2000, (record) => record.leaks.list],
    ['runs[0].zeroFlowBefore_Pa', 1000, (record) => record.runs[0]?.zeroFlowBefore_Pa],
    ['runs[0].zeroFlowAfter_Pa', 1000, (record) => record.runs[0]?.zeroFlowAfter_Pa],
    ['runs[0].readings', 1000, (record) => record.runs[0]?.readings],
  ] as [string, number, (record: ReturnType<typeof nearLargestRecord>) => unknown[]][])(
    'has as much as the schema allows of %s: %i',
    (path, most, listIn) => {
      const record = nearLargestRecord()
      const list = listIn(record)
      // Of readings it has 500 of two devices each, which are limited by a rule of their own: those added here are of none.
      const isReadings = path === 'runs[0].readings'
      if (isReadings) list.length = 0
      else expect(list.length).toBe(most)
      const first = isReadings ? { pressure_Pa: -50, flow_m3_h: 90 } : list[0]
      while (list.length <= most) list.push(first)
      expect(() => parseRecord(record)).toThrow(
        expect.objectContaining({ problems: expect.arrayContaining([expect.objectContaining({ path })]) }),
      )
    },
  )
})
