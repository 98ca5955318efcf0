import type { Column, Recipe } from '../recipe.js'
import { logged, meant, type Unit } from '../units.js'
import type { WrittenReading, WrittenRunOfLog } from '../written.js'

export interface ColumnPlan {
  column: Column
  heading: string
  unit?: Unit
  /** The cell of one reading; a text where it is none of the figures. */
  value: (reading: WrittenReading, index: number) => number | string | undefined
}

const NONE = { symbol: '', factor: 1, digits: 0 }

/** What each column of a readings' table holds, in the order of the recipe. */
export function columnPlans(run: WrittenRunOfLog, recipe: Recipe): ColumnPlan[] {
  const { words, units, table, otherFlow, induced } = recipe
  const { pressure, flow } = units
  const zero = (mean(run.before) + mean(run.after)) / 2
  const fix = (value: number, digits: number) => Number(value.toFixed(digits))
  const plans: Record<Column, Omit<ColumnPlan, 'column'>> = {
    number: { heading: words.number, value: (_, index) => index + 1 },
    time: { heading: 'Time', value: (_, index) => `10:${String(12 + 2 * index).padStart(2, '0')}` },
    target: {
      heading: words.target,
      unit: { ...pressure, digits: 0 },
      value: ({ target }) => logged(target, pressure),
    },
    pressure: { heading: words.pressure, unit: pressure, value: ({ pressure: value }) => value },
    flow: { heading: words.flow, unit: flow, value: ({ flow: value }) => value },
    flowOther: {
      heading: words.flow,
      unit: otherFlow ?? NONE,
      value: ({ flow: value }) => (otherFlow ? logged(meant(value, flow), otherFlow) : undefined),
    },
    device: { heading: words.devicePressure, unit: pressure, value: ({ device }) => device },
    plate: { heading: words.plate, value: ({ plate }) => plate },
    fanSpeed: {
      heading: 'Fan speed',
      unit: { symbol: '%', factor: 1, digits: 0 },
      value: (_, index) => 92 - 7 * index,
    },
    // A factor near the ratio of the densities, as many sheets keep it beside the flow that was shown.
    corrected: {
      heading: words.corrected,
      unit: flow,
      value: ({ flow: value }) =>
        fix(value * (run.direction === 'depressurisation' ? 0.962 : 1.041), flow.digits),
    },
    induced: {
      heading: words.induced,
      unit: pressure,
      // Where the instrument took zero flow off, it is off already.
      value: ({ pressure: value }) => fix(Math.abs(induced ? value : value - zero), pressure.digits + 1),
    },
    fan1: { heading: `${words.flow} 1`, unit: flow, value: ({ fan1 }) => fan1 },
    fan2: {
      heading: `${words.flow} 2`,
      unit: flow,
      value: ({ flow: value, fan1 }) => fix(value - fan1, flow.digits),
    },
    total: { heading: words.total, unit: flow, value: ({ flow: value }) => value },
    remark: { heading: words.remark, value: () => undefined },
  }
  return table.map((column) => ({ column, ...plans[column] }))
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
