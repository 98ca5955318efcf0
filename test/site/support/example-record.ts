/** An invented house and test, for the tests of this folder. Demo data: no real building, firm or person. */
export const exampleRecord = {
  format: 'draughtbook/record@1' as const,
  building: {
    name: 'Invented house, plot 7',
    volume_m3: 320,
    volumeBasis: 'net' as const,
    envelopeArea_m2: 300,
    floorArea_m2: 128,
    height_m: 5.4,
    altitude_m: 120,
  },
  test: {
    date: '2026-10-14',
    method: 'iso-9972:2015',
    preparation: 'method 1' as const,
    openings: [{ opening: 'kitchen extract', state: 'closed' as const }],
  },
  conditions: { indoorTemperature_C: 20, outdoorTemperature_C: 8, barometricPressure_Pa: 100_400 },
  runs: [
    {
      direction: 'depressurisation' as const,
      averagingTime_s: 20,
      zeroFlowBefore_Pa: [1.2, 1.1, 1.3],
      zeroFlowAfter_Pa: [0.8, 0.9, 0.7],
      readings: [
        { pressure_Pa: -61.2, flow_m3_h: 240 },
        { pressure_Pa: -47.3, flow_m3_h: 203 },
        { pressure_Pa: -39.8, flow_m3_h: 182 },
        { pressure_Pa: -25.1, flow_m3_h: 135 },
        { pressure_Pa: -17.9, flow_m3_h: 108 },
      ],
    },
  ],
  target: { preset: 'passive-house-new' },
}
