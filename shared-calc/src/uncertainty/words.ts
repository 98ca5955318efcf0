import type { Outcome } from '../contract/record/index.js'

/** A probability in words, never rounded up to certainty. */
export function sureness(probability: number): string {
  const percent = Math.floor(probability * 100)
  if (probability > 0.99) return 'more than 99 % sure'
  return `${percent} % sure`
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
  const together =
    guarded.allLimits === undefined ? '' : `; ${sureness(guarded.allLimits)} that all limits are met`
  const risk = `${Number((guarded.acceptedRisk * 100).toPrecision(2))} %`
  if (outcome === 'not valid')
    return 'not valid: what invalidates a test is not covered by its uncertainty, so nothing is said about the target'
  if (!within) {
    const sure = sureness(1 - probability)
    return probability > 0.5 ? `misses; only ${sure}` : `misses; ${sure}`
  }
  if (guarded.within) return `meets; ${sureness(probability)}${together}`
  return `meets; only ${sureness(probability)}: to accept with a risk of ${risk} at most, the value must not exceed ${guarded.acceptanceLimit}${together}`
}
