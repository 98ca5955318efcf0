import type { Evaluation } from '@draughtbook/shared-calc'
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
