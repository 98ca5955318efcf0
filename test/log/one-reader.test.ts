import { gridFromRanges, interpretLog, parseLayout, readGrid } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { readEntries } from '../../addin/src/calc/read-entries'
import { emptyEntries, type TestEntries } from '../../addin/src/pane/one-test/entries'
import { randomFrom } from './generated/random'

/*
 * The same cells through the three ways into a record: picked by hand in the pane, by a layout that names their ranges, and
 * understood from their headings. What must come out is known from how the sheet was made.
 * Factors: 1 L/s = 3.6 m³/h and 1 hPa = 100 Pa by definition; 1 cfm = 1.69901082 m³/h from the international foot of 0.3048 m.
 */
const FLOW_UNITS = { 'm³/h': 1, 'L/s': 3.6, cfm: 1.69901082 } as const
const PRESSURE_UNITS = { Pa: 1, hPa: 100 } as const

type Where = 'brackets' | 'comma' | 'row of units' | 'in each cell'
type Dirt = 'none' | 'struck' | 'word' | 'error' | 'blank flow' | 'decimal commas' | 'number as text'

interface Made {
  readonly range: Parameters<typeof gridFromRanges>[0][number]
  readonly first: number
  readonly last: number
  /** Pressure and flow of every reading that counts, in Pa and m³/h, with its row. */
  readonly readings: readonly { row: number; pressure: number; flow: number }[]
  readonly zero: readonly number[]
  /** The cell that must be named, and by which rules it may be. */
  readonly fault: { cell: string; rules: readonly string[] } | undefined
}

const wheres: readonly Where[] = ['brackets', 'comma', 'row of units', 'in each cell']
const dirts: readonly Dirt[] = [
  'none',
  'struck',
  'word',
  'error',
  'blank flow',
  'decimal commas',
  'number as text',
]

function make(seed: number, where: Where, dirt: Dirt): Made {
  const { next } = randomFrom(seed)
  const flowUnit = (['m³/h', 'L/s', 'cfm'] as const)[Math.floor(next() * 3)] ?? 'm³/h'
  const pressureUnit = next() < 0.7 ? ('Pa' as const) : ('hPa' as const)
  const decimals = { pressure: pressureUnit === 'Pa' ? 1 : 3, flow: 1 }
  const comma = dirt === 'decimal commas'
  const written = (value: number, unit: string, digits: number): string | number => {
    const rounded = Number(value.toFixed(digits))
    const text = comma ? rounded.toFixed(digits).replace('.', ',') : String(rounded)
    if (where === 'in each cell') return `${text} ${unit}`
    return comma ? text : rounded
  }
  const head = (name: string, unit: string): string =>
    where === 'brackets' ? `${name} [${unit}]` : where === 'comma' ? `${name}, ${unit}` : name
  const rows: (string | number)[][] = [
    ['Building', 'House of the test (invented)'],
    [head('Zero flow before', pressureUnit)],
  ]
  const zero = [0, 1, 2].map(() => Number((-0.4 - next() * 0.5).toFixed(pressureUnit === 'Pa' ? 1 : 3)))
  const zeroShown = zero.map((value) => (pressureUnit === 'Pa' ? value : Number((value / 100).toFixed(4))))
  rows[1] = [
    head('Zero flow before', pressureUnit),
    ...zeroShown.map((value) => written(value, pressureUnit, 4)),
  ]
  rows.push([], [head('Building pressure', pressureUnit), head('Air flow', flowUnit)])
  if (where === 'row of units') rows.push([pressureUnit, flowUnit])
  const first = rows.length + 1
  const c = 30 + next() * 60
  const n = 0.58 + next() * 0.12
  const readings: { row: number; pressure: number; flow: number }[] = []
  for (let step = 0; step < 7; step++) {
    const shownPressure = Number(
      ((-65 + step * 7.5) / PRESSURE_UNITS[pressureUnit]).toFixed(decimals.pressure),
    )
    const pressure = shownPressure * PRESSURE_UNITS[pressureUnit]
    const shownFlow = Number(((c * Math.abs(pressure) ** n) / FLOW_UNITS[flowUnit]).toFixed(decimals.flow))
    readings.push({ row: first + step, pressure, flow: shownFlow * FLOW_UNITS[flowUnit] })
    rows.push([
      written(shownPressure, pressureUnit, decimals.pressure),
      written(shownFlow, flowUnit, decimals.flow),
    ])
  }
  const at = 1 + Math.floor(next() * 5)
  const row = rows[first - 1 + at] as (string | number)[]
  const valueTypes = rows.map((cells) => cells.map(() => 'String'))
  const struck = rows.map((cells) => cells.map(() => false))
  const left = ['struck', 'word', 'error', 'blank flow'].includes(dirt)
  if (dirt === 'struck') (struck[first - 1 + at] as boolean[])[1] = true
  if (dirt === 'word') row[1] = 'gust'
  if (dirt === 'error') {
    row[1] = '#DIV/0!'
    ;(valueTypes[first - 1 + at] as string[])[1] = 'Error'
  }
  if (dirt === 'blank flow') row[1] = ''
  if (dirt === 'number as text') row[1] = String(row[1])
  const width = Math.max(...rows.map(({ length }) => length))
  const wide = <T>(cells: readonly T[], fill: T): T[] => [...cells, ...Array(width - cells.length).fill(fill)]
  return {
    range: {
      sheet: 'Log',
      address: 'A1',
      values: rows.map((cells) => wide(cells, '')),
      valueTypes: valueTypes.map((cells) => wide(cells, 'String')),
      struck: struck.map((cells) => wide(cells, false)),
    },
    first,
    last: first + 6,
    readings: left ? readings.filter((_, index) => index !== at) : readings,
    zero: zeroShown.map((value) => value * PRESSURE_UNITS[pressureUnit]),
    fault: left ? { cell: `Log!B${first + at}`, rules: RULES[dirt] ?? [] } : undefined,
  }
}

