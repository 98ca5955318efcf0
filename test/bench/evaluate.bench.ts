import { createHash } from 'node:crypto'
import { evaluate, evaluateInput, parseRecord } from '@draughtbook/shared-calc'
import canonicalizeModule from 'canonicalize'
import { bareFit } from './bare-fit.js'
import { compare } from './report.js'
import { twoDirections } from './two-directions.js'

// The package declares its default export as a module object; at run time it is the function.
const canonicalize = canonicalizeModule as unknown as (value: unknown) => string | undefined

/** Evaluating one test of two directions with ten readings each, against what the contract asks of every record anyway. */
export async function run(): Promise<void> {
  const input = twoDirections()
  const record = parseRecord(input)
  const columns = record.runs.map(({ readings }) => ({
    pressures: Float64Array.from(readings, ({ pressure_Pa }) => Math.abs(pressure_Pa)),
    flows: Float64Array.from(readings, ({ flow_m3_h }) => flow_m3_h ?? Number.NaN),
  }))
  const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex')
  await compare(
    'One test of two directions, ten readings each: record in, evaluation out',
    {
      name: 'zod check + canonical JSON (RFC 8785) + SHA-256 of the same record',
      run: () => sha256(canonicalize(parseRecord(input)) ?? ''),
    },
    [
      { name: 'evaluateInput(unknown), everything included', run: () => evaluateInput(input) },
      { name: 'evaluate(record), already checked', run: () => evaluate(record) },
      {
        name: 'two bare hand-written least-squares fits',
        run: () => columns.map(({ pressures, flows }) => bareFit(pressures, flows)),
      },
    ],
    2,
  )
}
