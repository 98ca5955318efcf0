export interface ReportGroup {
  readonly title: string
  readonly fields: readonly string[]
}

/**
 * What a test report lists beside readings, results and findings, by heading. Sources: ISO 9972:2015, clause on the test
 * report (value from memory); public checklist for passive house test reports; Swiss directive on airtightness
 * measurements 2022.1 (both read in part).
 */
export const reportItems: readonly ReportGroup[] = [
  {
    title: 'Test',
    fields: [
      'building.name',
      'building.site',
      'building.address',
      'test.id',
      'test.date',
      'test.client',
      'test.organisation',
      'test.tester',
      'test.stage',
      'test.purpose',
      'test.method',
      'test.preparation',
      'test.adjoiningSpaces',
      'test.notes',
    ],
  },
  {
    title: 'Building',
    fields: [
      'building.volume_m3',
      'building.volumeBasis',
      'building.volumeUncertainty_m3',
      'building.envelopeArea_m2',
      'building.lossArea_m2',
      'building.floorArea_m2',
      'building.height_m',
      'building.altitude_m',
    ],
  },
  {
    title: 'Conditions',
    fields: [
      'conditions.indoorTemperature_C',
      'conditions.outdoorTemperature_C',
      'conditions.barometricPressure_Pa',
      'conditions.indoorRelativeHumidity',
      'conditions.outdoorRelativeHumidity',
      'conditions.windSpeed_m_s',
      'conditions.windAt',
      'conditions.beaufort',
    ],
  },
]

/** What else is said about the instruments. */
export const ofInstruments = ['flowDevice.referenceDensity_kg_m3', 'runs[0].averagingTime_s'] as const

/**
 * What public checklists and directives ask a report to say and a record has no field for: it is left to be written in by hand.
 * Sources as above; California Title 24, NA5.5.
 */
export const byHand: readonly string[] = [
  'where the fan stood',
  'temperatures after the test',
  'exposure of the building to wind',
  'part of the building that was tested',
]

/** Fields that nobody asks for: they are shown where they were logged. */
export const shownIfLogged: ReadonlySet<string> = new Set([
  'building.site',
  'test.notes',
  'building.volumeUncertainty_m3',
  'building.lossArea_m2',
  'building.altitude_m',
  'conditions.beaufort',
  'flowDevice.referenceDensity_kg_m3',
  'runs[0].averagingTime_s',
])

/** Instruments, one row each; of several ways to state an accuracy the first that was logged is shown. */
export const instruments = [
  { name: 'Pressure gauge', part: 'pressureGauge', accuracy: ['accuracy_Pa', 'accuracy_relative'] },
  { name: 'Flow device', part: 'flowDevice', accuracy: ['accuracy_relative', 'accuracy_m3_h'] },
  { name: 'Thermometer', part: 'thermometer', accuracy: ['accuracy_K'] },
] as const
