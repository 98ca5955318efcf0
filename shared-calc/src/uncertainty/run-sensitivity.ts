import type { Run } from '../contract/record/index.js'
import {
  assumed,
  type Bindings,
  type BlockOf,
  byRule,
  type Calculation,
  type Column,
  columnOf,
  type Given,
  inputsBySymbol,
} from '../engine/index.js'
import type { WorkedRun, WorkedTest } from '../evaluation/work/worked-test.js'
import { airSensitivity, densityCorrectionSlope } from '../formulas/uncertainty-air.js'
import type { windUncertainty } from '../formulas/uncertainty-weather.js'
import { zeroFlowChange, zeroFlowSpread, zeroFlowUncertainty } from '../formulas/uncertainty-zero-flow.js'
import type { Method } from '../methods/method.js'
import type { UncertaintyReader } from './inputs.js'
import { type ReadingScatter, workReadingScatter } from './reading-scatter.js'

/** The same value in every row of a column. */
export const constantColumn = ({ value, origin }: Given, rows: number): Column => ({
  values: new Array<number>(rows).fill(value),
  origin: () => origin,
})

type SensitivityBlock = BlockOf<Method['formulas']['sensitivity']>

/** The blocks of one run from which every budget is made. */
export interface RunUncertainty {
  readonly run: WorkedRun
  readonly id: string
  /** Uncertainty of the zero-flow pressure: `u_0`, Pa. */
  readonly zeroFlow: BlockOf<typeof zeroFlowUncertainty>
  /** Relative scatter expected of the readings. */
  readonly readings: ReadingScatter
  /** 1 for a reading in another range of the flow device than most; absent where one range served, or nobody said. */
  readonly otherRanges: Column | undefined
  readonly sensitivityAt: (pressure_Pa: number) => SensitivityBlock
}

/** How the density of the air on both sides moves with what was logged; humidity of exactly 0 is left out. */
export function airSensitivities(
  calculation: Calculation,
  test: WorkedTest,
): { indoor: BlockOf<typeof airSensitivity>; outdoor: BlockOf<typeof airSensitivity> } {
  const side = (where: 'indoor' | 'outdoor') => {
    const air = test[where]
    const [phi, p_bar] = [air.input('phi'), air.input('p_bar')]
    return calculation.add(`uncertainty.air.${where}`, `Sensitivities of the air ${where}s`, airSensitivity, {
      T: air.ref('T'),
      p_v: air.ref('p_v'),
      p_bar,
      phi: air.value('phi') === 0 ? undefined : phi,
    })
  }
  return { indoor: side('indoor'), outdoor: side('outdoor') }
}

/** What the zero-flow pressures of all runs say about their change; a period that was not logged shows none. */
export function workZeroFlowChange(
  calculation: Calculation,
  runs: readonly WorkedRun[],
): BlockOf<typeof zeroFlowChange> {
  const means = (symbol: 'dp_01' | 'dp_02') =>
    columnOf(runs.map(({ curve }) => curve.input(symbol)).flatMap((g) => (g && 'value' in g ? [g] : [])))
  return calculation.add('uncertainty.zeroFlow', 'Change of the zero-flow pressure', zeroFlowChange, {
    dp_01: means('dp_01'),
    dp_02: means('dp_02'),
  })
}

/** What the runs of a test have round them. */
export interface Surroundings {
  readonly indoor: BlockOf<typeof airSensitivity>
  readonly outdoor: BlockOf<typeof airSensitivity>
  readonly wind: BlockOf<typeof windUncertainty>
  readonly zeroFlowChange: BlockOf<typeof zeroFlowChange>
  /** The range in which most readings were taken; absent where all were, or nobody said. */
  readonly mainRange: string | undefined
}

/** The range of most readings of a test, of two alike the first; absent where one range served them all, or nobody said. */
export function mainRange(runs: readonly Run[]): string | undefined {
  const counts = new Map<string, number>()
  for (const { readings } of runs)
    for (const { range } of readings) {
      if (range === undefined) return undefined
      counts.set(range, (counts.get(range) ?? 0) + 1)
    }
  if (counts.size < 2) return undefined
  return [...counts].reduce((most, one) => (one[1] > most[1] ? one : most))[0]
}

const otherRangesOf = ({ readings }: Run, main: string): Column => ({
  values: readings.map(({ range }) => (range === main ? 0 : 1)),
  origin: () => ({ kind: 'rule', reason: `1 where the range is not ${main}` }),
})

