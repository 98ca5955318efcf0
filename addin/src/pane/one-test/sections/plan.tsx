import { dayInWords, type PlanResult, withMinus } from '@draughtbook/shared-calc'
import { useState } from 'preact/hooks'
import type { Field } from '../../fields.js'
import { Fields } from '../../form/fields.js'
import { ListRows } from '../../form/list-rows.js'
import type { Section, SectionProps } from '../section.js'

const planFields: readonly Field[] = [
  { path: 'plan.zeroFlowPressure_Pa', label: 'Zero-flow pressure', unit: 'Pa', kind: 'number' },
  { path: 'plan.forecast.indoorTemperature_C', label: 'Indoors, expected', unit: '°C', kind: 'number' },
  { path: 'plan.forecast.outdoorTemperature_C', label: 'Outdoors, forecast', unit: '°C', kind: 'number' },
  {
    path: 'plan.forecast.windSpeed_m_s',
    label: 'Wind, forecast',
    unit: 'm/s',
    kind: 'number',
    hint: 'as forecast for a weather station, 10 m above ground',
  },
]

/** Pressures to set, expected flows, suitable devices, the weather; and the plan as a sheet for the site. */
function PlanBody(props: SectionProps) {
  const site = props.state.result?.site
  return (
    <>
      <p class="hint">For {dayOf(props) ?? 'the test date, which is not entered yet'}.</p>
      <Fields {...props} fields={planFields} />
      <FirmsEquipment {...props} />
      <ListRows {...props} list="plan.devices" noun="Device" />
      <ListRows {...props} list="plan.gauges" noun="Gauge" />
      {site?.plan ? (
        <>
          <Planned plan={site.plan.result} />
          <TakeAlong {...props} />
        </>
      ) : (
        <p class="hint">
          {site && site.planProblems.length > 0
            ? `For a plan: ${site.planProblems.map(({ message }) => message).join('; ')}`
            : 'Enter building, method and target for a plan.'}
        </p>
      )}
    </>
  )
}

/** The day of the plan is that of the test: asked once. */
function dayOf({ state: { result } }: SectionProps): string | undefined {
  const day =
    result?.site.plan?.request.plan.day ?? (result?.draft.test as { date?: unknown } | undefined)?.date
  return typeof day === 'string' ? dayInWords(day) : undefined
}

/** Puts the firm's devices and gauges in, as rows that can be changed. */
function FirmsEquipment({ store }: SectionProps) {
  const take = async (): Promise<void> => {
    const taken = await store.attempt(async () => {
      const { firmsEquipment } = await import('../../../service/firms-equipment.js')
      return firmsEquipment(new URL(document.baseURI))
    })
    if (taken)
      store.change((entries) => ({
        ...entries,
        lists: { ...entries.lists, 'plan.devices': taken.devices, 'plan.gauges': taken.gauges },
      }))
  }
  return (
    <button type="button" onClick={() => void take()}>
      Use the firm’s devices and gauges
    </button>
  )
}

function Planned({ plan }: { plan: PlanResult }) {
  const { runs, devices, findings, allowedLeakage, stackPressure_Pa, chosenDevice } = plan
  return (
    <div class="plan-result">
      {allowedLeakage ? (
        <p>
          The building just meets the target with{' '}
          <b>
            {allowedLeakage.flow_m3_h.toFixed(0)} m³/h at {allowedLeakage.referencePressure_Pa} Pa
          </b>
          .
        </p>
      ) : null}
      {runs.map(({ direction, readings }) => (
        <section class="table-room" key={direction} aria-label={`Pressures to set, ${direction}`}>
          <table class="figures">
            <thead>
              <tr>
                <th scope="col">{direction === 'depressurisation' ? 'depress.' : 'press.'}, Pa</th>
                <th scope="col">gauge</th>
                <th scope="col">m³/h at n 0.55</th>
                <th scope="col">0.65</th>
                <th scope="col">0.75</th>
                {devices.length > 0 ? <th scope="col">range</th> : null}
              </tr>
            </thead>
            <tbody>
              {readings.map((reading) => (
                <tr key={reading.pressureDifference_Pa} class={reading.proposed ? '' : 'out-of-reach'}>
                  <th scope="row">{reading.pressureDifference_Pa.toFixed(0)}</th>
                  <td>{withMinus(reading.gaugePressure_Pa.toFixed(1))}</td>
                  {[0, 1, 2].map((i) => (
                    <td key={i}>{reading.expectedFlows_m3_h[i]?.flow.toFixed(0) ?? '–'}</td>
                  ))}
                  {devices.length > 0 ? (
                    <td>{reading.proposed ? reading.ranges.join(' or ') : 'out of reach'}</td>
                  ) : null}
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      ))}
      {devices.map(({ name, inWords }) => (
        <p class="hint" key={name}>
          <b>{name === chosenDevice ? `${name} (chosen)` : name}</b>: {inWords.join(' ')}
        </p>
      ))}
      {stackPressure_Pa === undefined ? null : (
        <p class="hint">
          Expected stack pressure: {withMinus(stackPressure_Pa.toFixed(1))} Pa over the height.
        </p>
      )}
      <ul class="findings">
        {findings.map(({ rule, severity, message }) => (
          <li key={`${rule}${message}`} class={severity} data-plan-rule={rule}>
            <p class="said">
              <b>{severity}</b> {message}
            </p>
          </li>
        ))}
      </ul>
    </div>
  )
}

function TakeAlong({ store, state }: SectionProps) {
  const [busy, setBusy] = useState(false)
  const request = state.result?.site.plan?.request
  const write = async (): Promise<void> => {
    if (!request) return
    setBusy(true)
    await store.attempt(async () => {
      const { runJob } = await import('../../../worker/run-job.js')
      const done = await runJob({ kind: 'plan', request })
      if (done.kind === 'plan-written') await store.host.download(done.bytes, 'test-plan.xlsx')
    })
    setBusy(false)
  }
  return (
    <button type="button" disabled={busy || !request} onClick={() => void write()}>
      Download the plan for the site
    </button>
  )
}

export const planSection: Section = {
  id: 'plan',
  title: 'Plan',
  steps: ['before'],
  holds: ['plan'],
  fold: 'closed',
  summary: ({ result }) => {
    const allowed = result?.site.plan?.result.allowedLeakage
    return allowed ? `at most ${allowed.flow_m3_h.toFixed(0)} m³/h at ${allowed.referencePressure_Pa} Pa` : ''
  },
  Body: PlanBody,
}
