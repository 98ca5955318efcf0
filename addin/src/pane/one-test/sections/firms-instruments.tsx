import { useState } from 'preact/hooks'
import type { OfferedInstrument, OfferedInstruments } from '../../../service/firms-instruments.js'
import { type Instrument, originPath, withInstrument } from '../library-origin.js'
import type { SectionProps } from '../section.js'

/** Copies a device or gauge of the firm's library into the fields; they can be changed afterwards. */
export function FirmsInstruments({ store, state }: SectionProps) {
  const [offered, setOffered] = useState<OfferedInstruments>()
  const ask = async (): Promise<void> => {
    const taken = await store.attempt(async () => {
      const { firmsInstruments } = await import('../../../service/firms-instruments.js')
      return firmsInstruments(new URL(document.baseURI))
    })
    if (taken) setOffered(taken)
  }
  const origins = (['flowDevice', 'pressureGauge'] as const).flatMap((instrument) => {
    const entry = state.entries.fields[originPath(instrument)]
    return entry && 'text' in entry ? [entry.text] : []
  })
  return (
    <div class="fields">
      {offered ? (
        <>
          <Choice
            {...{ store, state }}
            label="Firm’s flow device"
            instrument="flowDevice"
            from={offered.devices}
          />
          <Choice
            {...{ store, state }}
            label="Firm’s gauge"
            instrument="pressureGauge"
            from={offered.gauges}
          />
        </>
      ) : (
        <button type="button" onClick={() => void ask()}>
          Choose from the firm’s library
        </button>
      )}
      {origins.length > 0 ? <p class="hint">Copied from the library: {origins.join(', ')}</p> : null}
    </div>
  )
}

interface ChoiceProps extends SectionProps {
  label: string
  instrument: Instrument
  from: readonly OfferedInstrument[]
}

function Choice({ store, state, label, instrument, from }: ChoiceProps) {
  const origin = state.entries.fields[originPath(instrument)]
  const chosen = from.find(
    ({ fields }) => origin && 'text' in origin && fields[originPath(instrument)] === origin.text,
  )
  const take = (id: string): void => {
    const instrumentOf = from.find((one) => one.id === id)
    if (!instrumentOf) return
    store.change((entries) => ({
      ...entries,
      fields: withInstrument(entries.fields, instrument, instrumentOf.fields),
    }))
  }
  return (
    <div class="field">
      <label for={`firms-${instrument}`}>{label}</label>
      <div class="entry">
        <select
          id={`firms-${instrument}`}
          value={chosen?.id ?? ''}
          onChange={({ currentTarget }) => take(currentTarget.value)}
        >
          <option value="">{from.length === 0 ? 'none in the library' : 'by hand'}</option>
          {from.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </div>
    </div>
  )
}
