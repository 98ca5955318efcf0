import type { RemarkParams, RemarkTexts } from '../../../shared-calc/src/catalogue/findings/finding-text.js'
import { cellTexts } from '../../../shared-calc/src/catalogue/findings/log/cells.js'
import { fieldTexts } from '../../../shared-calc/src/catalogue/findings/log/fields.js'
import { fileTexts } from '../../../shared-calc/src/catalogue/findings/log/file.js'
import { rowReasons, runTexts } from '../../../shared-calc/src/catalogue/findings/log/runs.js'
import { seriesTexts } from '../../../shared-calc/src/catalogue/findings/log/series.js'
import { tableTexts } from '../../../shared-calc/src/catalogue/findings/log/tables.js'
import type { pageTexts } from '../../../shared-calc/src/catalogue/findings/page.js'
import type { homesTexts } from '../../../shared-calc/src/catalogue/findings/several-homes.js'

type SamplesOf<Table extends RemarkTexts> = {
  [Id in keyof Table]: unknown extends RemarkParams<Table[Id]> ? [] : RemarkParams<Table[Id]>[]
}

const averaged = { samples: 300, mean: -50.12, deviation: 0.423, drift: -0.1, few: false } as const

/** Every finding of the log reader; readers take the one table they speak from. */
export const logCatalogue = {
  ...cellTexts,
  ...fieldTexts,
  ...fileTexts,
  ...runTexts,
  ...seriesTexts,
  ...tableTexts,
} as const
export type LogFindingId = keyof typeof logCatalogue

