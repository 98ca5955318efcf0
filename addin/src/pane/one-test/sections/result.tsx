import {
  curveFigures,
  type Evaluation,
  type Figure,
  type FigureDefinition,
  judgedTexts,
  limitedName,
  reportedResults,
  unitText,
} from '@draughtbook/shared-calc'
import type { ComponentChildren } from 'preact'
import { labelOf } from '../../fields.js'
import { figure, span } from '../../figures.js'
import type { Section, SectionProps } from '../section.js'
import { standingOf } from '../standing.js'

function Result({ state }: SectionProps) {
  const { evaluation, result } = state
  const { stage, missing } = standingOf(state)
  if (!evaluation) return <Needed {...(result ? { result } : {})} />
  return (
    <>
      <Verdict
        evaluation={evaluation}
        unusable={result?.unusable === true}
        {...(stage === 'under way' && { toCome: missing.map(({ label }) => label) })}
      />
      <Figures evaluation={evaluation} />
    </>
  )
}

interface VerdictProps {
  evaluation: Evaluation
  /** Some entry had to be left out. */
  unusable: boolean
  /** What is missing where nothing else is wrong. */
  toCome?: readonly string[]
}

/** What the line at the top has no room for: every limit, what is left to seal, why the test is not valid. */
function Verdict({ evaluation: { verdict }, unusable, toCome }: VerdictProps) {
  const { outcome, criteria, leakageToSeal_cm2 } = verdict
  return (
    <div class={`verdict ${toCome ? 'under-way' : outcome.replace(' ', '-')}`}>
      {toCome ? (
        <p>Still missing: {toCome.join('; ')}. A workbook written now says that the test is not valid.</p>
      ) : outcome === 'not valid' ? (
        <p>
          {unusable
            ? 'An entry cannot be used, so the results leave it out. See the findings.'
            : 'A finding invalidates the test. The results are shown anyway.'}
        </p>
      ) : null}
      {verdict.target ? <p class="target-name">Target: {verdict.target.label}</p> : null}
      {/* A single limit stands in the line at the top already. */}
      {criteria.length > 1
        ? criteria.map((criterion) => (
            <Criterion key={`${criterion.quantity}${criterion.limit}`} {...criterion} />
          ))
        : criteria.map(({ judged }) => <p key={judged}>Judged: {judgedWords(judged)}</p>)}
      {outcome === 'misses' && leakageToSeal_cm2 ? (
        <p>
          About {figure(leakageToSeal_cm2, 2)} cm² still to seal (one hole of{' '}
          {figure(Math.sqrt(leakageToSeal_cm2), 2)} × {figure(Math.sqrt(leakageToSeal_cm2), 2)} cm)
        </p>
      ) : null}
      {criteria.length === 0 ? <p>Choose a target to get a verdict.</p> : null}
    </div>
  )
}

function Criterion({
  quantity,
  value,
  limit,
  unit,
  within,
  judged,
  margin,
  referencePressure_Pa,
}: Evaluation['verdict']['criteria'][number]) {
  const texts = judgedTexts({ value, limit, margin })
  return (
    <p class="criterion" data-within={within}>
      <span class="shape" aria-hidden="true">
        {within ? '✓' : '✗'}
      </span>
      <b>
        {limitedName(quantity, referencePressure_Pa)} {texts.value} {unitText(unit)}
      </b>
      {` · limit ${texts.limit} ${unitText(unit)} · margin ${texts.margin}`}
      {` · ${judgedWords(judged)}`}
    </p>
  )
}

const judgedWords = (judged: Evaluation['verdict']['criteria'][number]['judged']): string =>
  judged === 'mean' ? 'mean of both directions' : judged

