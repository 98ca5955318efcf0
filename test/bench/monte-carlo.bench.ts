import { parseRecord } from '@draughtbook/shared-calc'
import { simulate } from '@draughtbook/shared-calc/simulation'
import { bareFit } from './bare-fit.js'
import { compare } from './report.js'
import { twoDirections } from './two-directions.js'

const DRAWS = 100_000

/** 100,000 draws of one test of two directions, against as many times the two bare fits of its readings. */
export async function run(): Promise<void> {
  const record = parseRecord(twoDirections())
  const columns = record.runs.map(({ readings }) => ({
    pressures: Float64Array.from(readings, ({ pressure_Pa }) => Math.abs(pressure_Pa)),
    flows: Float64Array.from(readings, ({ flow_m3_h }) => flow_m3_h ?? Number.NaN),
  }))
  await compare(
    `Monte Carlo of one test, ${DRAWS} draws, two directions of ten readings: against as many bare fits of both`,
    {
      name: `${DRAWS} × two bare hand-written least-squares fits`,
      run: () => {
        let sum = 0
        for (let draw = 0; draw < DRAWS; draw += 1)
          for (const { pressures, flows } of columns) sum += bareFit(pressures, flows).coefficient
        return sum
      },
    },
    [
      {
        name: `simulate(record), ${DRAWS} draws through the evaluation's formulas, six figures`,
        run: () => {
          const steps = simulate(record, { draws: DRAWS })
          for (;;) {
            const step = steps.next()
            if (step.done) return step.value
          }
        },
      },
    ],
    6,
  )
}