export function workRunUncertainty(
  calculation: Calculation,
  method: Method,
  reader: UncertaintyReader,
  around: Surroundings,
  run: WorkedRun,
  logged: Run,
): RunUncertainty {
  const id = `run${run.index + 1}.uncertainty`
  const word = run.direction === 'depressurisation' ? 'Depressurisation' : 'Pressurisation'
  const { curve, scatter, standard } = run
  const rows = curve.rows
  const readings = workReadingScatter(calculation, id, word, reader, run, logged)
  const otherRanges = around.mainRange === undefined ? undefined : otherRangesOf(logged, around.mainRange)
  const blowingOut = run.direction === 'depressurisation'
  const [inDevice, inLeaks] = blowingOut ? [around.indoor, around.outdoor] : [around.outdoor, around.indoor]
  const slope = standard.has('k_n')
    ? standard
    : calculation.add(`${id}.correction`, `${word}: correction and exponent`, densityCorrectionSlope, {
        rho_x: curve.input('rho_x'),
      })
  const given: Bindings = {
    u_y: readings.flows,
    o_r: otherRanges,
    a_d: densityPowers(run),
    w: curve.has('w') ? curve.refColumn('w') : constantColumn(byRule(1, 'the fit is not weighted'), rows),
    k_T: standard.has('k_T') ? standard.ref('k_T') : byRule(0, 'the method corrects no viscosity'),
    d_s: byRule(blowingOut ? -1 : 1, 'direction: pressurisation +1, depressurisation −1'),
    g_Td: inDevice.ref('g_T'),
    g_Tx: inLeaks.ref('g_T'),
    g_pd: inDevice.ref('g_p'),
    g_px: inLeaks.ref('g_p'),
    g_hd: inDevice.has('g_h') ? inDevice.ref('g_h') : undefined,
    g_hx: inLeaks.has('g_h') ? inLeaks.ref('g_h') : undefined,
  }
  const blocks = [curve, ...(scatter ? [scatter] : []), slope, readings.pressures]
  const known = new Map<number, SensitivityBlock>()
  return {
    run,
    id,
    readings,
    otherRanges,
    zeroFlow: workZeroFlow(calculation, id, word, reader, run, around),
    sensitivityAt: (pressure) => {
      const block =
        known.get(pressure) ??
        calculation.addInputs(
          `${id}.at${pressure}`,
          `${word}: sensitivities at ${pressure} Pa`,
          method.formulas.sensitivity,
          inputsBySymbol(
            method.formulas.sensitivity,
            {
              symbols: givenSymbols,
              of: (symbol) => (symbol === 'dp_r' ? byRule(pressure, 'reference pressure') : given[symbol]),
            },
            blocks,
          ),
        )
      known.set(pressure, block)
      return block
    },
  }
}

/** What the sensitivities are given by hand. */
const givenSymbols = new Set('dp_r u_y o_r a_d w k_T d_s g_Td g_Tx g_pd g_px g_hd g_hx'.split(' '))

/** How each mass flow depends on the density of the air in the device. */
const densityPowers = ({ flows }: WorkedRun): Column => ({
  values: [...flows.densityPowers],
  origin: () => ({
    kind: 'rule',
    reason: 'flow of the air in the device: 1; for reference air or from the device pressure: 1/2',
  }),
})

function workZeroFlow(
  calculation: Calculation,
  id: string,
  word: string,
  reader: UncertaintyReader,
  run: WorkedRun,
  { zeroFlowChange: change, wind }: Surroundings,
): RunUncertainty['zeroFlow'] {
  const spread = (period: WorkedRun['before'], name: string): Given | undefined =>
    period && period.rows > 1
      ? calculation
          .add(
            `${id}.zero${name}`,
            `${word}: scatter of the zero-flow pressure ${name.toLowerCase()}`,
            zeroFlowSpread,
            {
              dp_z: period.refColumn('dp_z'),
              dp_m0: period.ref('dp_m0'),
            },
          )
          .ref('v_z')
      : undefined
  const before = spread(run.before, 'Before')
  const after = spread(run.after, 'After')
  // A period that was not logged, or with one value only, is as uncertain as a zero-flow pressure at the method's limit.
  const unknown = assumed(UNKNOWN_ZERO_FLOW_Pa2, 'assumed-zero-flow-spread')
  return calculation.add(
    `${id}.zero`,
    `${word}: uncertainty of the zero-flow pressure`,
    zeroFlowUncertainty,
    {
      v_1: before ?? after ?? unknown,
      v_2: after ?? before ?? unknown,
      s_d: change.ref('s_d'),
      N_d: change.ref('N_d'),
      p_w: wind.ref('p_w'),
      k_0: reader.read('zeroFlowWind'),
      u_z: reader.read('zeroFlow_Pa'),
    },
  )
}

/** Variance of a zero-flow pressure whose scatter nobody knows, Pa²: rule `assumed-zero-flow-spread` says so. */
export const UNKNOWN_ZERO_FLOW_Pa2 = 4
