import { digestOf, evaluate, evaluateInput, parseRecord } from '@draughtbook/shared-calc'
import { bareFit } from './bare-fit.js'
import { compare } from './report.js'
import { twoDirections } from './two-directions.js'

/** Evaluating one test of two directions with ten readings each, against two bare least-squares fits. */
export async function run(): Promise<void> {
  const input = twoDirections()
  const record = parseRecord(input)
  const columns = record.runs.map(({ readings }) => ({
    pressures: Float64Array.from(readings, ({ pressure_Pa }) => Math.abs(pressure_Pa)),
    flows: Float64Array.from(readings, ({ flow_m3_h }) => flow_m3_h ?? Number.NaN),
  }))
  await compare(
    'One test of two directions, ten readings each: evaluation against two bare least-squares fits',
    {
      name: 'two bare hand-written least-squares fits',
      run: () => columns.map(({ pressures, flows }) => bareFit(pressures, flows)),
    },
    [
      { name: 'evaluate(record), everything included', run: () => evaluate(record) },
      { name: 'of it: digest of the record (RFC 8785, SHA-256)', run: () => digestOf(record) },
      {
        name: 'stated separately: checking the record against its schema (zod)',
        run: () => parseRecord(input),
      },
      { name: 'both: evaluateInput(unknown)', run: () => evaluateInput(input) },
    ],
    15,
  )
}
