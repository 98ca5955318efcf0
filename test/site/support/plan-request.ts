import type { PlanRequest } from '@draughtbook/shared-calc'

/** An invented house of 320 m³ to be tested to 0.6 1/h, and two invented devices. Demo data. */
export const planRequest: PlanRequest = {
  format: 'draughtbook/plan@1',
  building: {
    name: 'Invented house, plot 7',
    volume_m3: 320,
    volumeBasis: 'net',
    envelopeArea_m2: 300,
    height_m: 5.4,
    altitude_m: 120,
  },
  method: 'iso-9972:2015',
  preparation: 'method 1',
  target: { preset: 'passive-house-new' },
  plan: {
    day: '2026-11-30',
    zeroFlowPressure_Pa: -1.2,
    forecast: { indoorTemperature_C: 20, outdoorTemperature_C: 4, windSpeed_m_s: 2, windAt: 'ground' },
    devices: [
      {
        name: 'small fan',
        serial: 'DEMO-1',
        calibrationDue: '2027-03-01',
        referenceDensity_kg_m3: 1.2041,
        ranges: [
          { label: 'narrow', minimumFlow_m3_h: 15, maximumFlow_m3_h: 120 },
          { label: 'middle', minimumFlow_m3_h: 60, maximumFlow_m3_h: 400 },
        ],
      },
      {
        name: 'large fan',
        serial: 'DEMO-2',
        calibrationDue: '2026-11-01',
        ranges: [
          { label: 'open', coefficient: 230, exponent: 0.5, minimumPressure_Pa: 25, maximumPressure_Pa: 400 },
        ],
      },
    ],
    gauges: [{ name: 'gauge A', serial: 'DEMO-3', calibrationDue: '2027-01-15' }],
  },
}
