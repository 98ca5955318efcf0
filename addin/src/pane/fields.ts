import {
  type BuildingPreparation,
  type ResultDefinition,
  results,
  stages,
  targetDirections,
  unitText,
  volumeBases,
  windPlaces,
} from '@draughtbook/shared-calc'
import { type Choices, choicesOf } from './one-test/lists/list-column.js'

/** How a field of the form is asked for. The record's own schema judges what is typed. */
export type Field =
  | {
      path: string
      label: string
      unit?: string
      hint?: string
      needed?: boolean
      /** What is taken while the field is empty. */
      placeholder?: string
      kind: 'number' | 'text' | 'date' | 'long'
    }
  | {
      path: string
      label: string
      hint?: string
      needed?: boolean
      kind: 'choice'
      options: Choices
    }

const number = (
  path: string,
  label: string,
  unit?: string,
  more: { hint?: string; needed?: boolean } = {},
): Field => ({
  path,
  label,
  kind: 'number',
  ...(unit === undefined ? {} : { unit }),
  ...more,
})
const text = (path: string, label: string, more: { hint?: string; needed?: boolean } = {}): Field => ({
  path,
  label,
  kind: 'text',
  ...more,
})
const date = (path: string, label: string, more: { needed?: boolean } = {}): Field => ({
  path,
  label,
  kind: 'date',
  ...more,
})
const choice = (
  path: string,
  label: string,
  options: Choices,
  more: { hint?: string; needed?: boolean } = {},
): Field => ({ path, label, kind: 'choice', options, ...more })

/** Where the wind was, or will be, measured. */
export const windChoices = choicesOf(windPlaces, {
  ground: 'near the ground',
  meteorological: 'weather station',
})

export const buildingFields: readonly Field[] = [
  text('building.name', 'Building', { needed: true }),
  text('building.site', 'Site'),
  text('building.address', 'Address'),
  number('building.volume_m3', 'Internal volume', 'm³', { needed: true }),
  choice(
    'building.volumeBasis',
    'Volume basis',
    choicesOf(volumeBases, {
      net: 'net, room by room',
      'overall internal': 'overall internal dimensions',
    }),
  ),
  number('building.volumeUncertainty_m3', 'Volume uncertainty', 'm³', { hint: 'standard uncertainty' }),
  number('building.envelopeArea_m2', 'Envelope area', 'm²'),
  number('building.floorArea_m2', 'Floor area', 'm²'),
  number('building.height_m', 'Building height', 'm'),
  number('building.altitude_m', 'Altitude', 'm'),
  text('building.largeBuilding', 'Why 50 Pa was not reached', { hint: 'only where 50 Pa cannot be reached' }),
]

export const testFields: readonly Field[] = [
  date('test.date', 'Test date', { needed: true }),
  text('test.id', 'Test number'),
  choice('test.stage', 'Stage', choicesOf(stages)),
  choice(
    'test.preparation',
    'Preparation',
    choicesOf(['method 1', 'method 2', 'method 3'] satisfies BuildingPreparation[], {
      'method 1': 'method 1, building in use',
      'method 2': 'method 2, building envelope',
      'method 3': 'method 3, specific purpose',
    }),
  ),
  text('test.tester', 'Tester'),
  text('test.organisation', 'Organisation'),
  text('test.client', 'Client'),
  { path: 'test.notes', label: 'Notes', kind: 'long' },
]

export const conditionsFields: readonly Field[] = [
  number('conditions.indoorTemperature_C', 'Indoor temperature', '°C', { needed: true }),
  number('conditions.outdoorTemperature_C', 'Outdoor temperature', '°C', { needed: true }),
  number('conditions.barometricPressure_Pa', 'Barometric pressure', 'Pa'),
  number('conditions.indoorRelativeHumidity', 'Indoor humidity', undefined, { hint: '0.45 or 45 %' }),
  number('conditions.outdoorRelativeHumidity', 'Outdoor humidity', undefined, { hint: '0.8 or 80 %' }),
  number('conditions.windSpeed_m_s', 'Wind speed', 'm/s'),
  choice('conditions.windAt', 'Wind measured', windChoices),
  number('conditions.beaufort', 'Wind force', 'Bft'),
]

export const deviceFields: readonly Field[] = [
  text('flowDevice.serial', 'Flow device, serial'),
  date('flowDevice.calibrationDue', 'Calibration due'),
  text('pressureGauge.serial', 'Gauge, serial'),
  date('pressureGauge.calibrationDue', 'Calibration due'),
  number('averagingTime_s', 'Averaging time', 's', { hint: 'of each reading' }),
  number('flowDevice.referenceDensity_kg_m3', 'Reference density', 'kg/m³'),
]

