import { demoRecord } from './record'

export interface BadInput {
  what: string
  /** The file or body as it arrives. */
  body: string
  /** Field that the error must name. */
  path: string
  /** What the message must say. */
  says: RegExp
  /** Status through the HTTP door. */
  status: 400 | 422
}

type Draft = ReturnType<typeof demoRecord>

const changed = (change: (record: Draft) => void): string => {
  const record = demoRecord()
  change(record)
  return JSON.stringify(record)
}

/** The record with one value replaced by text that need not be JSON. */
const withText = (text: string): string =>
  JSON.stringify(demoRecord()).replace('"volume_m3":212.4', `"volume_m3":${text}`)

const unusable = (what: string, path: string, says: RegExp, change: (record: Draft) => void): BadInput => ({
  what,
  body: changed(change),
  path,
  says,
  status: 422,
})

const first = (record: Draft) => {
  const run = record.runs[0]
  if (!run) throw new Error('the demo record has no run')
  return run
}

const FLOW = 'runs[0].readings[2].flow_m3_h'
const setFlow = (value: unknown) => (record: Draft) =>
  void Object.assign(first(record).readings[2] ?? {}, { flow_m3_h: value })

/** Bad input of every kind that a log or a program can bring, with what its error must name. */
export const badInputs: readonly BadInput[] = [
  unusable('a missing field', 'building.name', /missing/, (record) => {
    Reflect.deleteProperty(record.building, 'name')
  }),
  unusable('a missing temperature', 'conditions.indoorTemperature_C', /missing/, (record) => {
    Reflect.deleteProperty(record.conditions, 'indoorTemperature_C')
  }),
  unusable('a negative volume', 'building.volume_m3', /−212.*between 1 and/, (record) => {
    record.building.volume_m3 = -212
  }),
  unusable('a negative flow', FLOW, /−96.*between/, setFlow(-96)),
  unusable('text for a number', FLOW, /must be a number in m³\/h, not the text "96,4"/, setFlow('96,4')),
  unusable('null for a number (what JSON makes of NaN)', FLOW, /not null/, setFlow(Number.NaN)),
  unusable('an absurd volume', 'building.volume_m3', /1e\+30.*between/, (record) => {
    record.building.volume_m3 = 1e30
  }),
  unusable('an absurd temperature', 'conditions.indoorTemperature_C', /292.*between −30 and 60/, (record) => {
    record.conditions.indoorTemperature_C = 292
  }),
  unusable('two runs in one direction', 'runs[1].direction', /both runs are marked depressurisation/, (r) => {
    for (const run of r.runs) run.direction = 'depressurisation'
  }),
  unusable('two readings', 'runs[0].readings', /at least 3 readings/, (record) => {
    first(record).readings.length = 2
  }),
  unusable('no run', 'runs', /no run/, (record) => {
    record.runs.length = 0
  }),
  unusable('equal pressures', 'runs[0].readings', /pressure/, (record) => {
    for (const reading of first(record).readings) reading.pressure_Pa = -50
  }),
  unusable('a zero pressure', 'runs[0].readings[0].pressure_Pa', /pressure/, (record) => {
    const run = first(record)
    run.zeroFlowBefore_Pa = [0]
    run.zeroFlowAfter_Pa = [0]
    Object.assign(run.readings[0] ?? {}, { pressure_Pa: 0 })
  }),
  unusable('an unknown key', 'building.colour', /unknown field/, (record) => {
    Object.assign(record.building, { colour: 'red' })
  }),
  unusable('an unknown method', 'test.method', /no test method "by eye"/, (record) => {
    record.test.method = 'by eye'
  }),
  unusable('an unknown target', 'target.preset', /"none such"/, (record) => {
    record.target = { preset: 'none such' }
  }),
  unusable('an impossible date', 'test.date', /2026-10-14/, (record) => {
    record.test.date = '2026-02-30'
  }),
  { what: 'NaN', body: withText('NaN'), path: 'building.volume_m3', says: /line 1, column \d+/, status: 400 },
  {
    what: 'Infinity',
    body: withText('Infinity'),
    path: 'building.volume_m3',
    says: /line 1, column/,
    status: 400,
  },
  {
    what: 'a number too large to hold',
    body: withText('1e999'),
    path: 'building.volume_m3',
    says: /not Infinity/,
    status: 422,
  },
  {
    what: 'a field given twice',
    body: withText('212.4,"volume_m3":300'),
    path: 'building.volume_m3',
    says: /appears twice/,
    status: 400,
  },
  { what: 'text that is no JSON', body: 'pressure;flow', path: '', says: /line 1, column 1/, status: 400 },
  {
    what: 'JSON cut off',
    body: JSON.stringify(demoRecord()).slice(0, 700),
    path: 'runs[0].readings[1].fl',
    says: /line 1, column/,
    status: 400,
  },
  { what: 'nothing', body: '', path: '', says: /empty|not valid JSON/, status: 400 },
  {
    what: 'nesting without end',
    body: '['.repeat(100_000),
    path: '',
    says: /nested more than 64/,
    status: 400,
  },
  {
    what: 'a list instead of a record',
    body: '[]',
    path: '',
    says: /must be a group of fields, not a list/,
    status: 422,
  },
]
