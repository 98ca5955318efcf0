import { deviceFields, rangeFields } from '../../fields.js'
import { Fold } from '../../fold.js'
import { Fields } from '../../form/fields.js'
import type { Section, SectionProps } from '../section.js'
import { FirmsInstruments } from './firms-instruments.js'

const RANGES = [0, 1, 2, 3, 4, 5]

/** Device and gauge; a range is needed only where the log holds device pressures instead of flows. */
function Device(props: SectionProps) {
  const used = RANGES.filter((index) =>
    Object.keys(props.state.entries.fields).some((path) => path.startsWith(`flowDevice.ranges[${index}].`)),
  )
  const shown = RANGES.slice(0, used.length + 1)
  return (
    <>
      <FirmsInstruments {...props} />
      <Fields {...props} fields={deviceFields} />
      {shown.map((index) => (
        <Fold
          key={index}
          class="sub"
          open={used.includes(index)}
          summary={used.includes(index) ? `Range ${index + 1}` : 'Add a calibrated range'}
        >
          <Fields {...props} fields={rangeFields(index)} />
        </Fold>
      ))}
    </>
  )
}

export const deviceSection: Section = {
  id: 'device',
  title: 'Device',
  steps: ['before'],
  holds: ['flowDevice', 'pressureGauge', 'averagingTime_s'],
  fold: 'closed',
  summary: ({ entries }) => {
    const serial = entries.fields['flowDevice.serial']
    return serial && 'text' in serial ? serial.text : ''
  },
  Body: Device,
}
