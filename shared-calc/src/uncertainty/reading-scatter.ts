import type { Run } from '../contract/record/index.js'
import {
  type Block,
  type BlockOf,
  type Calculation,
  type Column,
  columnOf,
  fromRecord,
  type Given,
} from '../engine/index.js'
import type { WorkedRun } from '../evaluation/work/worked-test.js'
import {
  deviceAverageUncertainty,
  flowAverageUncertainty,
  readingUncertainty,
} from '../formulas/uncertainty-air.js'
import type { UncertaintyReader } from './inputs.js'

/** What scatter is expected of the readings of a run, all relative, one value a reading. */
export interface ReadingScatter {
  /** Has `u_x`, of the induced pressure difference. */
  readonly pressures: BlockOf<typeof readingUncertainty>
  /** Of the flow. */
  readonly flows: Column
}

/**
 * Expected scatter of the readings of a run: what the averages of a raw series showed where the record says it, else
 * what the record expects of any reading, or the default. An average's own scatter holds all that its samples scattered
 * by, so nothing expected is added to it.
 */
export function workReadingScatter(
  calculation: Calculation,
  id: string,
  word: string,
  reader: UncertaintyReader,
  worked: WorkedRun,
  run: Run,
): ReadingScatter {
  const path = (row: number, field: string) => `runs[${worked.index}].readings[${row}].${field}`
  const u_p = run.readings.map(({ pressureUncertainty_Pa: told }, row) =>
    told === undefined
      ? reader.read('pressureReading_Pa')
      : fromRecord(path(row, 'pressureUncertainty_Pa'), told),
  )
  const pressures = calculation.add(
    `${id}.readings`,
    `${word}: expected scatter of the readings`,
    readingUncertainty,
    { dp: worked.curve.refColumn('dp'), u_p: columnOf(u_p) },
  )
  const { curve } = worked
  const { device } = worked.flows
  const flow: Given[][] = []
  const pressure: Given[][] = []
  // Which block tells the scatter of which reading, and in which of its rows.
  const told = run.readings.map((reading, row) => {
    const { flowUncertainty_m3_h: u_q, devicePressureUncertainty_Pa: u_d } = reading
    if (u_q !== undefined)
      return {
        kind: 'flow' as const,
        row:
          flow.push([
            fromRecord(path(row, 'flow_m3_h'), reading.flow_m3_h ?? Number.NaN),
            fromRecord(path(row, 'flowUncertainty_m3_h'), u_q),
          ]) - 1,
      }
    const from = rowOrigin(curve, row)
    if (u_d === undefined || !device || from === undefined) return undefined
    return {
      kind: 'device' as const,
      row:
        pressure.push([
          given(device, 'dp_d', from),
          fromRecord(path(row, 'devicePressureUncertainty_Pa'), u_d),
          given(device, 'm_d', from),
        ]) - 1,
    }
  })
  const column = (rows: readonly Given[][], place: number) =>
    columnOf(rows.flatMap((row) => row[place] ?? []))
  const blocks = {
    flow:
      flow.length === 0
        ? undefined
        : calculation.add(`${id}.flows`, `${word}: scatter of the averaged flows`, flowAverageUncertainty, {
            q_m: column(flow, 0),
            u_q: column(flow, 1),
          }),
    device:
      pressure.length === 0
        ? undefined
        : calculation.add(
            `${id}.devicePressures`,
            `${word}: scatter of the averaged device pressures`,
            deviceAverageUncertainty,
            { dp_d: column(pressure, 0), u_d: column(pressure, 1), m_d: column(pressure, 2) },
          ),
  }
  const flows = columnOf(
    told.map(
      (one) => (one && blocks[one.kind]?.refRow('u_y', one.row)) ?? reader.read('flowReading_relative'),
    ),
  )
  return { pressures, flows }
}

/** One row of what a block was given. */
function given<S extends string>(block: Block<S>, symbol: S, row: number): Given {
  const column = block.input(symbol)
  if (!column || !('values' in column)) throw new RangeError(`${block.id} was given no column ${symbol}`)
  return { value: column.values[row] as number, origin: column.origin(row) }
}

/** The row of the device's block that a flow comes from; undefined for a flow as indicated. */
function rowOrigin(curve: WorkedRun['curve'], row: number): number | undefined {
  const { origin } = given(curve, 'q_m', row)
  return origin.kind === 'block' ? (origin.row ?? 0) : undefined
}
