import { evaluate, type TestRecord } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { powerLaw, recordBy, usual_Pa } from '../../methods/record-by'

const logged = (change: (record: TestRecord) => TestRecord): TestRecord =>
  change(recordBy('iso-9972:2015', powerLaw(80, 0.62, usual_Pa)))
const about = (record: TestRecord, rule: string) =>
  evaluate(record).findings.filter((finding) => finding.rule === rule)
const averagedOver = (...seconds: (number | undefined)[]) =>
  logged((record) => ({
    ...record,
    runs: record.runs.map((run, i) => ({ ...run, averagingTime_s: seconds[i] })),
  }))

describe('findings of both directions', () => {
  it('are one where they say the same, naming the fields of both', () => {
    const [only, ...others] = about(averagedOver(undefined, undefined), 'averaging-time')
    expect(others).toEqual([])
    expect(only?.message).toMatch(/^Both directions: the averaging time was not logged/)
    expect(only?.where).toEqual(['runs[0].averagingTime_s', 'runs[1].averagingTime_s'])
  })

  it('stay apart where a figure differs', () => {
    expect(about(averagedOver(10, 12), 'averaging-time').map(({ message }) => message)).toEqual([
      expect.stringMatching(/^Depressurisation: .* 10 s/),
      expect.stringMatching(/^Pressurisation: .* 12 s/),
    ])
  })

  it('name their direction where only one has it', () => {
    const [only] = about(averagedOver(20, undefined), 'averaging-time')
    expect(only?.message).toMatch(/^Pressurisation: /)
    expect(only?.where).toEqual(['runs[1].averagingTime_s'])
  })
})
