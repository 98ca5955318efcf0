import type { MadeUpLog } from '../support/made-up-log'
import { pairs } from '../support/made-up-log'

const text = [
  'Protocol\tinvented',
  'Dwelling\tMaisonnette Ω',
  'Date\t2026-01-15',
  'Volume\t310.25\tm³',
  'Inside\t20.0\t°C',
  'Outside\t-3.5\t°C',
  '',
  'Pressure / Pa\tFlow / m³/h',
  '-60.0\t1,012.5',
  '-45.0\t840.2',
  '-30.0\t645.3',
  '',
].join('\n')

/** UTF-16, little end first, with its mark. */
function utf16(content: string): Uint8Array {
  return new Uint8Array(Uint16Array.from(`\ufeff${content}`, (letter) => letter.charCodeAt(0)).buffer)
}

export const tabbedText: MadeUpLog = {
  name: 'tabbed text',
  imitates: 'a text export with tabs in UTF-16, decimal points and groups of thousands',
  fileName: 'protocol.txt',
  write: async () => utf16(text),
  layout: {
    format: 'draughtbook/layout@1',
    name: 'tabbed text',
    constants: { 'test.method': 'iso-9972:2015' },
    fields: [
      { path: 'building.name', at: { label: 'Dwelling' } },
      { path: 'test.date', at: { label: 'Date' } },
      { path: 'building.volume_m3', at: { label: 'Volume' } },
      { path: 'conditions.indoorTemperature_C', at: { label: 'Inside' } },
      { path: 'conditions.outdoorTemperature_C', at: { label: 'Outside' } },
    ],
    runs: [
      { direction: 'by sign', pressure: { at: { header: 'Pressure' } }, flow: { at: { header: 'Flow' } } },
    ],
  },
  records: [
    {
      format: 'draughtbook/record@1',
      building: { name: 'Maisonnette Ω', volume_m3: 310.25 },
      test: { date: '2026-01-15', method: 'iso-9972:2015' },
      conditions: { indoorTemperature_C: 20, outdoorTemperature_C: -3.5 },
      runs: [{ direction: 'depressurisation', readings: pairs([-60, 1012.5], [-45, 840.2], [-30, 645.3]) }],
    },
  ],
  findings: [
    ['log-decimal', 'protocol!B4'],
    ['log-text-number', 'protocol!B9'],
    ['log-constant'],
    ['log-text-date', 'protocol!B3'],
  ],
}