/** One calibrated range; the flow is coefficient · |device pressure| ^ exponent. */
export const rangeFields = (index: number): readonly Field[] => [
  text(`flowDevice.ranges[${index}].label`, 'Range'),
  number(`flowDevice.ranges[${index}].coefficient`, 'Coefficient', 'm³/(h·Paᵐ)'),
  number(`flowDevice.ranges[${index}].exponent`, 'Exponent'),
  number(`flowDevice.ranges[${index}].minimumFlow_m3_h`, 'Lowest flow', 'm³/h'),
  number(`flowDevice.ranges[${index}].maximumFlow_m3_h`, 'Highest flow', 'm³/h'),
  number(`flowDevice.ranges[${index}].minimumPressure_Pa`, 'Lowest device pressure', 'Pa'),
  number(`flowDevice.ranges[${index}].maximumPressure_Pa`, 'Highest device pressure', 'Pa'),
]

const judged = ['n50', 'qE50', 'qF50', 'q50'] as const
const withUnit = ({ key, short, unit, needs }: ResultDefinition) => {
  const per = needs === 'envelopeArea_m2' ? ' envelope' : needs === 'floorArea_m2' ? ' floor' : ''
  return [key, `${short}, ${unitText(unit)}${per}`] as const
}

export const ownTargetFields: readonly Field[] = [
  text('target.label', 'Name of the target'),
  choice('target.quantity', 'Quantity', [
    ...judged.map((key) => withUnit(results[key])),
    ['n_pr', 'n at another pressure'],
    ['qE_pr', 'qE at another pressure'],
    ['qF_pr', 'qF at another pressure'],
    ['q_pr', 'q at another pressure'],
  ]),
  number('target.limit', 'Limit'),
  number('target.referencePressure_Pa', 'Reference pressure', 'Pa', { hint: 'only "at another pressure"' }),
  choice(
    'target.directions',
    'Directions',
    choicesOf(targetDirections, { mean: 'mean of both', each: 'each by itself', any: 'one is enough' }),
  ),
]

const all: readonly Field[] = [
  ...buildingFields,
  ...testFields,
  ...conditionsFields,
  ...deviceFields,
  ...ownTargetFields,
]

/** Parts of a run, by the name of their field. */
const OF_RUN: Readonly<Record<string, string>> = {
  readings: 'readings',
  zeroFlowBefore_Pa: 'zero-flow pressure before',
  zeroFlowAfter_Pa: 'zero-flow pressure after',
  averagingTime_s: 'averaging time',
  flowStatedAt: 'air for which the flows are stated',
  evenness: 'inside pressure comparisons',
}

function runLabel(path: string, directions: readonly string[]): string | undefined {
  const [, run, part = '', index] = /^runs\[(\d+)\](?:\.(\w+)(?:\[(\d+)\])?)?/.exec(path) ?? []
  if (run === undefined) return undefined
  const direction = directions[Number(run)] ?? `run ${Number(run) + 1}`
  if (part === 'readings' && index !== undefined) return `${direction}, reading ${Number(index) + 1}`
  return OF_RUN[part] === undefined ? direction : `${direction}, ${OF_RUN[part]}`
}

/**
 * A field's label by its path in the record, for findings.
 * @param directions of the record's runs, in their order
 */
export function labelOf(path: string, directions: readonly string[] = []): string {
  const found = all.find((field) => field.path === path)
  if (found) return found.label
  const range = /^flowDevice\.ranges\[(\d+)\]/.exec(path)
  if (range) return `device range ${Number(range[1]) + 1}`
  const ofRun = runLabel(path, directions)
  if (ofRun !== undefined) return ofRun
  const words: Record<string, string> = {
    flowDevice: path.startsWith('flowDevice.ranges') ? 'calibrated ranges of the flow device' : 'flow device',
    pressureGauge: 'pressure gauge',
    thermometer: 'thermometer',
    runs: 'readings',
    target: 'target',
    conditions: 'conditions',
    building: 'building',
    test: path === 'test.openings' ? 'openings' : 'test details',
    takeOff: 'take-off',
    plan: 'plan',
    preparation: 'cautions',
    leaks: 'leak log',
    uncertainty: 'instrument accuracies',
  }
  return words[path.split(/[.[]/)[0] ?? ''] ?? path
}