function Figures({ evaluation }: { evaluation: Evaluation }) {
  const { runs, results } = evaluation
  const fitted = runs.filter(({ q50 }) => q50.ci95)
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
          {reportedResults.map((row) => {
            const mean = results[row.key]
            return mean ? (
              <Row key={row.key} row={row} unit={mean.unit} values={runs.map((run) => run[row.key])}>
                <td class="mean">{mean.value.toFixed(row.decimals)}</td>
              </Row>
            ) : null
          })}
          {[curveFigures.airFlowExponent, curveFigures.airLeakageCoefficient].map((row) => (
            <Row key={row.key} row={row} unit={row.unit} values={runs.map((run) => run[row.key])}>
              <td />
            </Row>
          ))}
          {runs.some(({ rSquared }) => rSquared !== undefined) ? (
            <Row
              row={curveFigures.rSquared}
              unit="1"
              values={runs.map(({ rSquared }) => (rSquared === undefined ? undefined : { value: rSquared }))}
            >
              <td />
            </Row>
          ) : null}
        </tbody>
      </table>
      {fitted.length > 0 ? (
        <p class="hint">
          95 % intervals of q50 in m³/h, fit scatter only:{' '}
          {fitted.map(({ direction, q50 }) => `${direction} ${intervalText(q50)}`).join('; ')}
        </p>
      ) : null}
    </section>
  )
}

interface RowProps {
  row: FigureDefinition
  unit: string
  /** One for each run. */
  values: readonly (Pick<Figure, 'value' | 'ci95'> | undefined)[]
  children: ComponentChildren
}

function Row({ row, unit, values, children }: RowProps) {
  return (
    <tr>
      <th scope="row" title={row.name}>
        <ShortName of={row.short} /> <span class="unit">{unitText(unit)}</span>
      </th>
      {values.map((given, i) => (
        <td key={i} title={intervalText(given)}>
          {given ? given.value.toFixed(row.decimals) : '–'}
        </td>
      ))}
      {children}
    </tr>
  )
}

/** C_L as it is printed: what follows the line is an index. */
function ShortName({ of }: { of: string }) {
  const [letters, index] = of.split('_')
  return index === undefined ? (
    of
  ) : (
    <>
      {letters}
      <sub>{index}</sub>
    </>
  )
}

const intervalText = (value: Pick<Figure, 'value' | 'ci95'> | undefined): string =>
  value?.ci95 ? span(...value.ci95) : ''

function Needed({ result }: { result?: NonNullable<SectionProps['state']['result']> }) {
  if (!result) return <p class="hint">Enter the house, the conditions and the readings first.</p>
  return (
    <div class="needed-list">
      <p>Still needed for a result:</p>
      <ul>
        {needs(result).map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </div>
  )
}

/** One line for each need; the same need of many readings is one line. */
function needs({
  problems,
  findings,
  running,
  draft,
}: NonNullable<SectionProps['state']['result']>): string[] {
  const lines = new Map<string, string[]>()
  const { runs = [] } = draft as { runs?: readonly { direction: string }[] }
  const directions = runs.map(({ direction }) => direction)
  const unusable = (path: string): boolean =>
    findings.some(({ rule, where }) => rule === 'unusable-entry' && where.includes(path))
  for (const { path, cell, message, missing } of problems) {
    const name = path === 'runs' ? (running ? 'More readings' : 'Readings') : labelOf(path, directions)
    const reading = /^runs\[\d+\]\.readings\[/.test(path)
    const text = reading
      ? message
      : unusable(path)
        ? `${name}: correct the entry`
        : missing
          ? name
          : `${name}: ${message}`
    lines.set(text, [...(lines.get(text) ?? []), cell ?? (reading ? name : '')])
  }
  return [...lines].map(([text, places]) => {
    const named = places.filter(Boolean)
    if (named.length === 0) return text
    return `${text} (${named.slice(0, 2).join(', ')}${named.length > 2 ? ` and ${named.length - 2} more` : ''})`
  })
}

export const resultSection: Section = {
  id: 'result',
  title: 'Result',
  steps: ['result'],
  fold: 'always',
  Body: Result,
}
