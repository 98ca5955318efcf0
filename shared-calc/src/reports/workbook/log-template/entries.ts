import { stages, volumeBases } from '../../../contract/record/index.js'
import { methods } from '../../../methods/index.js'
import { targetPresets } from '../../../targets/index.js'

/** What may be typed into an entry cell. */
export type Check =
  | { readonly kind: 'text' }
  | { readonly kind: 'day' }
  | { readonly kind: 'number'; readonly from: number; readonly to: number }
  | { readonly kind: 'words'; readonly words: Readonly<Record<string, string>> }

/** One value of the form, and the field of the record it becomes. */
export interface Entry {
  readonly label: string
  readonly path: string
  readonly unit?: string
  readonly check: Check
  readonly needed?: boolean
}

export interface Section {
  readonly title: string
  readonly entries: readonly Entry[]
}

const text = (label: string, path: string): Entry => ({ label, path, check: { kind: 'text' } })
const day = (label: string, path: string): Entry => ({ label, path, check: { kind: 'day' } })
const words = (label: string, path: string, list: Readonly<Record<string, string>>): Entry => ({
  label,
  path,
  check: { kind: 'words', words: list },
})
const number = (label: string, path: string, unit: string, from: number, to: number): Entry => ({
  label,
  path,
  check: { kind: 'number', from, to },
  ...(unit && { unit }),
})
const needed = (entry: Entry): Entry => ({ ...entry, needed: true })
const same = (...list: string[]) => Object.fromEntries(list.map((word) => [word, word]))

/** The method's cell is filled in beforehand. */
export const METHOD_PATH = 'test.method'

/** Left half of the form. Limits only catch slips of the pen; the rules judge the test. */
export const LEFT: readonly Section[] = [
  {
    title: 'House',
    entries: [
      needed(text('Building', 'building.name')),
      text('Address', 'building.address'),
      needed(number('Internal volume', 'building.volume_m3', 'm³', 1, 1_000_000)),
      words('Volume basis', 'building.volumeBasis', same(...volumeBases)),
      number('Envelope area', 'building.envelopeArea_m2', 'm²', 1, 1_000_000),
      number('Floor area', 'building.floorArea_m2', 'm²', 1, 1_000_000),
      number('Building height', 'building.height_m', 'm', 1, 500),
      number('Altitude of the site', 'building.altitude_m', 'm', -450, 5000),
    ],
  },
  {
    title: 'Conditions',
    entries: [
      needed(number('Indoor temperature', 'conditions.indoorTemperature_C', '°C', -40, 60)),
      needed(number('Outdoor temperature', 'conditions.outdoorTemperature_C', '°C', -60, 60)),
      number('Barometric pressure', 'conditions.barometricPressure_Pa', 'hPa', 500, 1100),
      number('Indoor relative humidity', 'conditions.indoorRelativeHumidity', '%', 0, 100),
      number('Outdoor relative humidity', 'conditions.outdoorRelativeHumidity', '%', 0, 100),
      number('Wind force (Beaufort)', 'conditions.beaufort', '', 0, 12),
    ],
  },
]

/** Right half of the form. */
export const RIGHT: readonly Section[] = [
  {
    title: 'Test',
    entries: [
      needed(day('Date of the test', 'test.date')),
      text('Test number', 'test.id'),
      text('Tester', 'test.tester'),
      text('Organisation', 'test.organisation'),
      needed(words('Method', METHOD_PATH, Object.fromEntries(methods.map(({ title, id }) => [title, id])))),
      words('Preparation', 'test.preparation', same('method 1', 'method 2', 'method 3')),
      words('Stage', 'test.stage', same(...stages)),
      words('Target', 'target.preset', Object.fromEntries(targetPresets.map(({ label, id }) => [label, id]))),
    ],
  },
  {
    title: 'Instruments',
    entries: [
      text('Gauge serial number', 'pressureGauge.serial'),
      day('Gauge calibration due', 'pressureGauge.calibrationDue'),
      text('Device serial number', 'flowDevice.serial'),
      day('Device calibration due', 'flowDevice.calibrationDue'),
      number('Averaging time', 'runs[0].averagingTime_s', 's', 1, 600),
    ],
  },
]
