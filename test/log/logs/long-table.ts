import type { MadeUpLog } from '../support/made-up-log'
import { pairs } from '../support/made-up-log'

const lines = [
  'Messung;Objekt;Datum;Volumen (m³);Innen (°C);Außen (°C);Richtung;Art;Druck (Pa);Strom (m³/h)',
  'M1;Haus Süd;14.10.2026;320,5;20,1;7,4;Unterdruck;null vor;-0,8;',
  'M1;Haus Süd;14.10.2026;320,5;20,1;7,4;;null vor;-1,0;',
  'M1;Haus Süd;14.10.2026;320,5;20,1;7,4;;Messwert;-61,2;701,5',
  'M1;Haus Süd;14.10.2026;320,5;20,1;7,4;;Messwert;-44,7;566,3',
  'M1;Haus Süd;14.10.2026;320,5;20,1;7,4;;Messwert;-28,9;421,0',
  'M1;Haus Süd;14.10.2026;320,5;20,1;7,4;;null nach;-0,6;',
  'M1;Haus Süd;14.10.2026;320,5;20,1;7,4;Überdruck;null vor;0,2;',
  'M1;Haus Süd;14.10.2026;320,5;20,1;7,4;;Messwert;60,3;722,8',
  'M1;Haus Süd;14.10.2026;320,5;20,1;7,4;;Messwert;45,5;593,1',
  'M1;Haus Süd;14.10.2026;320,5;20,1;7,4;;Messwert;30,0;446,9',
  'M1;Haus Süd;14.10.2026;320,5;20,1;7,4;;null nach;0,4;',
  'M2;Haus Nord;15.10.2026;298,0;19,8;6,9;Unterdruck;Messwert;-58,8;640,2',
  'M2;Haus Nord;15.10.2026;298,0;19,8;6,9;;Messwert;-41,4;505,7',
  'M2;Haus Nord;15.10.2026;298,0;19,8;6,9;;Messwert;-26,1;371,6',
]

/** Windows-1252 by hand: every letter used here has its Latin-1 code. */
const latin = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0))

export const longTable: MadeUpLog = {
  name: 'long table',
  imitates:
    'an export with semicolons, decimal commas and an old encoding: one line per value, tests and directions in columns',
  fileName: 'export.csv',
  write: async () => latin(`${lines.join('\r\n')}\r\n`),
  layout: {
    format: 'draughtbook/layout@1',
    name: 'long table',
    tests: { each: 'group', headerRow: 1, by: 'Messung' },
    constants: { 'test.method': 'iso-9972:2015' },
    fields: [
      { path: 'test.id', at: { header: 'Messung' } },
      { path: 'building.name', at: { header: 'Objekt' } },
      { path: 'test.date', at: { header: 'Datum' } },
      { path: 'building.volume_m3', at: { header: 'Volumen' } },
      { path: 'conditions.indoorTemperature_C', at: { header: 'Innen' } },
      { path: 'conditions.outdoorTemperature_C', at: { header: 'Außen' } },
    ],
    runs: [
      {
        direction: { column: { header: 'Richtung' } },
        role: {
          column: { header: 'Art' },
          words: { Messwert: 'reading', 'null vor': 'zero-flow before', 'null nach': 'zero-flow after' },
        },
        pressure: { at: { header: 'Druck' } },
        flow: { at: { header: 'Strom' } },
      },
    ],
  },
  records: [
    {
      format: 'draughtbook/record@1',
      building: { name: 'Haus Süd', volume_m3: 320.5 },
      test: { id: 'M1', date: '2026-10-14', method: 'iso-9972:2015' },
      conditions: { indoorTemperature_C: 20.1, outdoorTemperature_C: 7.4 },
      runs: [
        {
          direction: 'depressurisation',
          readings: pairs([-61.2, 701.5], [-44.7, 566.3], [-28.9, 421]),
          zeroFlowBefore_Pa: [-0.8, -1],
          zeroFlowAfter_Pa: [-0.6],
        },
        {
          direction: 'pressurisation',
          readings: pairs([60.3, 722.8], [45.5, 593.1], [30, 446.9]),
          zeroFlowBefore_Pa: [0.2],
          zeroFlowAfter_Pa: [0.4],
        },
      ],
    },
    {
      format: 'draughtbook/record@1',
      building: { name: 'Haus Nord', volume_m3: 298 },
      test: { id: 'M2', date: '2026-10-15', method: 'iso-9972:2015' },
      conditions: { indoorTemperature_C: 19.8, outdoorTemperature_C: 6.9 },
      runs: [
        { direction: 'depressurisation', readings: pairs([-58.8, 640.2], [-41.4, 505.7], [-26.1, 371.6]) },
      ],
    },
  ],
  findings: [
    ['log-encoding'],
    ['log-decimal', 'export!D2'],
    ['log-word', 'export!G2'],
    ['log-carried', 'export!G3:G7'],
    ['log-word', 'export!G8'],
    ['log-carried', 'export!G9:G12'],
    ['log-constant'],
    ['log-text-date', 'export!C2'],
  ],
}