const RULES: Partial<Record<Dirt, readonly string[]>> = {
  struck: ['log-struck-through'],
  word: ['log-placeholder'],
  error: ['log-error-value'],
  'blank flow': ['log-incomplete'],
}

interface Read {
  readonly readings: readonly { pressure_Pa?: unknown; flow_m3_h?: unknown }[]
  readonly zero: readonly unknown[]
  readonly findings: readonly {
    rule: string
    severity: string
    message: string
    cells?: readonly string[] | undefined
  }[]
}

type RunShape = { readings: Read['readings']; zeroFlowBefore_Pa?: readonly unknown[] | undefined }

const ways: Readonly<Record<string, (made: Made) => Read>> = {
  'picked in the pane': ({ range, first, last }) => {
    const entries: TestEntries = {
      ...emptyEntries(),
      runs: {
        depressurisation: {
          zeroFlowBefore: { reference: 'Log!B2:D2' },
          pressure: { reference: `Log!A${first}:A${last}` },
          flow: { reference: `Log!B${first}:B${last}` },
        },
      },
    }
    const { runs, told } = readEntries(entries, gridFromRanges([range]))
    return asRead(runs[0], told.findings())
  },
  'by a layout': ({ range, first, last }) => {
    const layout = parseLayout({
      format: 'draughtbook/layout@1',
      name: 'ranges',
      constants: {
        'building.name': 'House',
        'building.volume_m3': 300,
        'test.date': '2026-10-14',
        'test.method': 'iso-9972:2015',
        'conditions.indoorTemperature_C': 20,
        'conditions.outdoorTemperature_C': 8,
      },
      fields: [],
      runs: [
        {
          direction: 'depressurisation',
          zeroFlowBefore: { at: { range: 'B2:D2' } },
          pressure: { at: { range: `A${first}:A${last}` } },
          flow: { at: { range: `B${first}:B${last}` } },
        },
      ],
    })
    const { tests, problems } = readGrid(gridFromRanges([range]), { layout })
    expect(problems).toEqual([])
    return asRead(tests[0]?.record?.runs[0], tests[0]?.findings ?? [])
  },
  understood: ({ range }) => {
    const answers = {
      'building.volume_m3': '300',
      'test.date': '2026-10-14',
      'conditions.indoorTemperature_C': '20 °C',
      'conditions.outdoorTemperature_C': '8 °C',
    }
    const { tests } = interpretLog(gridFromRanges([range]), { answers })
    expect(tests[0]?.questions).toEqual([])
    return asRead(tests[0]?.record?.runs[0], tests[0]?.findings ?? [])
  },
}

