import { figure } from '../../figures.js'
import type { Section, SectionProps } from '../section.js'

/** After each reading: where the run is heading, what to repeat, and whether it is enough. */
function SoFar({ state: { result } }: SectionProps) {
  const readings = result?.site.readings ?? []
  if (readings.length === 0) return <p class="hint">Appears after the first reading.</p>
  return (
    <>
      {readings.map(({ direction, state }) => (
        <div class="so-far" key={direction} data-direction={direction} data-enough={state.enough}>
          <p>
            <b>{direction}</b>, {state.readings} reading{state.readings === 1 ? '' : 's'}: q50{' '}
            {figure(state.q50_m3_h.value)} m³/h ({figure(state.q50_m3_h.lower)} to{' '}
            {figure(state.q50_m3_h.upper)})
            {state.n50_1_h
              ? `, n50 ${figure(state.n50_1_h.value)} 1/h (${figure(state.n50_1_h.lower)} to ${figure(state.n50_1_h.upper)})`
              : ''}
          </p>
          <p class="hint">
            {state.basis === 'fit'
              ? `exponent ${state.exponent.toFixed(2)}; interval of the fit scatter only`
              : `exponent ${state.exponent} assumed; interval for exponents from 0.55 to 0.75`}
            {state.densityAssumed ? '; densities taken as equal' : ''}
          </p>
          <p class={state.enough ? 'enough' : 'hint'}>{state.enoughWhy}</p>
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

export const soFarSection: Section = {
  id: 'so-far',
  title: 'Readings so far',
  fold: 'open',
  summary: ({ result }) =>
    (result?.site.readings ?? [])
      .map(({ state }) => (state.enough ? 'enough' : 'not yet enough'))
      .join(' · '),
  Body: SoFar,
}
