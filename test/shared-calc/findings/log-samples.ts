import type { LogFindingId, logCatalogue } from '../../../shared-calc/src/catalogue/findings/log/index.js'
import type { LogParams } from '../../../shared-calc/src/catalogue/findings/log/log-text.js'

type ParamsOf<Id extends LogFindingId> = LogParams<(typeof logCatalogue)[Id]>
type Samples = { [Id in LogFindingId]: unknown extends ParamsOf<Id> ? [] : ParamsOf<Id>[] }

const averaged = { samples: 300, mean: -50.12, deviation: 0.423, drift: -0.1, few: false } as const

/** Parameters as a log may give them, every case of every message at least once. The type asks for each id. */
export const logSamples: Samples = {
  'log-formula': [],
  'log-struck-through/part': [{ rest: '50.2' }],
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
  'log-remark': [{ remark: 'gust, door opened' }, { remark: 'a very long remark '.repeat(8) }],
  'log-unit': [
    { unit: 'cfm', conversion: '1 cfm = 1.6990108 m³/h' },
    { what: 'flows', unit: 'L/s', conversion: '1 L/s = 3.6 m³/h' },
    { what: 'pressures', unit: 'hPa', conversion: '1 hPa = 100 Pa' },
  ],
  'log-unit/clock': [],
  'log-unit-in-cell': [{ unit: 'mbar' }],
  'log-unit-in-format': [{ unit: 'hPa', expected: 'Pa' }],
  'log-unit-assumed': [{ unit: 'm³/h' }],
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
  'log-short-year': [{ year: '2026' }],
  'log-word': [{ word: 'Nettovolumen', read: 'net' }],
  'log-row-skipped': [],
  'log-row-skipped/marked': [{ mark: 'void' }],
  'log-gap': [],
  'log-summary-row': [{ mark: 'Mean' }],
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
  'log-date-system': [],
  'log-layout': [
    { name: 'Our log', why: 'given' },
    { name: 'Our log', why: 'saved' },
    { name: 'Our log', why: 'fits' },
    { name: 'Our log', why: 'answers' },
  ],
  'record-altered': [],
  'log-proposal': [{ confidence: 0.623 }],
  'log-hidden-test': [{ names: ['Plot 3'] }, { names: ['Plot 3', 'Plot 4'] }],
  'log-other-tests': [{ names: ['Plot 3'] }, { names: ['Plot 3', 'Plot 4', 'Plot 5'] }],
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
  'log-series-drift': [{ mean: -50.2, drift: 3.1, time_s: 20, limit: 2 }],
  'log-series-short': [{ mean: -50.2, held_s: 12, time_s: 20 }],
  'log-series-no-zero-flow': [{ which: 'before' }, { which: 'before or after' }],
  'log-series-slow': [{ step_s: 10 }],
  'log-series-gap': [{ gap_s: 34 }],
  'log-series-zero-flow': [
    { values: 1, each_s: 30 },
    { values: 30, each_s: 1 },
  ],
  'log-series-zero-short': [{ held_s: 12, needed_s: 30 }],
  'log-midnight': [],
}
