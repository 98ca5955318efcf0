import { evaluate, type TestRecord } from '@draughtbook/shared-calc'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { expectSameNumbers, figuresOf } from './support/figures'
import { between, ordinaryRecord } from './support/ordinary-records'

type Run = TestRecord['runs'][number]
const withRuns = (record: TestRecord, change: (run: Run, index: number) => Run): TestRecord => ({
  ...record,
  runs: record.runs.map(change),
})
// Residuals are differences of nearly equal numbers: compared on the scale of the flows, they may differ absolutely.
const withoutResiduals = (record: TestRecord) => {
  const { runs, ...rest } = figuresOf(evaluate(record))
  return {
    ...rest,
    runs: runs.map(({ readings, ...run }) => ({
      ...run,
      readings: readings.map(({ studentisedResidual: _, ...reading }) => reading),
    })),
  }
}

describe('an evaluation', () => {
  it('scales with its flows: k times all flows are k times q50, the exponent stays', () => {
    fc.assert(
      fc.property(ordinaryRecord, between(0.1, 10), (record, k) => {
        const scaled = withRuns(record, (run) => ({
          ...run,
          readings: run.readings.map((reading) => ({ ...reading, flow_m3_h: k * (reading.flow_m3_h ?? 0) })),
        }))
        const [before, after] = [evaluate(record), evaluate(scaled)]
        const figures = ['q50', 'q10', 'q4', 'ela4', 'ela10', 'n50', 'qE50', 'qF50'] as const
        for (const quantity of figures) {
          const from = before.results[quantity]?.value ?? Number.NaN
          expect((after.results[quantity]?.value ?? 0) / from).toBeCloseTo(k, 9)
        }
        before.runs.forEach((run, i) => {
          const other = after.runs[i]
          expect(other?.airFlowExponent.value).toBeCloseTo(run.airFlowExponent.value, 10)
          expect(other?.rSquared).toBeCloseTo(run.rSquared ?? Number.NaN, 9)
          expectSameNumbers(
            other?.q50.ci95,
            run.q50.ci95?.map((end) => k * end),
            1e-9,
          )
        })
      }),
    )
  })

  it('does not depend on the order of the readings', () => {
    fc.assert(
      fc.property(ordinaryRecord, fc.infiniteStream(fc.nat()), (record, order) => {
        const shuffled = withRuns(record, (run) => ({
          ...run,
          readings: run.readings
            .map((reading) => ({ reading, place: order.next().value }))
            .sort((a, b) => a.place - b.place)
            .map(({ reading }) => reading),
        }))
        const { runs: _, ...before } = withoutResiduals(record)
        const { runs: __, ...after } = withoutResiduals(shuffled)
        expectSameNumbers(after, before, 1e-9, 1e-9)
      }),
    )
  })

  it('does not depend on the order of the runs', () => {
    fc.assert(
      fc.property(ordinaryRecord, (record) => {
        const turned = { ...record, runs: [...record.runs].reverse() }
        const [before, after] = [evaluate(record), evaluate(turned)]
        expectSameNumbers(after.results, before.results, 1e-14)
        expect([...after.runs].reverse()).toEqual(before.runs)
      }),
    )
  })

  it('does not depend on the sign of the pressures, zero-flow pressures included', () => {
    fc.assert(
      fc.property(ordinaryRecord, (record) => {
        const negated = (values: number[] | undefined) => (values ?? []).map((value) => -value)
        const flipped = withRuns(record, (run) => ({
          ...run,
          zeroFlowBefore_Pa: negated(run.zeroFlowBefore_Pa),
          zeroFlowAfter_Pa: negated(run.zeroFlowAfter_Pa),
          readings: run.readings.map((reading) => ({ ...reading, pressure_Pa: -reading.pressure_Pa })),
        }))
        const [before, after] = [evaluate(record), evaluate(flipped)]
        expect(after.results).toEqual(before.results)
        expect(after.verdict).toEqual(before.verdict)
        after.runs.forEach((run, i) => {
          const { zeroFlowPressure_Pa: turned, ...rest } = run
          const { zeroFlowPressure_Pa: straight = Number.NaN, ...same } = before.runs[i] ?? run
          expect(rest).toEqual(same)
          expect(turned).toBeCloseTo(-straight, 12)
        })
        // What the rules object to stays the same, but for the note that the signs are unusual.
        const objections = ({ findings }: typeof before) =>
          findings
            .map(({ rule, severity }) => `${rule} ${severity}`)
            .filter((text) => !text.startsWith('sign'))
        expect(objections(after).sort()).toEqual(objections(before).sort())
        expect(after.findings.filter(({ rule }) => rule === 'sign-convention')).toHaveLength(
          record.runs.length,
        )
      }),
    )
  })
})
