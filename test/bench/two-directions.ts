/** An invented test of two directions with ten readings each, everything logged: the ordinary job. */
export function twoDirections() {
  const zero = [0.6, 0.4, 0.9, 0.2, 0.5, 0.8, 0.3, 0.7, 0.5, 0.6]
  const pressures = [-71.2, -64.8, -58.1, -51.7, -45.2, -38.6, -32.3, -25.4, -18.9, -12.7]
  const scatter = [1.002, 0.998, 1.001, 0.997, 1.003, 1, 0.999, 1.004, 0.996, 1.001]
  const readings = (side: 1 | -1, coefficient: number, exponent: number) =>
    pressures.map((pressure, i) => ({
      pressure_Pa: pressure * -side,
      flow_m3_h: Math.round(coefficient * Math.abs(pressure) ** exponent * (scatter[i] ?? 1) * 10) / 10,
    }))
  return {
    format: 'draughtbook/record@1',
    building: {
      name: 'Bench house',
      volume_m3: 412.5,
      volumeBasis: 'net',
      envelopeArea_m2: 438.2,
      floorArea_m2: 158.4,
      height_m: 5.8,
      altitude_m: 240,
    },
    test: {
      id: 'B-1',
      date: '2026-10-14',
      method: 'iso-9972:2015',
      preparation: 'method 2',
      openings: [{ opening: 'drain traps', state: 'filled' }],
    },
    conditions: {
      indoorTemperature_C: 20.4,
      outdoorTemperature_C: 8.1,
      barometricPressure_Pa: 98_650,
      indoorRelativeHumidity: 0.46,
      outdoorRelativeHumidity: 0.81,
      windSpeed_m_s: 1.8,
      windAt: 'ground',
    },
    pressureGauge: { serial: 'G-1', calibrationDue: '2027-03-01' },
    flowDevice: {
      serial: 'D-1',
      calibrationDue: '2027-03-01',
      referenceDensity_kg_m3: 1.2041,
      ranges: [{ label: 'middle', minimumFlow_m3_h: 60, maximumFlow_m3_h: 900 }],
    },
    runs: [
      {
        direction: 'depressurisation',
        averagingTime_s: 20,
        zeroFlowBefore_Pa: zero,
        zeroFlowAfter_Pa: zero,
        readings: readings(-1, 12.2, 0.662),
      },
      {
        direction: 'pressurisation',
        averagingTime_s: 20,
        zeroFlowBefore_Pa: zero,
        zeroFlowAfter_Pa: zero,
        readings: readings(1, 12.9, 0.651),
      },
    ],
    target: { preset: 'passive-house-new' },
  }
}
