import { CALCULATION_VERSION } from '../catalogue/calculation-version.js'
import { constantValue } from '../catalogue/constants.js'
import { curveFigures, type FigureDefinition, results } from '../catalogue/figures.js'
import {
  digestOf,
  EVALUATION_FORMAT,
  type EvaluatedReading,
  type EvaluatedRun,
  type Evaluation,
  type Figure,
  type Finding,
  type Results,
  type TestRecord,
} from '../contract/record/index.js'
import type { Block } from '../engine/index.js'
import type { Method } from '../methods/index.js'
import { officialResults } from './official-results.js'
import { verdictOf } from './verdict.js'
import type { AtPressure, WorkedRun, WorkedTest } from './work/worked-test.js'

const resultList = Object.values(results)

/** The evaluation of a worked test: figures read off its blocks, nothing computed here. */
export function assemble(
  record: TestRecord,
  method: Method,
  test: WorkedTest,
  findings: Finding[],
): Evaluation {
  return {
    format: EVALUATION_FORMAT,
    calculationVersion: CALCULATION_VERSION,
    method: method.id,
    recordDigest: digestOf(record),
    air: {
      indoorDensity_kg_m3: test.indoor.value('rho'),
      outdoorDensity_kg_m3: test.outdoor.value('rho'),
      referenceDensity_kg_m3: constantValue('rho_0'),
    },
    runs: test.runs.map(runOf),
    results: withQuantities({}, test.means),
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
  const figures: Partial<EvaluatedRun> = {
    direction: run.direction,
    zeroFlowPressure_Pa: curve.value(curveFigures.zeroFlowPressure_Pa.symbol),
    airFlowCoefficient: figure(curve, curveFigures.airFlowCoefficient, scatter),
    airLeakageCoefficient: figure(standard, curveFigures.airLeakageCoefficient, standard),
    airFlowExponent: figure(curve, curveFigures.airFlowExponent, scatter),
  }
  if (curve.has(curveFigures.rSquared.symbol)) figures.rSquared = curve.value(curveFigures.rSquared.symbol)
  withQuantities(figures, run.at)
  figures.readings = curve.column('dp').map((pressure, i) => {
    const reading: EvaluatedReading = {
      pressureDifference_Pa: pressure,
      envelopeFlow_m3_h: flows[i] as number,
      fittedFlow_m3_h: fitted[i] as number,
    }
    if (studentised) reading.studentisedResidual = studentised[i] as number
    return reading
  })
  return figures as EvaluatedRun
}

/** Adds the figures at the reference pressures, as far as there are any, behind what there is: the order is published. */
function withQuantities(figures: Partial<Results>, pressures: ReadonlyMap<number, AtPressure>): Results {
  for (const definition of resultList) {
    const { rate, derived } = at(pressures, definition.at_Pa)
    const block: Block<string> | undefined = definition.needs ? derived : rate
    if (block?.has(definition.symbol)) figures[definition.key] = figure(block, definition, block)
  }
  return figures as Results
}

/** A figure read off its block, with the ends of its interval where their block has them. */
function figure(
  block: Block<string>,
  { symbol, unit, ends }: FigureDefinition,
  endsBlock: Block<string> | undefined,
): Figure {
  const value = block.value(symbol)
  if (!ends || !endsBlock?.has(ends.lo)) return { value, unit }
  return { value, unit, ci95: [endsBlock.value(ends.lo), endsBlock.value(ends.hi)] }
}

function at(pressures: ReadonlyMap<number, AtPressure>, pressure: number): AtPressure {
  const found = pressures.get(pressure)
  if (!found) throw new RangeError(`nothing calculated at ${pressure} Pa`)
  return found
}
