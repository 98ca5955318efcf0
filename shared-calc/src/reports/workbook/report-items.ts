/**
 * What a test report lists beside readings, results and findings, by heading. Sources: ISO 9972:2015, clause on the test
 * report (value from memory); public checklist for passive house test reports; Swiss directive on airtightness
 * measurements 2022.1 (both read in part).
 */
export const reportItems: readonly { readonly title: string; readonly fields: readonly string[] }[] = [
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
  {
    title: 'Instruments',
    fields: [
      'pressureGauge.serial',
      'pressureGauge.calibrationDue',
      'flowDevice.serial',
      'flowDevice.calibrationDue',
      'flowDevice.referenceDensity_kg_m3',
      'runs[0].averagingTime_s',
    ],
  },
]
