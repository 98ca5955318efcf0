import type { Evaluation } from '@draughtbook/shared-calc'

const digits = (value: number): string => String(Number(value.toPrecision(4)))

/** How sure: the decision in words, then each figure with its interval and the three largest contributions. */
export function uncertaintyText({ uncertainty, decision }: Evaluation): string {
  const decisions = (decision ?? []).map(({ quantity, words }) => `${quantity}: ${words}`)
  const figures = (uncertainty?.figures ?? []).map(({ label, value, unit, interval95, contributions }) => {
    const largest = [...contributions]
      .sort((a, b) => b.share - a.share)
      .slice(0, 3)
      .map(({ name, share }) => `${name} ${Math.round(share * 100)} %`)
    return `${label}: ${digits(value)} ${unit}, 95 % from ${digits(interval95[0])} to ${digits(interval95[1])} (${largest.join(', ')})`
  })
  return ['Uncertainty', ...decisions, ...figures].join('\n  ')
}
