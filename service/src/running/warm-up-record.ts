/** A record of round figures; its result is never shown. */
export const RECORD = {
  format: 'draughtbook/record@1',
  building: { name: 'warm-up', volume_m3: 100 },
  test: { date: '2026-01-01', method: 'iso-9972:2015' },
  conditions: { indoorTemperature_C: 20, outdoorTemperature_C: 10 },
  runs: [
    {
      direction: 'depressurisation',
      zeroFlowBefore_Pa: [0],
      zeroFlowAfter_Pa: [0],
      readings: [10, 20, 30, 40, 50, 60].map((pressure) => ({
        pressure_Pa: -pressure,
        flow_m3_h: 2 * pressure,
      })),
    },
  ],
}
