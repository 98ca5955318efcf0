import { counted, type RunningEstimate, runDirections } from '@draughtbook/shared-calc'
import { figure, span, withMinus } from '../../figures.js'
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
      {result?.estimates.map((estimate) => (
        <Estimate key={estimate.direction} estimate={estimate} />
      ))}
      {readings.map(({ direction, state }) => (
        <div class="so-far" key={direction} data-direction={direction} data-enough={state.enough}>
          <p>
            <b>{titled(direction)}</b>, {counted(state.readings, 'reading')}: q50{' '}
            {figure(state.q50_m3_h.value)} m³/h ({span(state.q50_m3_h.lower, state.q50_m3_h.upper)})
            {state.n50_1_h
              ? `, n50 ${figure(state.n50_1_h.value)} 1/h (${span(state.n50_1_h.lower, state.n50_1_h.upper)})`
              : ''}
          </p>
          <p class="hint">
            {state.basis === 'fit'
              ? `exponent ${state.exponent.toFixed(2)}; interval of the fit scatter only`
              : `exponent ${state.exponent} assumed; interval for exponents from 0.55 to 0.75`}
            {state.densityAssumed ? '; densities taken as equal' : ''}
          </p>
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

function Estimate({ estimate }: { estimate: RunningEstimate }) {
  const { direction, readings, assumedExponent, densityAssumed, n50_1_h, qE50_m3_h_m2, q50_m3_h } = estimate
  const main =
    n50_1_h !== undefined
      ? `n50 ≈ ${figure(n50_1_h, 2)} 1/h`
      : qE50_m3_h_m2 !== undefined
        ? `qE50 ≈ ${figure(qE50_m3_h_m2, 2)} m³/(h·m²)`
        : `q50 ≈ ${figure(q50_m3_h, 2)} m³/h`
  return (
    <div class="estimate" role="status">
      <p>
        <b>Running estimate: {main}</b>
      </p>
      <p>
        {titled(direction)}, {counted(readings, 'reading')}, exponent {assumedExponent} assumed
        {densityAssumed ? ', temperatures not yet entered' : ''}. Not a result.
      </p>
    </div>
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
