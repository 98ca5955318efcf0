import type {
  Decision,
  FigureUncertainty,
  Outcome,
  RunFits,
  UncertaintyEvaluation,
} from '../contract/record/index.js'
import { exceeds, sourceText } from '../engine/index.js'
import { unitOf } from '../evaluation/work/definite-target.js'
import type { WorkedTest } from '../evaluation/work/worked-test.js'
import { assembleFits } from './assemble-fits.js'
import { defaultUncertainties } from './defaults.js'
import { decisionWords } from './words.js'
import type { WorkedBudget, WorkedDecision, WorkedUncertainty } from './worked-uncertainty.js'

/** The optional parts of an evaluation, read off the blocks; nothing is computed here. */
export function assembleUncertainty(
  test: WorkedTest,
  worked: WorkedUncertainty,
  outcome: Outcome,
): { uncertainty: UncertaintyEvaluation; fits: RunFits[]; decision?: Decision[] } {
  return {
    uncertainty: {
      figures: worked.budgets.map(figureOf),
      defaults: worked.defaults.map(({ input, value, source }) => {
        const { term, unit } = defaultUncertainties[input]
        return { input, term, value, unit, source: sourceText(source) }
      }),
    },
    fits: worked.fits.flatMap((fits) => assembleFits(test, fits)),
    ...(worked.decisions.length > 0 && {
      decision: worked.decisions.map((decision) => decisionOf(decision, outcome)),
    }),
  }
}

function figureOf({
  quantity,
  label,
  unit,
  referencePressure_Pa,
  rows,
  block,
}: WorkedBudget): FigureUncertainty {
  const [sensitivities, uncertainties] = [block.column('c'), block.column('u')]
  const [contributions, shares] = [block.column('d'), block.column('f')]
  return {
    quantity,
    label,
    value: block.value('v'),
    unit,
    referencePressure_Pa,
    standardUncertainty: block.value('u_1'),
    relativeStandardUncertainty: block.value('u_c'),
    effectiveDegreesOfFreedom: block.value('nu_e'),
    coverageFactor: block.value('k'),
    expectedCorrection: block.value('b'),
    interval95: [block.value('v_lo'), block.value('v_hi')],
    contributions: rows.map((row, i) => ({
      id: row.id,
      name: row.name,
      standardUncertainty: uncertainties[i] as number,
      unit: row.unit,
      ...(row.a.origin.kind === 'block' && { expectedSize: row.a.value }),
      sensitivity: sensitivities[i] as number,
      contribution: contributions[i] as number,
      share: shares[i] as number,
      scope: row.run === undefined ? 'shared' : 'run',
      ...(row.input && { input: row.input }),
    })),
  }
}

function decisionOf(
  { quantity, referencePressure_Pa, block, within, met, allMet }: WorkedDecision,
  outcome: Outcome,
): Decision {
  const [value, limit, probability] = [block.value('v'), block.value('L'), met.block.value(met.symbol)]
  const all = allMet?.block.value(allMet.symbol)
  const [acceptedRisk, acceptanceLimit] = [block.value('r_a'), block.value('L_a')]
  const withinAcceptanceLimit = !exceeds(value, acceptanceLimit)
  const unit = unitOf(quantity)
  return {
    quantity,
    referencePressure_Pa,
    value,
    limit,
    unit,
    probability,
    ...(all !== undefined && { allLimitsProbability: all }),
    acceptedRisk,
    acceptanceLimit,
    withinAcceptanceLimit,
    words: decisionWords(outcome, within, probability, {
      acceptedRisk,
      acceptanceLimit: `${Number(acceptanceLimit.toPrecision(3))} ${unit.replace('m3', 'm³').replace('m2', 'm²')}`,
      within: withinAcceptanceLimit,
      ...(all !== undefined && { allLimits: all }),
    }),
  }
}