/** Parameters as a log may give them, every case of every message at least once. The type asks for each id. */
export const logSamples: SamplesOf<typeof logCatalogue> = {
  'log-formula': [],
  'log-formula/reference': [{ cell: 'Cover!B4' }, { cell: "'Site data'!AB120" }],
  'log-struck-through/part': [{ rest: '50.2' }],
  'log-struck-through/replaced': [{ struck: 'Test!B15', value: 312.4 }],
  'log-struck-through': [
    { what: 'cell' },
    { what: 'reading' },
    { what: 'zero-flow pressure' },
    { what: 'sample' },
  ],
  'log-blank': [{ what: 'cell' }, { what: 'row' }],
  'log-blank/sample': [],
  'log-left-out/sample': [{ why: '"abc" is not a number' }],
  'log-hidden': [
    { what: 'cell', hidden: 'sheet' },
    { what: 'cell', hidden: 'column' },
    { what: 'reading', hidden: 'row' },
  ],
  'log-hidden/by-layout': [],
  'log-hidden/left-out': [],
  'log-merged': [],
  'log-remark/approximate': [],
  'log-remark/beside': [{ remark: 'from the drawings' }],
  'log-remark': [{ remark: 'gust, door opened' }, { remark: 'a very long remark '.repeat(8) }],
  'log-unit': [{ unit: 'cfm', conversion: '1 cfm = 1.6990108 m³/h' }],
  'log-unit/clock': [],
  'log-unit-in-cell': [{ unit: 'mbar' }],
  'log-unit-in-format': [{ unit: 'hPa', expected: 'Pa' }],
  'log-unit-assumed/time': [],
  'log-unit-differs': [{ heading: 'L/s', stated: 'm³/h' }],
  'log-unit-elsewhere/building': [{ unit: 'Pa' }],
  'log-text-number': [
    { comma: false, grouped: false },
    { comma: true, grouped: false },
    { comma: true, grouped: true },
  ],
  'log-number-as-text': [
    { kind: 'number', format: '0.00', read: '12' },
    { kind: 'boolean', format: undefined, read: 'true' },
  ],
  'log-serial-date': [{ date: '2026-10-14' }],
  'log-date-1904': [],
  'log-text-date': [{ date: '2026-10-14' }],
  'log-mean-of-two': [],
  'log-mean-of-readings': [],
  'log-temperature-of-readings': [
    { side: 'indoor', mean: '20.4 °C' },
    { side: 'outdoor', mean: '46.3 °F' },
  ],
  'log-parts-of-area': [{ field: 'floor area' }],
  'log-samples-of-mean': [{ heading: 'Average' }],
  'log-mean-of-runs': [],
  'log-unstored': [{ cells: ['Test!B3', 'Test!B9'] }],
  'log-former-values': [{ heading: 'Last year (2025)' }],
  'log-unread-values': [
    { labels: ['Boiler water temperature'], more: 0 },
    { labels: ['Zero a', 'Offset'], more: 3 },
  ],
  'log-unread-values/hidden': [],
  'log-sign/titles': [],
  'log-day-first': [{ date: '2026-06-05' }],
  'log-short-year': [{ year: '2026' }],
  'log-word': [{ word: 'Nettovolumen', read: 'net' }],
  'log-row-skipped': [],
  'log-row-skipped/marked': [{ mark: 'void' }],
  'log-gap': [],
  'log-summary-row': [{ mark: 'Mean' }],
  'log-heading': [{ heading: 'Pressure [Pa]' }],
  'log-sign/direction': [],
  'log-error-value': [{ shown: '#REF!', what: 'reading' }],
  'log-placeholder': [{ shown: 'n/a', what: 'zero-flow pressure' }],
  'log-incomplete': [],
  'log-carried': [{ direction: 'depressurisation' }],
  'log-constant': [{ field: 'range', value: 'B' }],
  'log-sign': [],
  'log-sign/minus-added': [],
  'log-blank-run': [{ direction: 'pressurisation' }, { direction: undefined }],
  'log-macros': [],
  'log-encoding': [],
  'log-decimal': [{ sign: 'comma', cell: 'Log!B7' }],
  'log-decimal/mixed': [{ point: 'Log!A3', comma: 'Log!A5' }],
  'log-date-system': [],
  'log-merged-unread': [{ sheets: [] }, { sheets: ['Log', 'Form'] }],
  'log-layout': [
    { name: 'Our log', why: 'given', sheets: ['Log'] },
    { name: 'Our log', why: 'saved', sheets: ['Log', 'Device ranges', 'Openings'] },
    { name: 'Our log', why: 'fits', sheets: ['Log', 'Openings'] },
    { name: 'Our log', why: 'answers', sheets: [] },
  ],
  'record-altered': [],
  'log-proposal': [],
  'log-hidden-test': [{ names: ['Plot 3'] }, { names: ['Plot 3', 'Plot 4'] }],
  'log-refused-test': [{ name: 'Test 1', title: 'Test 1: invalid, window open' }],
  'log-refused-test/read': [{ title: 'Test 1: invalid, window open' }],
  'log-copy': [{ copy: 'Report!A6', original: 'Input!A11' }],
  'log-copy/corrected': [{ copy: 'Test!D11', original: 'Test!A11' }],
  'log-other-tests': [{ names: ['Plot 3'] }, { names: ['Plot 3', 'Plot 4', 'Plot 5'] }],
  'log-direction-again': [{ direction: 'depressurisation' }, { direction: 'pressurisation' }],
  'log-one-of-several': [{ tests: ['Plot 3', 'Plot 4'], own: 'Plot 3' }],
  'log-not-searched/end': [{ sheet: 'Log', what: 'zero-flow pressures', last: 'Log!A2001' }],
  'log-not-searched/beyond': [{ sheet: 'Log', count: 6000, most: 5000, what: 'rows' }],
  'log-not-searched/sheets': [
    { first: 'Plot 61', count: 1 },
    { first: 'Plot 61', count: 4 },
  ],
  'log-series-reading': [
    { ...averaged, uncertainty: 0.051, device: { mean: 1234, deviation: 5.4, unit: 'm³/h' } },
    { ...averaged, few: true, uncertainty: 0.2, device: { mean: 51, deviation: 1, unit: 'Pa' } },
    { ...averaged, uncertainty: undefined, device: { mean: 1234, deviation: 5.4, unit: 'm³/h' } },
  ],
  'log-series-drift': [
    { mean: -50.2, drift: 3.1, time_s: 20, limit: 2 },
    { mean: -50.2, drift: 2.001, time_s: 20, limit: 2 },
  ],
  'log-series-short': [
    { mean: -50.2, held_s: 12, time_s: 20 },
    { mean: -50.2, held_s: 19.99, time_s: 20 },
  ],
  'log-series-no-zero-flow': [{ which: 'before' }, { which: 'before or after' }],
  'log-series-slow': [{ step_s: 10 }],
  'log-series-gap': [{ gap_s: 34 }],
  'log-series-zero-flow': [
    { values: 1, each_s: 30 },
    { values: 30, each_s: 1 },
  ],
  'log-series-zero-short': [
    { held_s: 12, needed_s: 30 },
    { held_s: 29.8, needed_s: 30 },
  ],
  'log-midnight': [],
  'log-direction/reversed': [{ from: 'sheet "Pressurisation"' }],
  'log-direction/negative': [],
  'log-direction/other': [{ other: 'depressurisation', own: 'pressurisation' }],
  'log-sign/both': [],
  'log-air-of-flows': [
    { text: 'Flow stated at reference air', air: 'reference air' },
    { text: 'Flow stated at: as displayed', air: 'device air' },
  ],
  'log-sign/stated-otherwise': [],
  'log-sign/zero-flow-kept': [],
  'log-zero-shared': [],
  'log-zero-which/in-order': [],
  'log-zero-unused': [{ label: 'Zero flow (Pa)' }],
  'log-zero-which/by-order': [],
  'log-zero-which': [{ taken: 'before' }, { taken: 'after' }],
  'log-zero-answered': [{ answer: '-1.2 before, -0.8 after' }],
  'log-zero-answered/none': [],
  'log-induced': [
    { heading: 'induced pressure', added: -1.234 },
    { heading: 'induced pressure', added: undefined },
  ],
  'log-flow-sign': [],
  'log-column-left-out/unpaired': [
    { heading: 'Z0', why: 'the log does not show which reading it belongs to' },
  ],
  'log-column-left-out': [
    { heading: 'Target (Pa)', why: 'it is the intended pressure, not the measured one' },
    { heading: '', why: 'no result needs it' },
  ],
  'log-total/mean': [{ cell: 'Log!F6' }],
  'log-total/sum': [{ cell: 'Log!F6' }],
  'log-pressures-in-headings': [],
  'log-fans': [],
  'log-row-left-out': [
    { why: rowReasons.struck },
    { why: rowReasons.error },
    { why: rowReasons.noPressure },
    { why: rowReasons.noFlow },
    { why: rowReasons.cellSays('flow', 'door opened') },
    { why: rowReasons.rowSays('repeat') },
  ],
  'log-row-left-out/summary': [
    { why: rowReasons.summary('Mean') },
    { why: rowReasons.mean },
    { why: rowReasons.empty },
    { why: rowReasons.sampleOf('Log!A12') },
  ],
  'log-remark/between': [{ text: 'door opened, started again' }, { text: 'a very long remark '.repeat(8) }],
  'log-row-left-out/answered': [
    { why: rowReasons.grey('written') },
    { why: rowReasons.columnSays('Used', 'no', 'Log!F9') },
    { why: rowReasons.columnEmpty('Used', 'Log!F9') },
    { why: rowReasons.bracketed },
  ],
  'log-row-left-out/beside': [{ value: 412.6, cell: 'Log!C9', struck: 'Log!B9' }],
  'log-row-doubt': [
    { why: rowReasons.grey('shaded') },
    { why: rowReasons.grey('coloured') },
    { why: rowReasons.noteBelow('started again', 'Log!A15') },
    { why: rowReasons.commentSays('Log!B9', 'leave out, gust') },
    { why: rowReasons.tenfold('pressure', 'ten times') },
    { why: rowReasons.tenfold('flow', 'a tenth of') },
  ],
  'log-left-out/unnamed': [],
  'log-left-out/copied': [{ original: "'Haus A'!B9" }],
  'log-no-heading': [],
  'log-unit/device': [{ unit: 'cfm' }],
  'log-unit/device-pressure': [{ unit: 'hPa' }],
  'log-brackets': [],
  'log-normal-flow': [{ factor: 1.07321984 }],
  'log-step-means': [{ heading: 'Step', rows: 24, readings: 8 }],
  'log-measured-pressure': [{ measured: 'Log!B9', induced: 'Log!C9' }],
  'log-unusual-leakage': [{ n50: 192.3 }, { n50: 0.034 }],
  'log-unit-elsewhere': [
    { what: 'flows', unit: 'L/s', where: 'Log!A1' },
    { what: 'pressures', unit: 'Pa', where: undefined },
  ],
  'log-unit-likely/pressures': [{ highest: 61.2 }],
  'log-unit-proven/flows': [{ unit: 'm³/h', result: 1.52, cell: 'Log!B22' }],
  'log-answer': [{ field: 'internal volume', answer: '412.6 m3' }],
  'log-answer/instead': [{ field: 'internal volume', answer: '412.6 m3', before: '421.6 m³' }],
  'log-name-of-file': [
    { name: 'plot-7', of: 'file' },
    { name: 'Plot 7', of: 'test' },
  ],
  'log-date-after-file': [{ date: '2027-10-14', changed: '2026-10-15' }],
  'log-date-of-file/only': [{ date: '2026-10-14' }],
  'log-date-of-file': [{ date: '2026-10-14' }],
  'log-method/named': [{ method: 'EN 13829:2001' }],
  'log-target': [
    { quantity: 'n50', limit: 0.6 },
    { quantity: 'qE50', limit: 3 },
  ],
  'log-target/several': [],
  'log-target/no-area': [{ quantity: 'qE50' }, { quantity: 'qF50' }],
  'log-method/assumed': [],
  'log-volume-of-sides': [{ text: '12.4 x 8.2 x 2.5 m', amount: 254.2, unit: 'm³' }],
  'log-left-out/no-unit': [{ label: 'Envelope' }],
  'log-left-out/areas': [
    { labels: ['Plan area'], more: false },
    { labels: ['Plan area', 'Area 2'], more: true },
  ],
  'log-left-out/volume': [
    { label: 'Gross volume', value: 512, unit: 'm³', why: 'it is not the internal volume' },
    {
      label: 'Vol 2',
      value: 512,
      unit: undefined,
      why: '"Net volume" is more clearly the internal volume',
    },
  ],
  'log-unit-proven/volume': [{ value: 412, unit: 'm³', by: 'floor area' }],
  'log-unit-likely/temperature': [
    { value: 21, indoors: true, unit: '°C', other: '°F' },
    { value: -4.5, indoors: false, unit: '°C', other: '°F' },
  ],
  'log-sea-level': [],
  'log-sea-level/left-out': [],
  'log-unit-likely/barometer': [{ value: 1013, unit: 'hPa' }],
  'log-unit-likely/humidity': [
    { value: 0.5, share: true },
    { value: 50, share: false },
  ],
  'log-several-values': [{ field: 'indoor temperature' }],
  'log-result-confirmed': [{ label: 'n50', logged: '1.52', read: '1.53' }],
  'log-result-differs': [
    { label: 'n50', logged: '1.52', read: '1.82', off: 0.2 },
    { label: 'n50', logged: '1.52', read: '1.22', off: -0.2 },
  ],
}

