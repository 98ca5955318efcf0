import { CALCULATION_VERSION } from '../catalogue/calculation-version.js'
import { constantValue } from '../catalogue/constants.js'
import {
  digestOf,
  EVALUATION_FORMAT,
  type EvaluatedReading,
  type EvaluatedRun,
  type Evaluation,
  type Figure,
  type Finding,
  type Results,
  type Sha256,
  type TestRecord,
} from '../contract/record/index.js'
import type { Block } from '../engine/index.js'
import type { Method } from '../methods/index.js'
import { officialResults } from './official-results.js'
import { verdictOf } from './verdict.js'
import type { AtPressure, WorkedRun, WorkedTest } from './work/worked-test.js'

/** The evaluation of a worked test: figures read off its blocks, nothing computed here. */
export function assemble(
  record: TestRecord,
  method: Method,
  test: WorkedTest,
  findings: Finding[],
  sha256?: Sha256,
): Evaluation {
  return {
    format: EVALUATION_FORMAT,
    calculationVersion: CALCULATION_VERSION,
    method: method.id,
    recordDigest: digestOf(record, sha256),
    air: {
      indoorDensity_kg_m3: test.indoor.value('rho'),
      outdoorDensity_kg_m3: test.outdoor.value('rho'),
      referenceDensity_kg_m3: constantValue('rho_0'),
    },
    runs: test.runs.map(runOf),
    results: quantitiesOf((pressure) => at(test.means, pressure)),
    verdict: verdictOf(test, findings),
    findings,
    ...(method.official && { official: officialResults(method.official, test) }),
  }
}

function runOf(run: WorkedRun): EvaluatedRun {
  const { curve, scatter, standard, residuals } = run
  const fitted = curve.column('q_fit')
  const flows = curve.column('q_env')
  const studentised = residuals?.column('t_e')
  return {
    direction: run.direction,
    zeroFlowPressure_Pa: curve.value('dp_0'),
    airFlowCoefficient: figure(curve, 'C_env', COEFFICIENT, ends(scatter, 'C')),
    airLeakageCoefficient: figure(standard, 'C_L', COEFFICIENT, ends(standard, 'C_L')),
    airFlowExponent: figure(curve, 'n', '1', ends(scatter, 'n')),
    ...(curve.has('r_2') && { rSquared: curve.value('r_2') }),
    ...quantitiesOf((pressure) => at(run.at, pressure)),
    readings: curve.column('dp').map((pressure, i) => {
      const reading: EvaluatedReading = {
        pressureDifference_Pa: pressure,
        envelopeFlow_m3_h: flows[i] as number,
        fittedFlow_m3_h: fitted[i] as number,
      }
      if (studentised) reading.studentisedResidual = studentised[i] as number
      return reading
    }),
  }
}

const COEFFICIENT = 'm3/(h·Pa^n)'
const PER_AREA = 'm3/(h·m2)'

function quantitiesOf(atPressure: (pressure: number) => AtPressure): Results {
  const [fifty, ten, four] = [atPressure(50), atPressure(10), atPressure(4)]
  const n50 = optional(fifty.derived, 'n_pr', '1/h')
  const qE50 = optional(fifty.derived, 'q_E', PER_AREA)
  const qF50 = optional(fifty.derived, 'q_F', PER_AREA)
  return {
    q50: flow(fifty.rate),
    q10: flow(ten.rate),
    q4: flow(four.rate),
    ela4: figure(four.rate, 'A_L', 'cm2'),
    ela10: figure(ten.rate, 'A_L', 'cm2'),
    ...(n50 && { n50 }),
    ...(qE50 && { qE50 }),
    ...(qF50 && { qF50 }),
  }
}

const flow = (rate: Block): Figure =>
  figure(rate, 'q_pr', 'm3/h', rate.has('q_lo') ? [rate.value('q_lo'), rate.value('q_hi')] : undefined)

function optional(block: Block | undefined, symbol: string, unit: string): Figure | undefined {
  if (!block?.has(symbol)) return undefined
  return figure(block, symbol, unit, ends(block, symbol))
}

/** The ends of a figure's interval, where the block has them. */
function ends(block: Block | undefined, symbol: string): [number, number] | undefined {
  if (!block?.has(`${symbol}_lo`)) return undefined
  return [block.value(`${symbol}_lo`), block.value(`${symbol}_hi`)]
}

function figure(block: Block, symbol: string, unit: string, ci95?: [number, number]): Figure {
  const value = block.value(symbol)
  return ci95 ? { value, unit, ci95 } : { value, unit }
}

function at(pressures: ReadonlyMap<number, AtPressure>, pressure: number): AtPressure {
  const found = pressures.get(pressure)
  if (!found) throw new RangeError(`nothing worked out at ${pressure} Pa`)
  return found
}
