import { book, day } from '../support/book'
import type { MadeUpLog } from '../support/made-up-log'
import { pairs } from '../support/made-up-log'

const column = (header: string, nth: number) => ({ at: { header, nth } })

export const englishForm: MadeUpLog = {
  name: 'english form',
  imitates:
    'a one-page form of a small office: labels with values beside them, the two directions side by side',
  fileName: 'Plot 12 fabric test.xlsx',
  write: () =>
    book({
      'Air test': [
        ['Air test record (invented)', null, null, null, null, null],
        ['Building', 'Plot 12', null, 'Date', day('2026-03-11')],
        ['Address', '12 Nowhere Lane', null, 'Tester', 'A. Sample'],
        ['Volume', 251.3, 'm³', 'Envelope area', 318, 'm²'],
        ['Indoor temperature', 18.4, '°C', 'Outdoor temperature', 7.1, '°C'],
        ['Barometric pressure', 1009.3, 'hPa', 'Standard', 'EN ISO 9972'],
        [],
        ['Depressurisation', null, null, 'Pressurisation'],
        ['Pressure (Pa)', 'Flow (m³/h)', null, 'Pressure (Pa)', 'Flow (m³/h)'],
        [-71.2, 512.4, null, 70.3, 530.1],
        [-61.0, 463.9, null, 60.8, 482.2],
        [-50.4, 409.7, null, 50.1, 425.3],
        [-40.9, 356.8, null, 40.2, 368.4],
        [-30.3, 293.5, null, 30.7, 309.9],
        [-20.1, 224.8, null, 20.4, 238.0],
        [],
        ['Zero flow before', 'Zero flow after', null, 'Zero flow before', 'Zero flow after'],
        [-0.6, -0.4, null, 0.3, 0.5],
        [-0.8, -0.5, null, 0.4, 0.2],
        [-0.7, -0.6, null, 0.1, 0.4],
      ],
    }),
  layout: {
    format: 'draughtbook/layout@1',
    name: 'english form',
    fields: [
      { path: 'building.name', at: { label: 'Building' } },
      { path: 'building.address', at: { label: 'Address' } },
      { path: 'building.volume_m3', at: { label: 'Volume' } },
      { path: 'building.envelopeArea_m2', at: { label: 'Envelope area' } },
      { path: 'test.date', at: { cell: 'E2' } },
      { path: 'test.tester', at: { label: 'Tester' } },
      { path: 'test.method', at: { label: 'Standard' } },
      { path: 'conditions.indoorTemperature_C', at: { label: 'Indoor temperature' } },
      { path: 'conditions.outdoorTemperature_C', at: { label: 'Outdoor temperature' } },
      { path: 'conditions.barometricPressure_Pa', at: { label: 'Barometric pressure' } },
    ],
    runs: [1, 2].map((nth) => ({
      direction: nth === 1 ? ('depressurisation' as const) : ('pressurisation' as const),
      pressure: column('Pressure', nth),
      flow: column('Flow', nth),
      zeroFlowBefore: { ...column('Zero flow before', nth), unit: 'Pa' },
      zeroFlowAfter: { ...column('Zero flow after', nth), unit: 'Pa' },
    })),
  },
  records: [
    {
      format: 'draughtbook/record@1',
      building: { name: 'Plot 12', address: '12 Nowhere Lane', volume_m3: 251.3, envelopeArea_m2: 318 },
      test: { date: '2026-03-11', tester: 'A. Sample', method: 'iso-9972:2015' },
      conditions: { indoorTemperature_C: 18.4, outdoorTemperature_C: 7.1, barometricPressure_Pa: 100_930 },
      runs: [
        {
          direction: 'depressurisation',
          readings: pairs(
            [-71.2, 512.4],
            [-61.0, 463.9],
            [-50.4, 409.7],
            [-40.9, 356.8],
            [-30.3, 293.5],
            [-20.1, 224.8],
          ),
          zeroFlowBefore_Pa: [-0.6, -0.8, -0.7],
          zeroFlowAfter_Pa: [-0.4, -0.5, -0.6],
        },
        {
          direction: 'pressurisation',
          readings: pairs(
            [70.3, 530.1],
            [60.8, 482.2],
            [50.1, 425.3],
            [40.2, 368.4],
            [30.7, 309.9],
            [20.4, 238.0],
          ),
          zeroFlowBefore_Pa: [0.3, 0.4, 0.1],
          zeroFlowAfter_Pa: [0.5, 0.2, 0.4],
        },
      ],
    },
  ],
  findings: [
    ['log-word', "'Air test'!E6"],
    ['log-unit', "'Air test'!B6"],
  ],
  proposable: true,
}
