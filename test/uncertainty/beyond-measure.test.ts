import { evaluate } from '@draughtbook/shared-calc'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { describe, expect, it } from 'vitest'
import { powerLaw, recordBy, usual_Pa } from '../methods/record-by'

const rough = powerLaw(80, 0.65, usual_Pa).map((reading, i) => ({
  ...reading,
  flow_m3_h: reading.flow_m3_h * (1 + 0.02 * Math.sin(5 * i)),
}))
const target = { quantity: 'n50', limit: 3 } as const

describe('a scatter of 0 that is stated though the readings scatter', () => {
  const record = recordBy('iso-9972:2015', rough, {
    uncertainty: { pressureReading_Pa: 0, flowReading_relative: 0 },
    target,
  })

  it('is named in a finding, holds only numbers, and what was found is counted', () => {
    const evaluation = evaluate(record)
    expect(JSON.parse(JSON.stringify(evaluation))).toEqual(evaluation)
    const [finding] = evaluation.findings.filter(({ rule }) => rule === 'scatter-unexpected')
    expect(finding?.where).toContain('uncertainty.pressureReading_Pa')
    expect(finding).not.toHaveProperty('value')
    const scatter = evaluation.uncertainty?.figures[0]?.contributions.find(({ id }) => id === 'scatter 1')
    expect(scatter?.contribution).toBeGreaterThan(0.002)
  })

  it('writes a workbook', async () => {
    expect((await writeSummaryWorkbook(record)).length).toBeGreaterThan(10_000)
  })
})

describe('a budget that leads beyond the numbers', () => {
  // A reading at a hundred-thousandth of a pascal: 0.1 Pa of scatter is ten thousand times the reading.
  const record = recordBy('iso-9972:2015', powerLaw(80, 0.65, [60, 50, 40, 30, 1e-5]), {
    uncertainty: {},
    target,
  })

  it('leaves the official figures and the verdict as they are without it, and says so', async () => {
    const { uncertainty: _, ...asked } = record
    const [evaluation, plain] = [evaluate(record), evaluate(asked)]
    expect(evaluation).not.toHaveProperty('uncertainty')
    const unbounded = evaluation.findings.filter(({ rule }) => rule === 'uncertainty-unbounded')
    expect(unbounded.map(({ severity }) => severity)).toEqual(['caution'])
    expect(evaluation.results).toEqual(plain.results)
    expect(evaluation.verdict).toEqual(plain.verdict)
    expect((await writeSummaryWorkbook(record)).length).toBeGreaterThan(10_000)
  })
})
