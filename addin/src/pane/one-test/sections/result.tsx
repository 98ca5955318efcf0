import type { Evaluation, Figure, Problem, RunningEstimate } from '@draughtbook/shared-calc'
import { labelOf } from '../../fields.js'
import { figure, signed, unitText, withMinus } from '../../figures.js'
import type { Section, SectionProps } from '../section.js'

const OUTCOMES: Record<Evaluation['verdict']['outcome'], string> = {
  meets: 'Meets the target',
  misses: 'Misses the target',
  'not valid': 'Not valid',
  'no target': 'No target set',
}
const SHAPES: Record<Evaluation['verdict']['outcome'], string> = {
  meets: '✓',
  misses: '✗',
  'not valid': '!',
  'no target': '–',
}

function Result({ state: { evaluation, result } }: SectionProps) {
  // Once there is a result, only pressures still worth setting are worth a line.
  const steps = (result?.next ?? []).filter(({ pressure_Pa }) => pressure_Pa !== undefined || !evaluation)
  return (
    <>
      {evaluation ? (
        <>
          <Verdict evaluation={evaluation} unusable={result?.unusable === true} />
          <Figures evaluation={evaluation} />
        </>
      ) : null}
      {result?.estimates.map((estimate) => (
        <Estimate key={estimate.direction} estimate={estimate} />
      ))}
      {steps.map(({ direction, pressure_Pa, why }) => (
        <p class="next" key={direction}>
          {pressure_Pa === undefined ? (
            <>
              <b>Pressures cover the range</b> ({direction}): {why}
            </>
          ) : (
            <>
              <b>Next: about {withMinus(String(pressure_Pa))} Pa</b> ({direction}): {why}
            </>
          )}
        </p>
      ))}
      {evaluation ? null : <Needed {...(result ? { result } : {})} />}
    </>
  )
}

interface VerdictProps {
  evaluation: Evaluation
  /** Some entry had to be left out. */
  unusable: boolean
}

function Verdict({ evaluation: { verdict, results }, unusable }: VerdictProps) {
  const { outcome, target, value, margin, leakageToSeal_cm2 } = verdict
  const main = verdict.criteria[0]
  return (
    <div class={`verdict ${outcome.replace(' ', '-')}`} role="status" data-outcome={outcome}>
      <p class="outcome">
        <span class="shape" aria-hidden="true">
          {SHAPES[outcome]}
        </span>
        {OUTCOMES[outcome]}
      </p>
      {target && main && value !== undefined && margin !== undefined ? (
        <>
          <p class="against">
            <b>
              {target.quantity} {figure(value)} {unitText(main.unit)}
            </b>{' '}
            against {main.limit} · margin {signed(margin, decimals(main.limit))} · {target.label}
          </p>
          {outcome === 'not valid' ? (
            <p class="against">
              {unusable
                ? 'An entry cannot be used: see the findings. The figures leave it out.'
                : 'A finding invalidates the test; the figures are shown all the same.'}
            </p>
          ) : null}
          {outcome === 'misses' && leakageToSeal_cm2 ? (
            <p class="against">Still to seal: about {figure(leakageToSeal_cm2, 2)} cm² of sharp-edged hole</p>
          ) : null}
        </>
      ) : (
        <p class="against">q50 {figure(results.q50.value)} m³/h. Choose a target to get a verdict.</p>
      )}
    </div>
  )
}

const decimals = (limit: number): number => Math.max(2, (String(limit).split('.')[1]?.length ?? 0) + 1)

const ROWS = [
  ['n50', 'n50'],
  ['q50', 'q50'],
  ['qE50', 'qE50 (envelope)'],
  ['qF50', 'qF50 (floor)'],
  ['ela4', 'leakage area, 4 Pa'],
  ['ela10', 'leakage area, 10 Pa'],
] as const

function Figures({ evaluation }: { evaluation: Evaluation }) {
  const { runs, results } = evaluation
  return (
    <section class="table-room" aria-label="Results">
      <table class="figures">
        <thead>
          <tr>
            <th scope="col">quantity</th>
            {runs.map(({ direction }) => (
              <th scope="col" key={direction}>
                {direction === 'depressurisation' ? 'depress.' : 'press.'}
              </th>
            ))}
            <th scope="col">{runs.length > 1 ? 'mean' : 'result'}</th>
          </tr>
        </thead>
        <tbody>
          {ROWS.map(([key, label]) => {
            const mean = results[key]
            return mean ? (
              <tr key={key}>
                <th scope="row">
                  {label} <span class="unit">{unitText(mean.unit)}</span>
                </th>
                {runs.map((run) => (
                  <td key={run.direction} title={intervalText(run[key])}>
                    {run[key] ? figure(run[key].value) : '–'}
                  </td>
                ))}
                <td class="mean">{figure(mean.value)}</td>
              </tr>
            ) : null
          })}
          <tr>
            <th scope="row">exponent n</th>
            {runs.map(({ direction, airFlowExponent }) => (
              <td key={direction} title={intervalText(airFlowExponent)}>
                {airFlowExponent.value.toFixed(3)}
              </td>
            ))}
            <td />
          </tr>
          <tr>
            <th scope="row">
              coefficient C_L <span class="unit">m³/(h·Paⁿ)</span>
            </th>
            {runs.map(({ direction, airLeakageCoefficient }) => (
              <td key={direction} title={intervalText(airLeakageCoefficient)}>
                {figure(airLeakageCoefficient.value, 4)}
              </td>
            ))}
            <td />
          </tr>
          <tr>
            <th scope="row">r²</th>
            {runs.map(({ direction, rSquared }) => (
              <td key={direction}>{rSquared?.toFixed(5) ?? '–'}</td>
            ))}
            <td />
          </tr>
        </tbody>
      </table>
      <p class="hint">
        95 % intervals of q50, fit scatter only:{' '}
        {runs.map(({ direction, q50 }) => `${direction} ${intervalText(q50)}`).join('; ')}
      </p>
    </section>
  )
}

const intervalText = (value: Figure | undefined): string =>
  value?.ci95 ? `${figure(value.ci95[0])} to ${figure(value.ci95[1])}` : ''

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
        {direction}, {readings} reading{readings === 1 ? '' : 's'}, exponent {assumedExponent} assumed
        {densityAssumed ? ', temperatures not yet entered' : ''}. Not a result.
      </p>
    </div>
  )
}

function Needed({ result }: { result?: NonNullable<SectionProps['state']['result']> }) {
  if (!result) return <p class="hint">Pick readings from a test log, or start with the forms below.</p>
  return (
    <div class="needed-list">
      <p>Still needed for a result:</p>
      <ul>
        {needs(result.problems).map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </div>
  )
}

/** One line for each need; the same need of many readings is one line. */
function needs(problems: readonly Problem[]): string[] {
  const lines = new Map<string, string[]>()
  for (const { path, cell, message } of problems) {
    const name = labelOf(path)
    const reading = /^run \d, reading /.test(name)
    const text = reading ? message : isMissing(message) ? name : `${name}: ${message}`
    lines.set(text, [...(lines.get(text) ?? []), cell ?? (reading ? name : '')])
  }
  return [...lines].map(([text, places]) => {
    const named = places.filter(Boolean)
    if (named.length === 0) return text
    return `${text} (${named.slice(0, 2).join(', ')}${named.length > 2 ? ` and ${named.length - 2} more` : ''})`
  })
}

const isMissing = (message: string): boolean => /missing|has no run$/.test(message)

export const resultSection: Section = { id: 'result', title: 'Result', fold: 'always', Body: Result }