/** The same of several homes. */
export const homesSamples: SamplesOf<typeof homesTexts> = {
  'home-altered': [
    { file: 'Flat-3.xlsx', altered: 'The record was changed after the workbook was written.' },
  ],
  'homes-not-valid': [{ count: 1 }, { count: 3 }],
  'homes-rule/of-target': [],
  'homes-rule/none': [],
  'homes-sampled': [],
  'homes-guarded/some': [
    { guarded: 1, homes: 6 },
    { guarded: 4, homes: 6 },
  ],
  'homes-guarded/each': [{ logged: true }, { logged: false }],
  'homes-guarded/summed': [{ logged: true }, { logged: false }],
  'homes-twice': [
    { names: ['Plot 3 (invented)'] },
    { names: Array.from({ length: 9 }, (_, i) => `Plot ${i + 1} (invented)`) },
  ],
  'homes-instruments': [{ count: 1 }, { count: 3 }],
  'homes-sample/unknown': [{ tested: 4, homes: 20 }],
  'homes-sample/too-few': [
    { missing: 1, needed: 4, homes: 20 },
    { missing: 3, needed: 4, homes: 20 },
  ],
}

/** The same of values typed or picked on the page. */
export const pageSamples: SamplesOf<typeof pageTexts> = {
  'reading-unfinished': [{ direction: 'depressurisation', reading: 1 }],
  'run-unfinished': [
    { direction: 'depressurisation', count: 1, fewest: 3 },
    { direction: 'pressurisation', count: 2, fewest: 3 },
  ],
  'part-unfinished': [
    { part: 'The take-off', problem: 'enter the length', more: 0 },
    { part: 'The plan', problem: 'enter the target', more: 2 },
    { part: 'the plan', problem: 'enter the target.', more: 1 },
  ],
  'sign-by-direction': [],
  'sign-by-direction/other': [{ direction: 'pressurisation', reading: 0 }],
  'averaging-time': [{ direction: 'depressurisation', series_s: 30, typed_s: '20' }],
  'series-changed': [],
}
