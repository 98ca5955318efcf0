import { type TakeOffResult, type Total, volumeBases } from '@draughtbook/shared-calc'
import { useState } from 'preact/hooks'
import type { Field } from '../../fields.js'
import { Fields } from '../../form/fields.js'
import { ListRows, useRows } from '../../form/list-rows.js'
import { choicesOf } from '../lists/list-column.js'
import type { Section, SectionProps } from '../section.js'
import { SiteFindings } from './findings.js'

const aroundFields: readonly Field[] = [
  { path: 'takeOff.lengthUncertainty_m', label: 'Uncertainty of a length', unit: 'm', kind: 'number' },
  {
    path: 'takeOff.scaleUncertainty',
    label: 'Uncertainty common to all lengths',
    kind: 'number',
    hint: '0.005 for 0.5 %',
  },
  { path: 'takeOff.stated.from', label: 'Totals stated by', kind: 'text', hint: 'drawing, earlier report' },
  { path: 'takeOff.stated.volume_m3', label: 'Stated volume', unit: 'm³', kind: 'number' },
  {
    path: 'takeOff.stated.volumeBasis',
    label: 'Its basis',
    kind: 'choice',
    options: choicesOf(volumeBases),
  },
  { path: 'takeOff.stated.floorArea_m2', label: 'Stated floor area', unit: 'm²', kind: 'number' },
  { path: 'takeOff.stated.envelopeArea_m2', label: 'Stated envelope area', unit: 'm²', kind: 'number' },
]

/** Room by room and element by element; what it comes to can be taken over into the building's fields. */
function Volume(props: SectionProps) {
  const takeOff = props.state.result?.site.takeOff
  return (
    <>
      <p class="hint">
        Room by room: floor area times mean clear height. Internal walls and floors between storeys count in
        the overall internal volume only.
      </p>
      <ListRows
        {...props}
        list="takeOff.spaces"
        noun="Space"
        tell={(i) => (takeOff?.spaces[i] ? `${takeOff.spaces[i].volume.value.toFixed(2)} m³` : '')}
      />
      <FromCells {...props} />
      <h3>Envelope</h3>
      <ListRows {...props} list="takeOff.elements" noun="Element" />
      <h3>Uncertainty, and totals stated on the plan</h3>
      <Fields {...props} fields={aroundFields} />
      {takeOff ? <Totals {...props} takeOff={takeOff} /> : null}
    </>
  )
}

/** Rooms that already stand in the workbook: each row a name with two or three numbers. */
function FromCells(props: SectionProps) {
  const { change } = useRows('takeOff.spaces', props)
  const [leftOut, setLeftOut] = useState<readonly string[]>([])
  const take = async (): Promise<void> => {
    const read = await props.store.attempt(async () => {
      const block = await props.store.host.selection()
      const { spacesFromCells } = await import('../../../calc/spaces-from-cells.js')
      return spacesFromCells(block)
    })
    if (!read) return
    setLeftOut(read.leftOut)
    change((rows) => [...rows, ...read.rows])
  }
  return (
    <>
      <button type="button" onClick={() => void take()}>
        Add the selected rows as spaces
      </button>
      <p class="hint">
        A name, then length, width and height, or floor area and height; units from the headings.
      </p>
      {leftOut.map((words) => (
        <p class="repeat" key={words} role="status">
          Left out: {words}
        </p>
      ))}
    </>
  )
}

function Totals({ takeOff, store, state }: SectionProps & { takeOff: TakeOffResult }) {
  const { netVolume, overallInternalVolume, floorArea, envelopeArea, bases, findings } = takeOff
  const overall = 'overall internal'
  const use = (basis: 'net' | typeof overall): void => {
    const volume = basis === 'net' ? netVolume : overallInternalVolume
    const figures: [string, string | undefined][] = [
      ['building.volume_m3', volume?.value.toFixed(2)],
      ['building.volumeBasis', basis],
      ['building.volumeUncertainty_m3', volume?.standardUncertainty.toFixed(2)],
      ['building.floorArea_m2', floorArea?.value.toFixed(2)],
      ['building.envelopeArea_m2', envelopeArea?.value.toFixed(2)],
    ]
    store.change((entries) => ({
      ...entries,
      fields: {
        ...entries.fields,
        ...Object.fromEntries(
          figures.flatMap(([path, text]) => (text === undefined ? [] : [[path, { text }]])),
        ),
      },
    }))
  }
  return (
    <div class="totals">
      <table class="figures">
        <thead>
          <tr>
            <th scope="col">total</th>
            <th scope="col">value</th>
            <th scope="col">u</th>
          </tr>
        </thead>
        <tbody>
          <Line name="net volume" unit="m³" total={netVolume} />
          <Line name="overall internal volume" unit="m³" total={overallInternalVolume} />
          <Line name="floor area" unit="m²" total={floorArea} />
          <Line name="envelope area" unit="m²" total={envelopeArea} />
        </tbody>
      </table>
      {netVolume ? (
        <button type="button" onClick={() => use('net')}>
          Use the net volume
        </button>
      ) : null}{' '}
      {overallInternalVolume ? (
        <button type="button" onClick={() => use(overall)}>
          Use the overall internal volume
        </button>
      ) : null}
      {bases.map((words) => (
        <p class="hint" key={words}>
          {words}
        </p>
      ))}
      <SiteFindings findings={findings} store={store} state={state} />
    </div>
  )
}

function Line({ name, unit, total }: { name: string; unit: string; total: Total | undefined }) {
  return (
    <tr>
      <th scope="row">
        {name} <span class="unit">{unit}</span>
      </th>
      <td>{total ? total.value.toFixed(2) : 'not in the take-off'}</td>
      <td>{total ? total.standardUncertainty.toFixed(2) : ''}</td>
    </tr>
  )
}

export const volumeSection: Section = {
  id: 'volume',
  title: 'Volume and areas',
  steps: ['before'],
  holds: ['takeOff'],
  fold: 'closed',
  summary: ({ result }) => {
    const volume = result?.site.takeOff?.netVolume
    return volume ? `net ${volume.value.toFixed(1)} m³` : ''
  },
  Body: Volume,
}
