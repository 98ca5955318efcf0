import type { FindingParams } from '../../../shared-calc/src/catalogue/findings/finding.js'
import type { FindingId } from '../../../shared-calc/src/catalogue/findings/index.js'

type Samples = {
  [Id in FindingId]: unknown extends FindingParams<Id> ? [] : FindingParams<Id>[]
}

const de = 'depressurisation'
const pr = 'pressurisation'
const limits = { range: 'B', lowest: 25, highest: 300 }
const place = { direction: de, reading: 1 } as const

/** Parameters as a test may give them, every case of every message at least once. The type asks for each id. */
export const samples: Samples = {
  'assumed-humidity': [
    { missing: 'both', assumed: 0.5 },
    { missing: 'indoors', assumed: 0.5 },
    { missing: 'outdoors', assumed: 0.5 },
  ],
  'assumed-pressure/from-altitude': [{ pressure_Pa: 97_773.2, altitude_m: 300 }],
  'assumed-pressure/sea-level': [{ pressure_Pa: 101_325 }],
  'assumed-reference-density': [{ density_kg_m3: 1.2041 }],
  'assumed-exponent': [
    { exponent: 0.65, runs: 1 },
    { exponent: 0.65, runs: 2 },
  ],
  'assumed-altitude': [{ method: 'ANSI/RESNET/ICC 380, one-point' }],
  'flow-stated-at/not-logged': [
    { taken: 'device air', changes: [{ direction: de, change: 0.021 }] },
    {
      taken: 'reference air',
      changes: [
        { direction: de, change: 0.004 },
        { direction: pr, change: -0.021 },
      ],
    },
  ],
  'sign-convention': [
    { direction: de, zeroFlow: true },
    { direction: pr, zeroFlow: false },
  ],
  'volume-basis/not-stated': [],
  'volume-basis/other-than-target': [
    { basis: 'overall internal', asked: 'net', target: 'Passive house, new' },
  ],
  'volume-basis/other-than-method': [{ basis: 'net', method: 'ISO 9972:2015', usual: 'overall internal' }],
  'missing-basis': [
    { term: 'internal volume', result: 'air change rate' },
    { term: 'envelope area', result: 'specific leakage rate (envelope)' },
  ],
  'missing-preparation': [{ missing: 'both' }, { missing: 'method' }, { missing: 'openings' }],
  'implausible-value': [{ term: 'internal volume', unit: 'm³', lowest: 30, highest: 500_000, value: 3 }],
  'missing-target': [],
  'text-characters': [],
  'temperature-height/unknown': [{ limit: 250 }],
  'temperature-height/beyond': [
    { value: 312.4, limit: 250 },
    { value: 250.2, limit: 250 },
  ],
  'wind/not-logged': [],
  'wind/place-not-logged': [],
  'wind/speed': [
    { speed: 4.25, at: 'ground', limit: 3 },
    { speed: 7, at: 'meteorological', limit: 6 },
    { speed: 4, at: undefined, limit: 3 },
    { speed: 3.03, at: 'ground', limit: 3 },
  ],
  'wind/force': [{ force: 5, limit: 3 }],
  'exponent-range': [
    { direction: de, exponent: 0.4567, lowest: 0.5, highest: 1 },
    { direction: de, exponent: 0.49997, lowest: 0.5, highest: 1 },
    { direction: pr, exponent: 1.0003, lowest: 0.5, highest: 1 },
    { direction: pr, exponent: -0.2, lowest: 0.5, highest: 1 },
  ],
  correlation: [
    { direction: pr, rSquared: 0.97654, limit: 0.98 },
    { direction: pr, rSquared: 0.97999, limit: 0.98 },
  ],
  'outlier/residual': [
    { ...place, residual: -4.02, limit: 3.499 },
    { ...place, residual: 3.52, limit: 3.499 },
  ],
  'outlier/others-exact': [place],
  'leakage-step/listed': [
    { direction: de, reading: 4, share: 0.1234, limit: 0.021 },
    { direction: pr, reading: 2, share: -0.0302, limit: -0.0301 },
  ],
  'leakage-step/by-pressure': [
    { direction: de, reading: 4, share: 0.08, limit: 0.031, falling: true },
    { direction: de, reading: 4, share: -0.08, limit: -0.031, falling: false },
  ],
  'leakage-step/range': [{ direction: de, reading: 5, share: 0.052, limit: 0.021 }],
  'leakage-step/under-way': [
    { reading: 4, share: 0.1234, limit: 0.021 },
    { reading: 2, share: -0.0302, limit: -0.0301 },
  ],
  'extrapolated-target': [
    { direction: de, pressure_Pa: 50, lowest: 11.2, highest: 45.6 },
    { direction: de, pressure_Pa: 50, lowest: 11.2, highest: 49.97 },
  ],
  'one-direction/both-needed': [{ direction: de }],
  'one-direction/alone': [{ direction: pr }],
  'both-directions': [{ direction: de, method: 'ASTM E779-19' }],
  'method-direction': [{ method: 'CAN/CGSB-149.10-2019', asked: de, direction: pr }],
  'directions-differ': [
    { share: 0.213, limit: 0.15 },
    { share: 0.1503, limit: 0.15 },
  ],
  'leakage-area-error': [
    { direction: de, pressure_Pa: 10, error: 0.085, limit: 0.07 },
    { direction: de, pressure_Pa: 10, error: 0.0702, limit: 0.07 },
  ],
  'calibration-expired/not-logged': [{ instrument: 'pressure gauge' }],
  'calibration-expired/expired': [{ instrument: 'flow device', due: '2026-05-01', test: '2026-10-14' }],
  'device-range/none-fits': [{ ...place, flow: 1234.5 }],
  'device-range/pressure': [
    { ...place, ...limits, pressure: 12.3 },
    { ...place, ...limits, device: 1, pressure: 350 },
  ],
  'device-range/flow': [{ ...place, ...limits, flow: 1234.5, highest: Number.POSITIVE_INFINITY }],
  'device-range/unknown': [{ ...place, range: 'C' }],
  'device-range/not-given': [],
  'averaging-time/not-logged': [{ direction: de, limit: 20 }],
  'averaging-time/short': [
    { direction: de, time: 5, limit: 20 },
    { direction: de, time: 19.999, limit: 20 },
  ],
  'too-few-readings': [
    { direction: de, count: 4, limit: 5 },
    { direction: de, count: 1, limit: 5 },
  ],
  'highest-pressure/too-low': [
    { direction: de, highest: 44.44, limit: 50 },
    { direction: de, highest: 49.97, limit: 50 },
  ],
  'highest-pressure/large-building': [
    { direction: de, highest: 38, reason: 'volume of 45 000 m³, three devices at full speed' },
  ],
  'lowest-pressure/reading': [
    { ...place, pressure: 8.2, limit: 10 },
    { ...place, pressure: 12.01, limit: 12.03 },
  ],
  'reading-spacing': [{ direction: de, lower: 30.2, upper: 51.7, limit: 10 }],
  'pressure-ceiling': [{ ...place, pressure: 112, limit: 100 }],
  'duplicate-reading': [{ direction: de, first: 1, second: 3, pressure: -50.1 }],
  'station-pressure': [
    { ...place, pressure: 40, method: 'ASTM E1827-22, two-point', stations: [50, 12.5], station: 50 },
    { ...place, pressure: 40, method: 'ASTM E1827-22, one-point', stations: [50], station: 50 },
  ],
  'station-repeats': [{ direction: de, count: 1, station: 12.5, limit: 5 }],
  'zero-flow-limit/mean': [
    { direction: de, period: 'before', mean: -5.6, limit: 5 },
    { direction: de, period: 'after', mean: 6, limit: 5 },
    { direction: de, period: 'before', mean: -5.02, limit: 5 },
  ],
  'zero-flow-samples/none': [
    { direction: de, period: 'before', instead: 'other period', samples: 10, duration_s: 30 },
    { direction: pr, period: 'after', instead: 'zero', samples: 10, duration_s: 30 },
  ],
  'zero-flow-samples/few': [
    { direction: de, period: 'after', count: 1, samples: 10, duration_s: 30 },
    { direction: de, period: 'before', count: 5, samples: 10, duration_s: 30 },
  ],
  'assumed-zero-flow': [],
  'zero-flow-limit/plan': [
    { zeroFlow: -6.5, limit: 5 },
    { zeroFlow: 5.04, limit: 5 },
  ],
  'lowest-pressure/station': [{ station: 12.5, method: 'ASTM E1827-22, two-point', lowest: 15 }],
  'no-device': [],
  'range-limits-not-stated': [{ count: 1 }, { count: 3 }],
  'device-reach/partly': [{ best: 'small fan', missed: [20, 30.4, 65] }],
  'device-reach/none': [],
  'calibration-lapses/before-test': [{ name: 'large fan', due: '2026-11-01', day: '2026-11-30' }],
  'calibration-lapses/not-known': [{ name: 'large fan' }],
  'no-day': [],
  'missing-target/plan': [],
  'missing-basis/plan': [],
  'wind/forecast-missing': [],
  'wind/forecast-place': [],
  'wind/forecast-speed': [{ speed: 4.5, at: 'ground', limit: 3 }],
  'wind/forecast-force': [{ force: 4, limit: 3 }],
  'temperature-height/forecast-missing': [
    { missing: 'height', limit: 250 },
    { missing: 'temperatures', limit: 250 },
    { missing: 'both', limit: 250 },
  ],
  'temperature-height/forecast': [{ value: 300, limit: 250 }],
  'stack-pressure': [{ pressure: -5.4, limit: 5 }],
  'assumed-densities': [{ density_kg_m3: 1.2041 }],
  'assumed-humidity/plan': [{ assumed: 0.5 }],
  'assumed-pressure/plan': [{ pressure_Pa: 101_325 }],
  'preparation-departs': [
    { opening: 'trickle vents', state: 'open', method: 'method 2', asked: 'sealed' },
    {
      opening: 'hall',
      state: 'closed',
      method: 'method 1',
      asked: 'open, so that the pressure is the same everywhere',
    },
  ],
  'preparation-blank': [{ kinds: ['cooker hood'] }, { kinds: ['cooker hood', 'drain traps', 'loft hatch'] }],
  'preparation-purpose': [],
  'caution-unanswered': [
    { cautions: ['locked doors'], texts: ['Secure doors that can slam.'] },
    {
      cautions: ['locked doors', 'fan and cables'],
      texts: ['Secure doors that can slam.', 'Keep the guard on.'],
    },
  ],
  'caution-contradicted': [{ opening: 'stove flue' }],
  'leaks-too-large': [
    { open: 312, measured: 140 },
    { open: 140.3, measured: 139.9 },
  ],
  'leak-size': [{ count: 1 }, { count: 2 }],
  'leak-round/not-stated': [{ place: 'kitchen window' }],
  'leak-round/not-fixed': [{ place: 'kitchen window' }],
  'leak-round/no-test': [
    { place: 'kitchen window', round: 2, earlier: 1 },
    { place: 'kitchen window', round: 1, earlier: 0 },
  ],
  'round-directions/not-stated': [{ test: 0 }],
  'round-directions/other': [{ test: 0, earlier: [de], now: [de, pr] }],
  'round-grew': [{ growth: 31.2, round: 0 }],
  'photo-missing': [{ name: 'bath.jpg' }],
  'photo-left-out': [{ name: 'bath.jpg', why: 'it is neither a JPEG nor a PNG picture' }],
  'photo-left-out/too-many': [
    { names: ['p25.jpg'], most: 24 },
    { names: Array.from({ length: 12 }, (_, i) => `p${i + 25}.jpg`), most: 24 },
  ],
  'photo-logo': [{ why: 'it is larger than 512 kB' }],
  'take-off-empty': [{ term: 'net volume', value: -3.2, unit: 'm³' }],
  'take-off-stated/differs': [
    {
      term: 'internal volume',
      unit: 'm³',
      from: 'drawing 12',
      stated: 310,
      taken: 301.4,
      share: -0.028,
      limit: 4.2,
    },
    { term: 'floor area', unit: 'm²', from: undefined, stated: 110, taken: 101.4, share: 0.08, limit: 2 },
  ],
  'take-off-stated/basis': [],
  'take-off-doubled': [{ name: 'living room' }],
  'assumed-length-uncertainty': [
    { count: 1, assumed_m: 0.02 },
    { count: 7, assumed_m: 0.02 },
  ],
  'area-uncertainty-not-stated': [{ count: 1 }, { count: 2 }],
  'scale-uncertainty-not-stated': [],
  'take-off-used': [{ term: 'net internal volume', unit: 'm³', used: 250, taken: 262.4 }],
  'assumed-uncertainty': [{ values: ['flow calibration 2.9 %', 'pressure gauge 0.6 %'] }],
  'assumed-wind': [{ speed: 3 }],
  'scatter-unexpected/stated-as-none': [{ direction: de }],
  'wind-at-station': [{ station: 6, house: 3.4 }],
  'assumed-zero-flow-spread': [{ direction: 'depressurisation', spread: 2 }],
  'assumed-height': [{ height: 6 }],
  'uncertainty-unbounded': [{ block: 'Uncertainty budget: n50' }],
  'scatter-unexpected': [
    { direction: de, times: 3.62, limit: 3 },
    { direction: de, times: 3.01, limit: 3 },
  ],
  'target-preparation/not-logged': [{ target: 'France, house', accepted: ['method 1', 'method 3'] }],
  'target-preparation/other': [{ target: 'France, house', accepted: ['method 3'], preparation: 'method 1' }],
  'target-adjoining-spaces/not-logged': [{ target: 'US model code', accepted: ['guarded', 'unguarded'] }],
  'target-adjoining-spaces/other': [{ target: 'US model code', accepted: ['unguarded'], found: 'guarded' }],
  'target-area/stand-in': [{ target: 'France, house', area: 'loss area without the lowest floor' }],
  'target-alternatives': [
    {
      target: 'Germany, with ventilation system',
      judged: 'n50',
      others: [{ quantity: 'qE50', value: 1.234, limit: 0.9 }],
    },
  ],
  'outdoor-temperature': [{ value: -6.5, lowest: 5, highest: 35 }],
  'instrument-accuracy': [
    { instrument: 'pressure gauge', unit: 'Pa', value: 1, limit: 0.5 },
    { instrument: 'flow device', unit: '%', value: 0.08, limit: 0.05 },
  ],
  'inside-pressure': [{ direction: de, difference: 6.2, test: 50, limit: 0.1 }],
  'inside-pressure/not-read': [{ limit: 0.1 }],
  'reading-span/one-station': [{ direction: de, lowest: 49.9, highest: 50.2 }],
  'reading-span/far': [{ direction: de, lowest: 12, highest: 20, pressure_Pa: 50 }],
  'reading-span/narrow': [{ direction: de, lowest: 45, highest: 60, factor: 2 }],
  'reading-span/vague': [{ direction: de, width: 0.31, limit: 0.2, pressure_Pa: 4 }],
  'top-pressure': [
    { ...place, pressure: 72, limit: 60 },
    { ...place, pressure: 60.04, limit: 60 },
  ],
  'zero-flow-drift/run': [
    { direction: de, moved_Pa: 3, share: 0.065, limit: 0.04 },
    { direction: de, moved_Pa: 1.2, share: 0.0402, limit: 0.04 },
  ],
  'volume-shape/envelope-small': [
    { envelope: 212, volume: 2120, limit: 797.9 },
    { envelope: 797.88, volume: 2120, limit: 797.9 },
  ],
  'volume-shape/envelope-large': [{ envelope: 480, volume: 48, limit: 255.5 }],
  'volume-shape/storey-height': [
    { height: 1.3, lowest: 1.8, highest: 15 },
    { height: 15.02, lowest: 1.8, highest: 15 },
  ],
  'barometer-altitude': [{ value: 101_325, usual: 92_076, altitude: 800 }],
  'identical-runs': [],
  'zero-flow-copied': [
    { direction: de, count: 12 },
    { direction: de, count: 5 },
  ],
  'zero-flow-all-zero': [{ count: 40 }, { count: 10 }],
  'zero-flow-sign': [
    { exponents: [0.581, 0.742], exponentsThen: [0.655, 0.661] },
    { exponents: [0.9, 0.4], exponentsThen: [0.7, 0.7] },
  ],
  'zero-flow-subtracted': [{ exponents: [0.601, 0.712], exponentsThen: [0.655, 0.661] }],
  'zero-flow-drift': [
    { moved_Pa: -1.3, share: 0.042, limit: 0.02 },
    { moved_Pa: 0.4, share: 0.0203, limit: 0.02 },
  ],
}
