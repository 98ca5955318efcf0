import { LAYOUT_FORMAT, type Layout, type LayoutInput, parseLayout } from '../layout/schema.js'

const SHEET = 'Log'
const field = (path: string, label: string) => ({ path, at: { label, sheet: SHEET } })

const run = (nth: 1 | 2): NonNullable<LayoutInput['runs']>[number] => {
  const column = (header: string) => ({ at: { header, nth, sheet: SHEET } })
  return {
    direction: nth === 1 ? 'depressurisation' : 'pressurisation',
    zeroFlowBefore: column('Zero before'),
    zeroFlowAfter: column('Zero after'),
    pressure: column('Pressure'),
    devicePressure: column('Device'),
    range: column('Range'),
  }
}

const range = (header: string) => ({ at: { header, sheet: 'Device ranges' } })

/** The layout of the demonstration log: labels with their value beside them, two tables of readings below each other. */
const demoLayout: LayoutInput = {
  format: LAYOUT_FORMAT,
  name: 'demonstration log',
  note: 'For test/demo/demo-log.xlsx. Start from this one to describe a log of your own.',
  fingerprint: {
    sheets: [SHEET, 'Device ranges', 'Openings'],
    cells: [
      { sheet: SHEET, cell: 'A3', text: 'Test' },
      { sheet: SHEET, cell: 'A17', text: 'Internal volume' },
      { sheet: SHEET, cell: 'E5', text: 'Pressure [Pa]' },
    ],
  },
  fields: [
    field('test.id', 'Test'),
    field('test.date', 'Date'),
    field('test.stage', 'Stage'),
    field('building.site', 'Site'),
    field('building.name', 'Building'),
    field('building.address', 'Address'),
    field('test.client', 'Client'),
    field('test.tester', 'Tester'),
    field('test.organisation', 'Organisation'),
    field('test.method', 'Method'),
    field('test.preparation', 'Preparation'),
    field('target.preset', 'Target'),
    field('test.purpose', 'Purpose'),
    field('test.notes', 'Notes'),
    field('building.volume_m3', 'Internal volume'),
    field('building.volumeBasis', 'Volume basis'),
    field('building.volumeUncertainty_m3', 'Uncertainty of the volume'),
    field('building.envelopeArea_m2', 'Envelope area'),
    field('building.floorArea_m2', 'Floor area'),
    field('building.height_m', 'Building height'),
    field('building.altitude_m', 'Altitude'),
    field('conditions.indoorTemperature_C', 'Indoor temperature'),
    field('conditions.outdoorTemperature_C', 'Outdoor temperature'),
    field('conditions.barometricPressure_Pa', 'Barometric pressure'),
    field('conditions.indoorRelativeHumidity', 'Indoor relative humidity'),
    field('conditions.windSpeed_m_s', 'Wind speed'),
    field('conditions.windAt', 'Wind taken at'),
    field('conditions.beaufort', 'Wind force (Beaufort)'),
    field('pressureGauge.serial', 'Gauge serial number'),
    field('pressureGauge.calibrationDue', 'Gauge calibration due'),
    field('flowDevice.serial', 'Device serial number'),
    field('flowDevice.calibrationDue', 'Device calibration due'),
    field('flowDevice.referenceDensity_kg_m3', 'Device reference density'),
    { path: 'runs[0].averagingTime_s', at: { label: 'Averaging time', nth: 1, sheet: SHEET } },
    { path: 'runs[1].averagingTime_s', at: { label: 'Averaging time', nth: 2, sheet: SHEET } },
  ],
  lists: [
    {
      path: 'flowDevice.ranges',
      columns: {
        label: range('Range'),
        coefficient: range('Coefficient'),
        exponent: range('Exponent'),
        minimumPressure_Pa: range('Lowest pressure'),
        maximumPressure_Pa: range('Highest pressure'),
        minimumFlow_m3_h: range('Lowest flow'),
        maximumFlow_m3_h: range('Highest flow'),
      },
    },
    {
      path: 'test.openings',
      columns: {
        opening: { at: { header: 'Opening', sheet: 'Openings' } },
        state: { at: { header: 'State', sheet: 'Openings' } },
        note: { at: { header: 'Note', sheet: 'Openings' } },
      },
    },
  ],
  runs: [run(1), run(2)],
}

/** Layouts that come with the tool. A firm's own are beside them. */
export const builtInLayouts: readonly Layout[] = [parseLayout(demoLayout)]
