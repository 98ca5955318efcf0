import type { AssessedTest } from '../../assessment/assessed-test.js'
import type { Evaluation } from '../../contract/record/index.js'

/** A published figure with the cell of Working it is read off. */
export interface PublishedFigure {
  readonly label: string
  readonly unit: string
  readonly recorded: number
  readonly block: string
  readonly symbol: string
  /** Workbook-level name, for the main results only. */
  readonly name?: string
}

const PER_AREA = 'm³/(h·m²)'
const COEFFICIENT = 'm³/(h·Paⁿ)'

interface RunFigure {
  readonly label: string
  readonly unit: string
  readonly value: (run: Evaluation['runs'][number]) => number | undefined
  readonly block: string
  readonly symbol: string
  readonly name?: string
}

const ofRun: readonly RunFigure[] = [
  {
    label: 'zero-flow pressure',
    unit: 'Pa',
    value: (r) => r.zeroFlowPressure_Pa,
    block: 'curve',
    symbol: 'dp_0',
  },
  {
    label: 'air flow coefficient C_env',
    unit: COEFFICIENT,
    value: (r) => r.airFlowCoefficient.value,
    block: 'curve',
    symbol: 'C_env',
  },
  {
    label: 'C_env, lower end',
    unit: COEFFICIENT,
    value: (r) => r.airFlowCoefficient.ci95?.[0],
    block: 'scatter',
    symbol: 'C_lo',
  },
  {
    label: 'C_env, upper end',
    unit: COEFFICIENT,
    value: (r) => r.airFlowCoefficient.ci95?.[1],
    block: 'scatter',
    symbol: 'C_hi',
  },
  {
    label: 'air leakage coefficient C_L',
    unit: COEFFICIENT,
    value: (r) => r.airLeakageCoefficient.value,
    block: 'standard',
    symbol: 'C_L',
    name: 'air_leakage_coefficient',
  },
  {
    label: 'air flow exponent n',
    unit: '',
    value: (r) => r.airFlowExponent.value,
    block: 'curve',
    symbol: 'n',
    name: 'air_flow_exponent',
  },
  {
    label: 'n, lower end',
    unit: '',
    value: (r) => r.airFlowExponent.ci95?.[0],
    block: 'scatter',
    symbol: 'n_lo',
  },
  {
    label: 'n, upper end',
    unit: '',
    value: (r) => r.airFlowExponent.ci95?.[1],
    block: 'scatter',
    symbol: 'n_hi',
  },
  {
    label: 'coefficient of determination r²',
    unit: '',
    value: (r) => r.rSquared,
    block: 'curve',
    symbol: 'r_2',
  },
  {
    label: 'q50',
    unit: 'm³/h',
    value: (r) => r.q50.value,
    block: 'at50',
    symbol: 'q_pr',
    name: 'air_leakage_rate_50',
  },
  { label: 'q50, lower end', unit: 'm³/h', value: (r) => r.q50.ci95?.[0], block: 'at50', symbol: 'q_lo' },
  { label: 'q50, upper end', unit: 'm³/h', value: (r) => r.q50.ci95?.[1], block: 'at50', symbol: 'q_hi' },
  { label: 'q10', unit: 'm³/h', value: (r) => r.q10.value, block: 'at10', symbol: 'q_pr' },
  { label: 'q4', unit: 'm³/h', value: (r) => r.q4.value, block: 'at4', symbol: 'q_pr' },
  {
    label: 'effective leakage area at 4 Pa',
    unit: 'cm²',
    value: (r) => r.ela4.value,
    block: 'at4',
    symbol: 'A_L',
  },
  {
    label: 'effective leakage area at 10 Pa',
    unit: 'cm²',
    value: (r) => r.ela10.value,
    block: 'at10',
    symbol: 'A_L',
  },
  {
    label: 'n50',
    unit: '1/h',
    value: (r) => r.n50?.value,
    block: 'at50.rates',
    symbol: 'n_pr',
    name: 'air_change_rate_50',
  },
  {
    label: 'qE50',
    unit: PER_AREA,
    value: (r) => r.qE50?.value,
    block: 'at50.rates',
    symbol: 'q_E',
    name: 'specific_leakage_rate_envelope_50',
  },
  {
    label: 'qF50',
    unit: PER_AREA,
    value: (r) => r.qF50?.value,
    block: 'at50.rates',
    symbol: 'q_F',
    name: 'specific_leakage_rate_floor_50',
  },
]

