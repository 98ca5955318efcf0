import type { TestRecord } from '@draughtbook/shared-calc'
import { seeded } from './seeded'

type Stage = NonNullable<TestRecord['test']['stage']>

export interface Invented {
  readonly site?: string
  readonly plot?: string
  readonly stage?: Stage
  readonly date?: string
  readonly id?: string
  readonly tester?: string
  readonly client?: string
  /** Leakage at 50 Pa per volume aimed at, 1/h. */
  readonly n50?: number
  readonly exponent?: number
  readonly volume?: number
}

const SITES = ['Invented Green', 'Invented Quay', 'Invented Rise']
const TESTERS = ['R. Example', 'S. Sample']
const FIRST_SET = {
  gauge: { serial: 'INV-G-1', calibrationDue: '2027-03-01' },
  device: { serial: 'INV-F-1', calibrationDue: '2026-11-15' },
}
/** Instruments of each tester. */
const SETS = [
  FIRST_SET,
  {
    gauge: { serial: 'INV-G-2', calibrationDue: '2026-12-01' },
    device: { serial: 'INV-F-2', calibrationDue: '2027-05-20' },
  },
]
const CLIENTS = ['Sample Builder (invented)', 'Example Homes (invented)']
const PRESSURES = [68, 60, 52, 45, 37, 30, 22, 15]

/** An invented test, the same for the same seed: house, people, instruments and readings are made up. */
export function inventedRecord(seed: number, wish: Invented = {}): TestRecord {
  const random = seeded(seed)
  const round = (value: number, places: number) => Number(value.toFixed(places))
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T
  const volume = wish.volume ?? round(180 + 200 * random(), 1)
  const n50 = wish.n50 ?? 0.35 + 0.5 * random()
  const exponent = wish.exponent ?? 0.6 + 0.1 * random()
  const coefficient = (n50 * volume) / 50 ** exponent
  const readings = (side: 1 | -1) =>
    PRESSURES.map((pressure) => ({
      pressure_Pa: round(side * pressure - 0.4, 1),
      flow_m3_h: round(coefficient * pressure ** exponent * (1 + 0.006 * (random() - 0.5)), 1),
    }))
  const zeroFlow = () => Array.from({ length: 12 }, () => round(-0.4 + 0.4 * (random() - 0.5), 1))
  const day = 1 + Math.floor(random() * 28)
  const run = (direction: 'depressurisation' | 'pressurisation') => ({
    direction,
    averagingTime_s: 30,
    zeroFlowBefore_Pa: zeroFlow(),
    zeroFlowAfter_Pa: zeroFlow(),
    readings: readings(direction === 'pressurisation' ? 1 : -1),
  })
  const tester = wish.tester ?? pick(TESTERS)
  const set = SETS[TESTERS.indexOf(tester)] ?? FIRST_SET
  return {
    format: 'draughtbook/record@1',
    building: {
      name: wish.plot ?? `Plot ${seed}`,
      site: wish.site ?? pick(SITES),
      volume_m3: volume,
      volumeBasis: 'net',
      envelopeArea_m2: round(volume * 1.25, 1),
      floorArea_m2: round(volume / 2.5, 1),
      height_m: 5.4,
    },
    test: {
      id: wish.id ?? `INV-${String(seed).padStart(5, '0')}`,
      date: wish.date ?? `2026-10-${String(day).padStart(2, '0')}`,
      stage: wish.stage ?? pick(['fabric', 'after services', 'acceptance'] as const),
      tester,
      organisation: 'Sample Test Office (invented)',
      client: wish.client ?? pick(CLIENTS),
      method: 'iso-9972:2015',
      preparation: 'method 1',
      notes: 'Invented data.',
    },
    conditions: {
      indoorTemperature_C: round(17 + 5 * random(), 1),
      outdoorTemperature_C: round(4 + 10 * random(), 1),
      barometricPressure_Pa: Math.round(99500 + 2500 * random()),
      indoorRelativeHumidity: 0.45,
      outdoorRelativeHumidity: 0.75,
      windSpeed_m_s: round(3.2 * random(), 1),
      windAt: 'ground',
    },
    pressureGauge: set.gauge,
    flowDevice: {
      ...set.device,
      referenceDensity_kg_m3: 1.2041,
      ranges: [{ label: 'only', minimumFlow_m3_h: 5, maximumFlow_m3_h: 5000 }],
    },
    runs: [run('depressurisation'), run('pressurisation')],
    target: { preset: 'passive-house-new' },
  }
}