const asRead = (run: RunShape | undefined, findings: Read['findings']): Read => ({
  readings: run?.readings ?? [],
  zero: run?.zeroFlowBefore_Pa ?? [],
  findings,
})

const cases = wheres.flatMap((where) => dirts.map((dirt): [Where, Dirt] => [where, dirt]))

describe.each(cases)('units in %s, %s', (where, dirt) => {
  const seeds = [1, 2, 3].map((nth) => nth * 1000 + cases.findIndex(([a, b]) => a === where && b === dirt))

  it.each(Object.entries(ways))('%s: the readings that were written', (_way, read) => {
    for (const seed of seeds) {
      const made = make(seed, where, dirt)
      const { readings, zero, findings } = read(made)
      expect(readings).toHaveLength(made.readings.length)
      for (const [index, { pressure, flow }] of made.readings.entries()) {
        expect(readings[index]?.pressure_Pa).toBeCloseTo(pressure, 6)
        expect(Number(readings[index]?.flow_m3_h) / flow).toBeCloseTo(1, 6)
      }
      expect(zero).toHaveLength(made.zero.length)
      for (const [index, value] of made.zero.entries()) expect(zero[index]).toBeCloseTo(value, 6)
      const { fault } = made
      if (!fault) continue
      const row = fault.cell.replace(/^Log!B/, '')
      const told = findings.filter(({ rule }) => fault.rules.includes(rule))
      expect(told.flatMap(({ cells = [] }) => cells).join()).toMatch(new RegExp(`Log![AB]${row}`))
      expect(told.every(({ severity }) => severity === 'caution')).toBe(true)
    }
  })

  it('says the same of the same cells in the pane and by a layout', () => {
    const of = (way: string, made: Made) =>
      ways[way]?.(made)
        .findings.filter(({ rule }) => !['log-layout', 'log-constant'].includes(rule))
        .map(({ rule, severity, message, cells }) => ({ rule, severity, message, cells }))
    for (const seed of seeds) {
      const made = make(seed, where, dirt)
      expect(of('picked in the pane', made)).toEqual(of('by a layout', made))
    }
  })
})

describe('what the cells leave open', () => {
  const unstated = (): Made => {
    const made = make(7, 'brackets', 'none')
    const values = made.range.values.map((row) =>
      row.map((value) => (typeof value === 'string' ? value.replace(/ \[[^\]]*\]/, '') : value)),
    )
    return { ...made, range: { ...made.range, values } }
  }

  it('is a question in the pane, a fault of the layout, a question of the understood log: never m³/h', () => {
    const { range, first, last } = unstated()
    const entries: TestEntries = {
      ...emptyEntries(),
      runs: {
        depressurisation: {
          pressure: { reference: `Log!A${first}:A${last}` },
          flow: { reference: `Log!B${first}:B${last}` },
        },
      },
    }
    const picked = readEntries(entries, gridFromRanges([range]))
    expect(picked.runs).toEqual([])
    expect(picked.questions.map(({ path }) => path)).toContain('flow.unit')
    const layout = parseLayout({
      format: 'draughtbook/layout@1',
      name: 'ranges',
      fields: [],
      runs: [
        {
          direction: 'depressurisation',
          pressure: { at: { range: `A${first}:A${last}` } },
          flow: { at: { range: `B${first}:B${last}` } },
        },
      ],
    })
    const { problems } = readGrid(gridFromRanges([range]), { layout })
    expect(problems.map(({ code }) => code)).toContain('unknown-unit')
    const { questions } = interpretLog(gridFromRanges([range]))
    expect(questions.map(({ path }) => path)).toContain('flow.unit')
  })
})
