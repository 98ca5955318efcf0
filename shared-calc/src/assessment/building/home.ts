import { InputError } from '../../contract/problem.js'
import type { AdjoiningSpaces, Outcome, TargetQuantity, TestRecord } from '../../contract/record/index.js'
import { placeWords } from '../../contract/record/index.js'
import { basisOf } from '../../evaluation/work/definite-target.js'
import type { WorkedDecision } from '../../uncertainty/worked-uncertainty.js'
import { evaluateWorked } from '../evaluate.js'

/** One tested home as it was given. */
export interface GivenHome {
  /** What the file is called. */
  readonly file: string
  readonly record: TestRecord
  /** Why the file cannot be taken as issued; absent where it can. */
  readonly altered?: string
}

/** One tested home with the figure its target limits, and how sure that figure is. */
export interface TestedHome {
  readonly file: string
  readonly record: TestRecord
  readonly altered?: string
  readonly adjoiningSpaces?: AdjoiningSpaces
  readonly outcome: Outcome
  /** The limit it is held against: of several, the one that decides, unless another was asked for. */
  readonly target: HomeTarget
  /** Margin as a share of the limit, by the quantity limited. */
  readonly margins: ReadonlyMap<TargetQuantity, number>
  readonly decision: WorkedDecision
  /** The largest figure that meets the limit, before the target's factors and rounding. */
  readonly largestFigure: number
  /** What the figure is related to: volume or area of the home; 1 for a flow. */
  readonly basis: number
}

export interface HomeTarget {
  readonly label: string
  readonly quantity: TargetQuantity
  readonly limit: number
  readonly unit: string
  readonly referencePressure_Pa: number
}

export const limitText = ({ quantity, limit, unit }: Omit<HomeTarget, 'label'>): string =>
  `${quantity} ≤ ${limit} ${unit}`

/** The name of a target and its limit; a target without a name of its own is called by its limit. */
export function homesTargetText({ label, ...limit }: HomeTarget): string {
  const text = limitText(limit)
  return text.startsWith(label) ? text : `${label}: ${text}`
}

/** Fields that a figure is related to. */
export const basisFields = {
  n: 'volume_m3',
  qE: 'envelopeArea_m2',
  qF: 'floorArea_m2',
  qT: 'lossArea_m2',
} as const

/**
 * Works one home out, with its uncertainty.
 * @param wanted the limited quantity to hold it against
 * @throws InputError naming the file where its target, its figure or its uncertainty is missing
 */
export function workHome({ file, record, altered }: GivenHome, wanted?: TargetQuantity): TestedHome {
  const refuse = (message: string): never => {
    throw new InputError([{ path: file, message }])
  }
  const { evaluation, test } = evaluateWorked(record, { uncertainty: true })
  const { verdict } = evaluation
  const decisive = wanted ?? verdict.target?.quantity
  const criterion = verdict.criteria.find(({ quantity }) => quantity === decisive)
  if (!verdict.target || !criterion)
    return refuse(
      'the test has no target, so there is no limit to compare it with; set the target and evaluate the test again',
    )
  const { quantity, referencePressure_Pa, limit, unit } = criterion
  const decision = test.uncertainty?.decisions.find((one) => one.quantity === quantity)
  if (!decision) return refuse(`the uncertainty of ${quantity} could not be calculated`)
  const field = basisFields[basisOf(quantity) as keyof typeof basisFields]
  if (field === undefined && basisOf(quantity) !== 'q')
    return refuse(`a limit of ${quantity} cannot be calculated for several homes together`)
  const basis = field === undefined ? 1 : record.building[field]
  if (basis === undefined)
    return refuse(`${placeWords(`building.${field ?? ''}`, {})} is missing: add it to the record`)
  return {
    file,
    record,
    ...(altered !== undefined && { altered }),
    ...(record.test.adjoiningSpaces && { adjoiningSpaces: record.test.adjoiningSpaces }),
    outcome: verdict.outcome,
    target: { label: verdict.target.label, quantity, limit, unit, referencePressure_Pa },
    margins: new Map(verdict.criteria.map(({ quantity: of, margin, limit: most }) => [of, margin / most])),
    decision,
    largestFigure: decision.block.value('L'),
    basis,
  }
}
