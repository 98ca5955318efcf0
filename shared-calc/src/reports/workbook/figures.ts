import type { AssessedTest } from '../../assessment/evaluate.js'
import { curveFigures, type FigureDefinition, nameWithSymbol, results } from '../../catalogue/figures.js'
import { limitedName, unitText } from '../../catalogue/shown-figure.js'
import type { Evaluation, Figure } from '../../contract/record/index.js'

/** A published figure with the cell of Working it is read off. */
export interface PublishedFigure {
  readonly label: string
  readonly unit: string
  readonly recorded: number
  readonly block: string
  readonly symbol: string
  /**
   * What the figure is a small rest of, such as the limit for a margin: a difference far below it is rounding, however small the
   * figure itself is.
   */
  readonly restOf?: number
  /** Workbook-level name, for the main results only. */
  readonly name?: string
}

/** What a run publishes, in the order of sheet Check: those of its curve, then those at the reference pressures. */
const ofCurve: readonly FigureDefinition[] = Object.values(curveFigures)
const ofResults: readonly FigureDefinition[] = Object.values(results)

type Published = Readonly<Record<string, Figure | number | undefined>>

/** A figure and the ends of its interval, where the evaluation has them. */
function withEnds(definition: FigureDefinition, published: Published): PublishedFigure[] {
  const found = published[definition.key]
  if (found === undefined) return []
  const figure = typeof found === 'number' ? { value: found } : (found as Figure)
  const { short, block, symbol, bookName, ends } = definition
  const unit = unitText(definition.unit)
  const label =
    definition.unit === 'm3/h' || definition.block.endsWith('.rates') ? short : longLabel(definition)
  const whole = { label, unit, recorded: figure.value, block, symbol, ...(bookName && { name: bookName }) }
  if (!ends || !('ci95' in figure) || !figure.ci95) return [whole]
  const [low, high] = figure.ci95
  const end = (which: 'lower' | 'upper', recorded: number, endSymbol: string): PublishedFigure => ({
    label: `${short}, ${which} end`,
    unit,
    recorded,
    block: ends.block,
    symbol: endSymbol,
  })
  return [whole, end('lower', low, ends.lo), end('upper', high, ends.hi)]
}

const longLabel = (definition: FigureDefinition): string =>
  ['C_env', 'C_L', 'n', 'r²'].includes(definition.short) ? nameWithSymbol(definition) : definition.name

/** Every figure that the evaluation publishes, in the order of the report. */
export function publishedFigures(evaluation: Evaluation, test: AssessedTest): PublishedFigure[] {
  const runs = evaluation.runs.flatMap((run, i) =>
    [...ofCurve, ...ofResults].flatMap((definition) =>
      withEnds(definition, run as unknown as Published).map(({ name, ...figure }) => ({
        ...figure,
        label: `${run.direction}: ${figure.label}`,
        block: `run${i + 1}.${figure.block}`,
        ...(name && { name: `${name}_${run.direction}` }),
      })),
    ),
  )
  const means = ofResults.flatMap((definition) =>
    withEnds(definition, evaluation.results as unknown as Published).map((figure) => ({
      ...figure,
      label: `result: ${figure.label}`,
      block: `mean.${figure.block}`,
    })),
  )
  const { air } = evaluation
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
    const word = `target ${limitedName(criterion.quantity, criterion.referencePressure_Pa)}`
    const block = criterion.value.id
    return [
      {
        label: `${word}: value compared with the limit`,
        unit: unitText(recorded.unit),
        recorded: recorded.value,
        block,
        symbol: 'v',
      },
      {
        label: `${word}: margin`,
        unit: unitText(recorded.unit),
        recorded: recorded.margin,
        block,
        symbol: 'M',
        restOf: recorded.limit,
        ...(i === 0 && { name: 'margin_to_target' }),
      },
      {
        label: `${word}: leakage to seal`,
        unit: 'cm²',
        recorded: criterion.toSeal.value('A_s'),
        block: criterion.toSeal.id,
        symbol: 'A_s',
        restOf: areaAtLimit(criterion),
        ...(i === 0 && { name: 'leakage_to_seal' }),
      },
      ...criterion.ageing.map((age) => ({
        label: `${word}: after ageing by ${Math.round(age.value('g') * 100)} %`,
        unit: unitText(recorded.unit),
        recorded: age.value('v_g'),
        block: age.id,
        symbol: 'v_g',
      })),
    ]
  })
}

/** The hole that alone would leak as much as the limit allows, cm²: that to be sealed is what goes beyond it. */
function areaAtLimit({ value, toSeal }: AssessedTest['criteria'][number]): number {
  const beyond = Math.abs(value.value('M'))
  return beyond === 0 ? 0 : (toSeal.value('A_s') * value.value('L')) / beyond
}

/** LibreOffice works the t distribution out to within 3e-9 near a half (measured): ten times 1e-9 is allowed. */
const PROBABILITY_SIZE = 10

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
              label: `target ${quantity}: probability of meeting`,
              unit: '1',
              recorded,
              block: met.block.id,
              symbol: met.symbol,
              restOf: PROBABILITY_SIZE,
            },
          ]
    }),
  ]
}
