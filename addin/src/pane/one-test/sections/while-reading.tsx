import { counted, runDirections, withMinus } from '@draughtbook/shared-calc'
import { figure, span } from '../../figures.js'
import { AveragingTimer } from '../averaging-timer.js'
import type { Section, SectionProps } from '../section.js'

/** What the tester needs next, big enough to be read from the fan: pressure, seconds left, what to repeat. */
function WhileReading({ state: { result, evaluation, entries } }: SectionProps) {
  const steps = (result?.next ?? []).filter(({ pressure_Pa }) => pressure_Pa !== undefined || !evaluation)
  const readings = result?.site.readings ?? []
  // One direction is done, and the test is not valid without the other.
  const other =
    result?.findings.some(({ rule }) => /^(one-direction|both-directions)/.test(rule)) &&
    evaluation?.verdict.outcome === 'not valid'
      ? runDirections.find((one) => readings.every(({ direction }) => direction !== one))
      : undefined
  return (
    <>
      <div class="now">
        <div class="next-steps">
          {steps.map(({ direction, pressure_Pa, why }) => (
            <p class="next" key={direction}>
              {pressure_Pa === undefined ? (
                <b>Pressures cover the range</b>
              ) : (
                <>
                  <span class="tell">Next: about</span>{' '}
                  <b class="next-pressure">{withMinus(String(pressure_Pa))} Pa</b>
                </>
              )}
              <span class="why">
                {titled(direction)}. {why}
              </span>
            </p>
          ))}
          {steps.length === 0 ? (
            <p class="hint">
              {readings.length === 0
                ? 'The next pressure to set appears here.'
                : 'The pressures cover the range.'}
            </p>
          ) : null}
          {steps.length === 0 && other ? (
            <p class="next">
              <span class="tell">Next:</span> <b class="next-direction">{other}</b>
              <span class="why">{evaluation?.verdict.target ? 'The target needs both directions.' : ''}</span>
            </p>
          ) : null}
        </div>
        <AveragingTimer entries={entries} />
      </div>
      {readings.map(({ direction, state }) => (
        <div
          class={state.basis === 'fit' ? 'so-far' : 'so-far estimate'}
          key={direction}
          data-direction={direction}
          data-enough={state.enough}
        >
          <SoFar direction={direction} state={state} />
          {steps.some(({ why }) => why === state.enoughWhy) ? null : (
            <p class={state.enough ? 'enough' : 'hint'}>{state.enoughWhy}</p>
          )}
          {state.findings.map(({ rule, message, remedy }) => (
            <p class="repeat" key={message} data-reading-rule={rule}>
              <b>{message}</b> {remedy}
            </p>
          ))}
        </div>
      ))}
    </>
  )
}

const titled = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1)

const intervalWords = {
  'whole budget': '95 % interval with instruments and weather',
  none: 'no interval: the readings lie too near to zero',
} as const

type Readings = NonNullable<SectionProps['state']['result']>['site']['readings'][number]

/** What the readings of a direction come to: too few to fit a line, an estimate. */
function SoFar({ direction, state }: Readings) {
  const { basis, interval, exponent, readings, densityAssumed, n50_1_h, q50_m3_h } = state
  const between = ({ lower, upper }: typeof q50_m3_h) =>
    interval === 'none' ? '' : ` (${span(lower, upper)})`
  const figures = [
    n50_1_h && `n50 ≈ ${figure(n50_1_h.value)} 1/h${between(n50_1_h)}`,
    `q50 ≈ ${figure(q50_m3_h.value)} m³/h${between(q50_m3_h)}`,
  ]
  const shown = figures.filter(Boolean).join(', ')
  const densities = densityAssumed ? '; densities taken as equal' : ''
  if (basis === 'fit')
    return (
      <>
        <p>
          <b>{titled(direction)}</b>, {counted(readings, 'reading')}: {shown}
        </p>
        <p class="hint">
          exponent {exponent.toFixed(2)}; {intervalWords[interval]}
          {densities}
        </p>
      </>
    )
  return (
    <>
      <p>
        <b>Running estimate: {shown}</b>
      </p>
      <p>
        {titled(direction)}, {counted(readings, 'reading')}, exponent {exponent} assumed;{' '}
        {intervalWords[interval]}
        {densities}. Not a result.
      </p>
    </>
  )
}

export const whileReadingSection: Section = {
  id: 'while-reading',
  title: 'While reading',
  steps: ['site'],
  fold: 'open',
  summary: ({ result }) => {
    const runs = result?.site.readings ?? []
    const few = runs.filter(({ state }) => !state.enough)
    if (runs.length === 0) return ''
    return few.length === 0
      ? 'enough readings'
      : `more readings needed: ${few.map(({ direction }) => direction).join(', ')}`
  },
  Body: WhileReading,
}
