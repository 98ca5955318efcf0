import { type Block, byRule, type Calculation, columnOf, type Given } from '../engine/index.js'
import { meanSensitivity } from '../formulas/uncertainty-budget.js'
import type { UncertaintyReader } from './inputs.js'
import type { RunUncertainty } from './run-sensitivity.js'
import type { BudgetRow, Cause } from './worked-uncertainty.js'

const none = byRule(0, 'not found from scatter')

/** What the budgets of a test share: its wind, and what the record says of its inputs. */
export interface SharedUncertainty {
  readonly calculation: Calculation
  readonly reader: UncertaintyReader
  readonly wind: Block
  /** Whether the figure stands for both directions though one was run. */
  readonly otherDirectionMissing: boolean
}

/**
 * The rows of the budget of the air leakage rate at one reference pressure, for the mean over some runs: what all
 * readings share first, then what each run has of its own.
 */
export function rateRows(
  shared: SharedUncertainty,
  runs: readonly RunUncertainty[],
  pressure_Pa: number,
): readonly BudgetRow[] {
  const mean = meanBlock(shared.calculation, runs, pressure_Pa)
  const { reader, wind } = shared
  const rows: BudgetRow[] = []
  const add = (cause: Cause, c: Given, u: Given, r: Given = none) => rows.push({ ...cause, c, u, r })
  const shares = (symbol: string, cause: Cause, u: () => Given) => {
    if (mean.has(symbol)) add(cause, mean.ref(symbol), u())
  }
  add(
    { id: 'flow calibration', name: 'flow calibration', unit: '1', input: 'flowCalibration_relative' },
    byRule(1, 'leakage rate is proportional to flow'),
    reader.read('flowCalibration_relative'),
  )
  shares('c_g', { id: 'gauge span', name: 'pressure gauge', unit: '1', input: 'gaugeSpan_relative' }, () =>
    reader.read('gaugeSpan_relative'),
  )
  shares(
    'c_w',
    { id: 'wind shift', name: 'wind: shift of the mean pressure', unit: 'Pa', input: 'windShift' },
    () => wind.ref('u_w'),
  )
  shares(
    'c_v',
    {
      id: 'wind spread',
      name: 'wind: spread of the pressure around the envelope',
      unit: 'Pa²',
      input: 'windSpread',
    },
    () => wind.ref('u_v'),
  )
  shares(
    'c_Ti',
    { id: 'indoor temperature', name: 'indoor temperature', unit: 'K', input: 'indoorTemperature_K' },
    () => reader.read('indoorTemperature_K'),
  )
  shares(
    'c_Te',
    { id: 'outdoor temperature', name: 'outdoor temperature', unit: 'K', input: 'outdoorTemperature_K' },
    () => reader.read('outdoorTemperature_K'),
  )
  shares(
    'c_p',
    { id: 'barometer', name: 'barometric pressure', unit: 'Pa', input: 'barometricPressure_Pa' },
    () => reader.barometer(),
  )
  shares(
    'c_hi',
    { id: 'indoor humidity', name: 'humidity indoors', unit: '1', input: 'relativeHumidity' },
    () => reader.humidity('indoor'),
  )
  shares(
    'c_he',
    { id: 'outdoor humidity', name: 'humidity outdoors', unit: '1', input: 'relativeHumidity' },
    () => reader.humidity('outdoor'),
  )
  shares(
    'c_n',
    { id: 'assumed exponent', name: 'assumed air flow exponent', unit: '1', input: 'assumedExponent' },
    () => reader.read('assumedExponent'),
  )
  for (const [i, { run, zeroFlow, sensitivityAt }] of runs.entries()) {
    const { index, direction } = run
    add(
      {
        id: `zero flow ${index + 1}`,
        name: `zero-flow pressure, ${direction}`,
        unit: 'Pa',
        input: 'zeroFlow_Pa',
        run: index,
      },
      mean.refRow('c_0', i),
      zeroFlow.ref('u_0'),
      zeroFlow.ref('r_0'),
    )
    const sensitivity = sensitivityAt(pressure_Pa)
    add(
      { id: `scatter ${index + 1}`, name: `scatter of the readings, ${direction}`, unit: '1', run: index },
      mean.refRow('g', i),
      sensitivity.ref('u_r'),
      sensitivity.ref('r_r'),
    )
  }
  if (shared.otherDirectionMissing)
    add(
      {
        id: 'other direction',
        name: 'direction not measured',
        unit: '1',
        input: 'otherDirection_relative',
      },
      byRule(1, 'the target needs the mean of both directions'),
      reader.read('otherDirection_relative'),
    )
  return rows
}

function meanBlock(calculation: Calculation, runs: readonly RunUncertainty[], pressure_Pa: number): Block {
  const which = runs.map(({ run }) => run.index + 1).join('')
  const id = `uncertainty.mean${which}.at${pressure_Pa}`
  const known = calculation.find(id)
  if (known) return known
  const blocks = runs.map(({ run, sensitivityAt }) => ({ run, block: sensitivityAt(pressure_Pa) }))
  /** One value a run; left out where a run lacks it. */
  const column = (symbol: (depressurising: boolean) => string) => {
    const given = blocks.flatMap(({ run, block }) => {
      const name = symbol(run.direction === 'depressurisation')
      return block.has(name) ? [block.ref(name)] : []
    })
    return given.length === blocks.length ? columnOf(given) : undefined
  }
  // Depressurising, indoor air goes through the device and outdoor air through the leaks; pressurising, the reverse.
  const indoors = (quantity: string) => column((out) => `s_${quantity}${out ? 'd' : 'x'}`)
  const outdoors = (quantity: string) => column((out) => `s_${quantity}${out ? 'x' : 'd'}`)
  return calculation.add(id, `Sensitivities of the mean at ${pressure_Pa} Pa`, meanSensitivity, {
    q_r: columnOf(runs.map(({ run }) => rateRef(run.at.get(pressure_Pa)?.rate, pressure_Pa))),
    s_0: column(() => 's_0'),
    s_g: column(() => 's_g'),
    s_w: column(() => 's_w'),
    s_v: column(() => 's_v'),
    s_p: column(() => 's_p'),
    s_n: column(() => 's_n'),
    s_Ti: indoors('T'),
    s_Te: outdoors('T'),
    s_hi: indoors('h'),
    s_he: outdoors('h'),
  })
}

function rateRef(rate: Block | undefined, pressure_Pa: number): Given {
  if (!rate) throw new RangeError(`nothing worked out at ${pressure_Pa} Pa`)
  return rate.ref('q_pr')
}
