import type { TargetQuantity } from '../contract/record/index.js'
import type { Block, BlockOf, Given } from '../engine/index.js'
import type { bothErrorsLine } from '../formulas/fit-both-errors.js'
import type { organicLine } from '../formulas/fit-organic.js'
import type { conformity, uncertaintyBudget } from '../formulas/uncertainty-budget.js'
import type { CauseId } from './causes.js'
import type { DefaultedInput } from './defaults.js'
import type { UsedDefault } from './inputs.js'
import type { RunUncertainty } from './run-sensitivity.js'

/** One row of a budget. */
export interface BudgetRow {
  readonly cause: CauseId
  /** The same cause has the same id in every budget; those of one run end in its number. */
  readonly id: string
  readonly name: string
  /** Unit of its standard uncertainty. */
  readonly unit: string
  /** Input of the record's uncertainty part that sets it, where one does. */
  readonly input?: DefaultedInput
  /** Index of the run whose own it is; absent where all readings of the test share it. */
  readonly run?: number
  /** Relative sensitivity, standard uncertainty, expected size, fourth power over the degrees of freedom. */
  readonly c: Given
  readonly u: Given
  readonly a: Given
  readonly r: Given
}

/** What the budget of a figure rests on, and its rows. */
export interface WorkedBudget {
  readonly quantity: string
  readonly label: string
  readonly unit: string
  readonly referencePressure_Pa: number
  readonly rows: readonly BudgetRow[]
  readonly block: BlockOf<typeof uncertaintyBudget>
}

/** Where a probability stands. */
export interface Probability {
  readonly block: Block<string>
  readonly symbol: string
}

export interface WorkedDecision {
  readonly quantity: TargetQuantity
  readonly referencePressure_Pa: number
  /** Of the figure judged: the mean, or the worse direction. */
  readonly budget: WorkedBudget
  readonly block: BlockOf<typeof conformity>
  /** What the verdict says about this limit. */
  readonly within: boolean
  /** That this limit is met: by each direction where each must meet it. */
  readonly met: Probability
  /** That all limits of the target are met; absent where there is one. */
  readonly allMet?: Probability
  /** Budgets of the other directions that must meet it too. */
  readonly others: readonly WorkedBudget[]
}

export interface WorkedFits {
  /** Index of the run. */
  readonly run: number
  /** Absent where readings are too few or taken as certain. */
  readonly organic?: BlockOf<typeof organicLine>
  /** Absent too where its rounds did not settle. */
  readonly bothErrors?: BlockOf<typeof bothErrorsLine>
}

/** The uncertainty of a whole test: budgets, decisions, and the other fits beside the official one. */
export interface WorkedUncertainty {
  readonly defaults: readonly UsedDefault[]
  readonly windAssumed: boolean
  readonly heightAssumed: boolean
  /** Present where the wind was logged at a meteorological station. */
  readonly windFromStation: Block<string> | undefined
  readonly budgets: readonly WorkedBudget[]
  readonly decisions: readonly WorkedDecision[]
  readonly fits: readonly WorkedFits[]
  readonly runs: readonly RunUncertainty[]
}

/** No bounds can be set about a figure: the budget is left out, and a finding says so. The method's figures stand. */
export class UnboundedUncertainty extends Error {
  /** @param block - title of the block that holds what is not a finite number */
  constructor(readonly block: string) {
    super(`${block}: no finite number`)
  }
}

/**
 * Readings may lie so near to zero that an interval about them leaves the numbers.
 * @throws UnboundedUncertainty when a block holds what is not a finite number
 */
export function refuseBeyondMeasure(blocks: readonly Block[]): void {
  const beyond = blocks.find((block) => !block.isFinite())
  if (beyond) throw new UnboundedUncertainty(beyond.title)
}