const fromCurve = new Set(['curve', 'scatter', 'standard'])

/** Every figure that the evaluation publishes, in the order of the report. */
export function publishedFigures(evaluation: Evaluation, test: AssessedTest): PublishedFigure[] {
  const runs = evaluation.runs.flatMap((run, i) =>
    ofRun.flatMap(({ label, unit, value, block, symbol, name }) => {
      const recorded = value(run)
      if (recorded === undefined) return []
      const figure = {
        label: `${run.direction}: ${label}`,
        unit,
        recorded,
        block: `run${i + 1}.${block}`,
        symbol,
      }
      return [name ? { ...figure, name: `${name}_${run.direction}` } : figure]
    }),
  )
  const { results, air } = evaluation
  const means = ofRun
    .filter(({ block, symbol }) => !fromCurve.has(block) && !/_(lo|hi)$/.test(symbol))
    .flatMap(({ label, unit, value, block, symbol, name }) => {
      const recorded = value({ ...results } as Evaluation['runs'][number])
      if (recorded === undefined) return []
      const figure = { label: `result: ${label}`, unit, recorded, block: `mean.${block}`, symbol }
      return [name ? { ...figure, name } : figure]
    })
  const densities: PublishedFigure[] = [
    {
      label: 'air density indoors',
      unit: 'kg/m³',
      recorded: air.indoorDensity_kg_m3,
      block: 'air.indoor',
      symbol: 'rho',
    },
    {
      label: 'air density outdoors',
      unit: 'kg/m³',
      recorded: air.outdoorDensity_kg_m3,
      block: 'air.outdoor',
      symbol: 'rho',
    },
  ]
  return [...means, ...verdictFigures(evaluation, test), ...sureness(evaluation, test), ...runs, ...densities]
}

function verdictFigures({ verdict }: Evaluation, test: AssessedTest): PublishedFigure[] {
  return test.criteria.flatMap((criterion, i) => {
    const recorded = verdict.criteria[i]
    if (!recorded) return []
    const word = `target ${criterion.quantity}`
    const block = criterion.value.id
    return [
      { label: `${word}: value judged`, unit: recorded.unit, recorded: recorded.value, block, symbol: 'v' },
      {
        label: `${word}: margin`,
        unit: recorded.unit,
        recorded: recorded.margin,
        block,
        symbol: 'M',
        ...(i === 0 && { name: 'margin_to_target' }),
      },
      {
        label: `${word}: leakage to seal`,
        unit: 'cm²',
        recorded: criterion.toSeal.value('A_s'),
        block: criterion.toSeal.id,
        symbol: 'A_s',
        ...(i === 0 && { name: 'leakage_to_seal' }),
      },
      ...criterion.ageing.map((age) => ({
        label: `${word}: after ageing by ${Math.round(age.value('g') * 100)} %`,
        unit: recorded.unit,
        recorded: age.value('v_g'),
        block: age.id,
        symbol: 'v_g',
      })),
    ]
  })
}

/** Combined uncertainties and how sure the target is met, where the test has a budget. */
function sureness({ uncertainty, decision }: Evaluation, test: AssessedTest): PublishedFigure[] {
  const budgets = test.uncertainty?.budgets ?? []
  const decisions = test.uncertainty?.decisions ?? []
  return [
    ...budgets.flatMap(({ label, block }, i) => {
      const recorded = uncertainty?.figures[i]?.relativeStandardUncertainty
      return recorded === undefined
        ? []
        : [
            {
              label: `${label}: relative standard uncertainty`,
              unit: '1',
              recorded,
              block: block.id,
              symbol: 'u_c',
            },
          ]
    }),
    ...decisions.flatMap(({ quantity, met }, i) => {
      const recorded = decision?.[i]?.probability
      return recorded === undefined
        ? []
        : [
            {
              label: `target ${quantity}: sure to meet`,
              unit: '1',
              recorded,
              block: met.block.id,
              symbol: met.symbol,
            },
          ]
    }),
  ]
}
