import { type Evaluation, unitText } from '@draughtbook/shared-calc'
import { numberText } from './number-text.js'

/** Every step of the working: formula, formula with numbers put in, value. */
export function traceText({ trace }: Evaluation): string {
  let block = ''
  const lines = (trace ?? []).flatMap((step) => {
    const heading = step.block === block ? [] : ['', step.block]
    block = step.block
    const value = Array.isArray(step.value)
      ? step.value.map((one) => numberText(one, 6)).join(', ')
      : numberText(step.value, 6)
    return [
      ...heading,
      `  ${step.symbol} = ${step.expression}`,
      `    = ${step.substituted}`,
      `    = ${value} ${step.unit}  (${step.name}; ${step.source})`,
    ]
  })
  return ['Working', ...lines].join('\n')
}

/** A value to four figures, and the ends of its interval to the same decimals. */
const toFigures = (value: number): ((one: number) => string) => {
  const decimals = Math.min(Math.max(3 - Math.floor(Math.log10(Math.abs(value) || 1)), 0), 9)
  return (one) => one.toFixed(decimals)
}

/** The decision in words, then each figure with its interval and the three largest contributions. */
export function uncertaintyText({ uncertainty, decision }: Evaluation): string {
  const decisions = (decision ?? []).map(({ quantity, words }) => `${quantity}: ${words}`)
  const figures = (uncertainty?.figures ?? []).map(({ label, value, unit, interval95, contributions }) => {
    const largest = [...contributions]
      .sort((a, b) => b.share - a.share)
      .slice(0, 3)
      .map(({ name, share }) => `${name} ${Math.round(share * 100)} %`)
    const digits = toFigures(value)
    return `${label}: ${digits(value)} ${unitText(unit)}, 95 % interval ${digits(interval95[0])} to ${digits(interval95[1])}; largest contributions: ${largest.join('; ')}`
  })
  return ['Uncertainty', ...decisions, ...figures].join('\n  ')
}
