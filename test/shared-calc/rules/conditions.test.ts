import { describeRules, type RuleCase } from './support'

const stack = ['building.height_m', 'conditions.indoorTemperature_C', 'conditions.outdoorTemperature_C']
const cold = (height: number, outdoor: number) => (r: Parameters<RuleCase[1]>[0]) => {
  r.building.height_m = height
  r.conditions.outdoorTemperature_C = outdoor
}
const windOf =
  (speed: number | undefined, at: 'ground' | 'meteorological' | undefined, beaufort?: number) =>
  (r: Parameters<RuleCase[1]>[0]) => {
    const { windSpeed_m_s: _, windAt: __, ...others } = r.conditions
    r.conditions = {
      ...others,
      ...(speed !== undefined && { windSpeed_m_s: speed }),
      ...(at !== undefined && { windAt: at }),
      ...(beaufort !== undefined && { beaufort }),
    }
  }

const barometerAt = (altitude: number, pressure: number) => (r: Parameters<RuleCase[1]>[0]) => {
  r.building.altitude_m = altitude
  r.conditions.barometricPressure_Pa = pressure
}

describeRules({
  // US Standard Atmosphere 1976, printed table: 89 874.6 Pa at 1000 m, 101 325 Pa at sea level.
  'barometer-altitude': [
    ['no altitude', () => undefined],
    ['the standard atmosphere at 1000 m', barometerAt(1000, 89_875)],
    ['a high of 4.9 kPa', barometerAt(1000, 94_770)],
    [
      'reduced to sea level',
      barometerAt(1000, 101_325),
      {
        severity: 'caution',
        value: 101_325,
        where: ['conditions.barometricPressure_Pa', 'building.altitude_m'],
      },
    ],
    ['a low of 5.1 kPa at sea level', barometerAt(0, 96_225), { severity: 'caution', limit: 101_325 }],
  ],
  'temperature-height': [
    ['250 m·K', cold(25, 10)],
    ['just below 250 m·K', cold(24.9, 10)],
    ['just above 250 m·K', cold(25.1, 10), { severity: 'caution', value: 251, limit: 250, where: stack }],
    ['warmer outdoors counts alike', cold(25.1, 30), { severity: 'caution', value: 251, limit: 250 }],
    [
      'height not logged',
      (r) => {
        delete r.building.height_m
      },
      { severity: 'note', limit: 250, where: ['building.height_m'] },
    ],
  ],
  wind: [
    ['3 m/s near the ground', windOf(3, 'ground')],
    ['just below 3 m/s near the ground', windOf(2.9, 'ground')],
    [
      'just above 3 m/s near the ground',
      windOf(3.1, 'ground'),
      { severity: 'caution', value: 3.1, limit: 3, where: ['conditions.windSpeed_m_s'] },
    ],
    ['6 m/s at the meteorological station', windOf(6, 'meteorological')],
    [
      'just above 6 m/s at the meteorological station',
      windOf(6.1, 'meteorological'),
      { severity: 'caution', value: 6.1, limit: 6, where: ['conditions.windSpeed_m_s'] },
    ],
    ['Beaufort 3', windOf(undefined, undefined, 3)],
    [
      'Beaufort 4',
      windOf(undefined, undefined, 4),
      { severity: 'caution', value: 4, limit: 3, where: ['conditions.beaufort'] },
    ],
    [
      'place of the wind not logged: judged as near the ground',
      windOf(3.1, undefined),
      [
        { severity: 'caution', value: 3.1, limit: 3 },
        { severity: 'note', where: ['conditions.windAt'] },
      ],
    ],
    [
      'no wind logged',
      windOf(undefined, undefined),
      { severity: 'caution', where: ['conditions.windSpeed_m_s', 'conditions.beaufort'] },
    ],
  ],
  'assumed-humidity': [
    ['both logged', () => undefined],
    [
      'outdoors not logged',
      (r) => {
        delete r.conditions.outdoorRelativeHumidity
      },
      { severity: 'note', value: 0.5, where: ['conditions.outdoorRelativeHumidity'] },
    ],
    [
      'neither logged',
      (r) => {
        delete r.conditions.indoorRelativeHumidity
        delete r.conditions.outdoorRelativeHumidity
      },
      {
        severity: 'note',
        where: ['conditions.indoorRelativeHumidity', 'conditions.outdoorRelativeHumidity'],
      },
    ],
  ],
  'assumed-pressure': [
    ['barometer read', () => undefined],
    [
      // 95 461 Pa: ASHRAE Fundamentals 2017, ch. 1, table 1.
      'altitude instead',
      (r) => {
        delete r.conditions.barometricPressure_Pa
        r.building.altitude_m = 500
      },
      { severity: 'caution', where: ['conditions.barometricPressure_Pa'] },
    ],
    [
      'neither',
      (r) => {
        delete r.conditions.barometricPressure_Pa
      },
      {
        severity: 'caution',
        value: 101_325,
        where: ['conditions.barometricPressure_Pa', 'building.altitude_m'],
      },
    ],
  ],
})
