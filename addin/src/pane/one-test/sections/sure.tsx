import { defaultUncertainties, type TestRecord, unitText } from '@draughtbook/shared-calc'
import { useEffect, useState } from 'preact/hooks'
import type { Sure as SureParts } from '../../../calc/sure.js'
import { shareBars } from '../../../chart/share-bars.js'
import { runSimulation } from '../../../worker/run-simulation.js'
import type { SimulationMessage } from '../../../worker/simulation-worker.js'
import type { Field } from '../../fields.js'
import { figure } from '../../figures.js'
import { Fields } from '../../form/fields.js'
import type { Section, SectionProps } from '../section.js'

/**
 * Entries of the budget: each shows the default it has while empty. Shares are fractions, as in the record. A label says
 * that it is an uncertainty: a temperature and its uncertainty must not be called the same.
 */
const sureFields: readonly Field[] = Object.entries(defaultUncertainties).map(
  ([input, { term, value, unit }]) => ({
    path: `uncertainty.${input}`,
    label: input === 'acceptedRisk' ? 'Accepted risk' : `Uncertainty of ${term}`,
    unit: unit !== '1' ? unit : input === 'assumedExponent' ? '' : '(fraction or %)',
    kind: 'number',
    placeholder: String(Number(value.toPrecision(3))),
  }),
)

const DRAWS = 100_000
const BARS_WIDTH = 340

function Sure(props: SectionProps) {
  return (
    <>
      <Shown {...props} />
      <details class="sub">
        <summary>Instrument accuracies</summary>
        <p class="hint">
          u is the standard uncertainty (k = 1). An empty field uses the default shown in grey.
        </p>
        <Fields {...props} fields={sureFields} />
      </details>
    </>
  )
}

/** Budget, decision and further fits of the test, with the check by simulation. */
function Shown({ state: { result } }: SectionProps) {
  const record = result?.record
  const parts = useSure(record)
  const [shown, setShown] = useState('n50')
  if (!record || !parts) return <p class="hint">Appears with the first result.</p>
  const { figures, defaults } = parts.uncertainty
  const chosen = figures.find(({ quantity }) => quantity === shown) ?? figures[0]
  if (!chosen) return null
  return (
    <div class="sure">
      {(parts.decision ?? []).map(({ quantity, words }) => (
        <p key={quantity} class="decision">
          <b>{quantity}</b>: {words}
        </p>
      ))}
      <label class="sure-figure">
        Figure{' '}
        <select value={chosen.quantity} onChange={({ currentTarget }) => setShown(currentTarget.value)}>
          {figures.map(({ quantity, label }) => (
            <option key={label} value={quantity}>
              {label}
            </option>
          ))}
        </select>
      </label>
      <p>
        {figure(chosen.value)} {unitText(chosen.unit)}, 95 % interval {figure(chosen.interval95[0])} to{' '}
        {figure(chosen.interval95[1])}
      </p>
      {/* The bars are our own text, a pure function, with every value escaped. */}
      <div
        dangerouslySetInnerHTML={{
          __html: shareBars(
            chosen.contributions.map(({ name, share, scope }) => ({ label: name, share, scope })),
            BARS_WIDTH,
          ),
        }}
      />
      <details class="sub">
        <summary>All causes</summary>
        <table class="figures">
          <thead>
            <tr>
              <th scope="col">cause</th>
              <th scope="col">standard uncertainty</th>
              <th scope="col">contribution</th>
            </tr>
          </thead>
          <tbody>
            {chosen.contributions.map(({ id, name, standardUncertainty, unit, contribution }) => (
              <tr key={id}>
                <th scope="row">{name}</th>
                <td>
                  {figure(standardUncertainty)} {unit === '1' ? '' : unit}
                </td>
                <td>{(contribution * 100).toFixed(2)} %</td>
              </tr>
            ))}
          </tbody>
        </table>
        <p class="hint">
          Defaults used: {defaults.map(({ term }) => term).join('; ') || 'none'}. The workbook gives the
          source of each.
        </p>
      </details>
      {(parts.fits ?? []).map(({ direction, explanation }) => (
        <p key={direction} class="hint">
          <b>{direction}</b>: {explanation}
        </p>
      ))}
      <Simulation record={record} key={JSON.stringify(record)} />
    </div>
  )
}

/** The budget again, by drawing every input 100,000 times. */
function Simulation({ record }: { record: TestRecord }) {
  const [told, setTold] = useState<SimulationMessage>()
  const [stop, setStop] = useState<() => void>()
  useEffect(() => () => stop?.(), [stop])
  const start = () => {
    setTold({ kind: 'progress', share: 0 })
    const end = runSimulation(record, DRAWS, setTold)
    setStop(() => end)
  }
  if (!told)
    return (
      <button type="button" onClick={start}>
        Check by simulation ({DRAWS.toLocaleString('en-GB')} tests)
      </button>
    )
  if (told.kind === 'failed') return <p role="alert">{told.words}</p>
  if (told.kind === 'progress') return <progress value={told.share} aria-label="Tests simulated" />
  return (
    <ul class="hint" aria-label="By simulation">
      {told.figures.map(({ quantity, interval95, unit }) => (
        <li key={quantity}>
          {quantity}: 95 % of the simulated tests give {figure(interval95[0])} to {figure(interval95[1])}{' '}
          {unitText(unit)}
        </li>
      ))}
    </ul>
  )
}

/** The uncertainty of the record on show; its code is fetched when first needed. */
function useSure(record: TestRecord | undefined): SureParts | undefined {
  const [parts, setParts] = useState<SureParts>()
  useEffect(() => {
    let current = true
    if (record)
      void import('../../../calc/sure.js').then(({ sureOf }) => {
        if (current) setParts(sureOf(record))
      })
    else setParts(undefined)
    return () => {
      current = false
    }
  }, [record])
  return parts
}

export const sureSection: Section = {
  id: 'sure',
  title: 'Uncertainty',
  steps: ['result'],
  holds: ['uncertainty'],
  fold: 'closed',
  Body: Sure,
}
