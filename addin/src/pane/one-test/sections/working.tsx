import type { TraceStep } from '@draughtbook/shared-calc'
import { unitText, withMinus } from '@draughtbook/shared-calc'
import type { Section, SectionProps } from '../section.js'

/** Every step with its formula, the numbers put in, its value and its source. */
function Working({ state: { evaluation, result, trace } }: SectionProps) {
  if (!trace) return null
  const steps = evaluation?.trace ?? result?.evaluation?.trace
  if (!steps) return <p class="hint">There is no result yet, so there is no working to show.</p>
  return (
    <div class="working-room">
      <p class="hint">
        Calculation {evaluation?.calculationVersion}, {evaluation?.method}
      </p>
      {blocksOf(steps).map(([title, own]) => (
        <details key={title} class="sub block">
          <summary>{title}</summary>
          <ol>
            {own.map((step) => (
              <li key={step.symbol}>
                <p class="name">
                  {step.name} <b>{step.symbol}</b>
                </p>
                {/* MathML written by the calculation from its own formulas. */}
                <p class="formula" dangerouslySetInnerHTML={{ __html: step.mathml }} />
                <p class="numbers">{step.substituted}</p>
                <p class="value">
                  = <b>{valueText(step.value)}</b> {unitText(step.unit)}
                </p>
                <p class="source">{step.source}</p>
              </li>
            ))}
          </ol>
        </details>
      ))}
    </div>
  )
}

function blocksOf(steps: readonly TraceStep[]): [string, TraceStep[]][] {
  const blocks = new Map<string, TraceStep[]>()
  for (const step of steps) {
    const own = blocks.get(step.block)
    if (own) own.push(step)
    else blocks.set(step.block, [step])
  }
  return [...blocks]
}

const valueText = (value: number | number[]): string =>
  (Array.isArray(value) ? value : [value])
    .map((one) => withMinus(String(Number(one.toPrecision(7)))))
    .join('; ')

export const workingSection: Section = {
  id: 'working',
  title: 'Show the working',
  steps: ['result'],
  fold: 'closed',
  Body: Working,
}
