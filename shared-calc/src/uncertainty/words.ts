import type { Outcome } from '../contract/record/index.js'

/** A probability in per cent, never rounded to certainty. */
export function probabilityText(probability: number): string {
  if (probability > 0.99) return 'more than 99 %'
  if (probability < 0.01) return 'less than 1 %'
  return `${Math.floor(probability * 100)} %`
}

/** What a decision says in plain words; the outcome is the method's own verdict and leads. */
export function decisionWords(
  outcome: Outcome,
  within: boolean,
  probability: number,
  guarded: {
    readonly acceptedRisk: number
    readonly acceptanceLimit: string
    readonly within: boolean
    /** Probability that all limits of the target are met, where it has several. */
    readonly allLimits?: number
  },
): string {
  if (outcome === 'not valid')
    return 'not valid: the uncertainty does not cover faults that invalidate a test'
  const meeting = `probability of meeting the target: ${probabilityText(probability)}`
  if (!within) return `fails; ${meeting}`
  const together =
    guarded.allLimits === undefined ? '' : `; all limits together: ${probabilityText(guarded.allLimits)}`
  if (guarded.within) return `meets; ${meeting}${together}`
  const risk = `${Number((guarded.acceptedRisk * 100).toPrecision(2))} %`
  return `meets; ${meeting}${together}. For a risk of at most ${risk}, the value must not exceed ${guarded.acceptanceLimit}`
}
