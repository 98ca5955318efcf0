import { interpretLog, openLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { book, type Rows, sheetOf } from '../support/book'
import {
  closeTo,
  dep,
  FORM,
  HEADINGS,
  HOUSE,
  n50Of,
  type OddRun,
  pres,
  read,
  sheetOfForm,
  zeroRows,
} from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const beside: Rows = dep.readings.map((row, index) => [index + 1, ...row, ...(pres.readings[index] ?? [])])
const close = closeTo(0.0008)
const questionsOf = (bytes: Uint8Array) =>
  interpretLog(openLog(bytes, 'log.xlsx')).questions.map(({ text }) => text)

it.each(['OK?', 'v', 'Counted'])('asks what noughts and ones headed "%s" mean', async (heading) => {
  const bytes = await sheetOfForm([
    ...zeroRows(dep),
    [...HEADINGS, heading],
    [-47, 999, 0],
    ...dep.readings.map((row) => [...row, 1]),
  ])
  const open = read(bytes)
  expect(open.asked.length > 0 || /was left out/.test(open.said.join('\n'))).toBe(true)
  close(open.n50 ?? read(bytes, { 'readings.remarked': 'leave out' }).n50, n50Of([dep]))
})

it('takes numbered titles of the two directions for the runs of one test', async () => {
  const { tests, n50 } = read(
    await sheetOfForm([
      ['Messung 1: Unterdruck'],
      ...zeroRows(dep),
      HEADINGS,
      ...dep.readings,
      [null],
      ['Messung 2: Überdruck'],
      ...zeroRows(pres),
      HEADINGS,
      ...pres.readings,
    ]),
  )
  expect(tests).toBe(1)
  close(n50, n50Of([dep, pres]))
})

it('keeps units behind the values of a form out of the headings below', async () => {
  const { n50, asked } = read(
    await sheetOfForm([
      ['Pre-test baseline', dep.before, 'Pa'],
      ['Post-test baseline', dep.after, 'Pa'],
      ['House pressure (Pa)', 'Ring', 'Fan pressure (Pa)', 'Flow (m³/h)'],
      ...dep.readings.map(([p, q]) => [p, 'A', (q / 54) ** 2, q]),
    ]),
  )
  expect(asked).toEqual([])
  close(n50, n50Of([dep]))
})

describe('zero flow of two directions', () => {
  it('below headings far above its row goes by them', async () => {
    const { n50 } = read(
      await sheetOfForm([
        [null, 'Depressurisation', 'Pressurisation'],
        ['q50 (m³/h)', 510, 514],
        ['n', 0.65, 0.65],
        ['r²', 0.999, 0.999],
        ['C', 40, 40.3],
        ['n50', 1.3, 1.3],
        ['Zero flow before (Pa)', dep.before, pres.before],
        ['Zero flow after (Pa)', dep.after, pres.after],
        [null, 'Depressurisation', null, 'Pressurisation'],
        ['No', ...HEADINGS, ...HEADINGS],
        ...beside,
      ]),
    )
    close(n50, n50Of([dep, pres]))
  })

  it('in a row for each direction goes by the rows', async () => {
    const { n50 } = read(
      await sheetOfForm([
        [null, 'Zero flow before (Pa)', 'Zero flow after (Pa)'],
        ['Depressurisation', dep.before, dep.after],
        ['Pressurisation', pres.before, pres.after],
        [null, 'Depressurisation', null, 'Pressurisation'],
        ['No', ...HEADINGS, ...HEADINGS],
        ...beside,
      ]),
    )
    close(n50, n50Of([dep, pres]))
  })
})

describe('volumes', () => {
  const withVolumes = (...volumes: Rows) =>
    book({
      Test: [
        ...FORM.filter(([label]) => label !== 'Internal volume (m³)'),
        ...volumes,
        [null],
        ...zeroRows(dep),
        HEADINGS,
        ...dep.readings,
      ],
    })
  const ground = 201.3
  const upper = Number((HOUSE.volume_m3 - ground).toFixed(1))

  it('of the floors are the parts of their total', async () => {
    const { n50, asked } = read(
      await withVolumes(
        ['Volume ground floor', ground, 'm³'],
        ['Volume upper floor', upper, 'm³'],
        ['Volume total', HOUSE.volume_m3, 'm³'],
      ),
    )
    expect(asked).toEqual([])
    close(n50, n50Of([dep]))
  })

  it('of the floors without a total are asked about, and may be added', async () => {
    const { asked, choices } = read(
      await withVolumes(['Volume GF', ground, 'm³'], ['Volume 1F', upper, 'm³']),
    )
    expect(asked).toEqual(['building.volume_m3'])
    expect(choices).toContain(`${HOUSE.volume_m3} m3`)
  })

  it('as a sum in one text are asked about, and the question names the cell', async () => {
    const bytes = await withVolumes(['Volume (m³)', '201.3 + 211.3 = 412.6'])
    expect(questionsOf(bytes)).toEqual([
      expect.stringMatching(/Cell B\d+ says "?“?201\.3 \+ 211\.3 = 412\.6”?"?, which is not one number/),
    ])
    close(read(bytes, { 'building.volume_m3': '412.6 m3' }).n50, n50Of([dep]))
  })

  it('in litres are offered in m³', async () => {
    const { choices } = read(await withVolumes(['Volume GF', 201_300, 'l'], ['Volume 1F', upper * 1000, 'l']))
    expect(choices).toContain('201.3 m3')
  })
})

it.each(['± (m³/h)', 's (m³/h)', '+/- m³/h'])('takes no spread headed "%s" for flows', async (heading) => {
  const rows = dep.readings.map(([p, q]) => [p, 0.4, q, q * 0.02])
  const { n50, asked } = read(
    await sheetOfForm([...zeroRows(dep), [HEADINGS[0], '± (Pa)', HEADINGS[1], heading], ...rows]),
  )
  expect(asked).toEqual([])
  close(n50, n50Of([dep]))
})

it('reads pressures and flows logged in two units once', async () => {
  const { n50, asked } = read(
    await sheetOfForm([
      ...zeroRows(dep),
      ['Pressure', null, 'Flow', null],
      ['Pa', 'in. w.c.', 'm³/h', 'cfm'],
      ...dep.readings.map(([p, q]) => [
        p,
        Number((p / 249.09).toFixed(3)),
        q,
        Number((q / 1.699).toFixed(1)),
      ]),
    ]),
  )
  expect(asked).toEqual([])
  close(n50, n50Of([dep]))
})

it('takes no temperature at the fan for that of the rooms', async () => {
  const { record } = read(
    await sheetOfForm([['Temp. in fan (°C)', 24.5], ...zeroRows(dep), HEADINGS, ...dep.readings]),
  )
  expect(record?.conditions.indoorTemperature_C).toBe(HOUSE.indoor_C)
})

it('takes no mean of both directions for the flow of one', async () => {
  const { n50, asked } = read(
    await sheetOfForm([
      ['dep zero before (Pa)', dep.before, 'pres zero before (Pa)', pres.before],
      ['dep zero after (Pa)', dep.after, 'pres zero after (Pa)', pres.after],
      ['dep Δp (Pa)', 'dep q (m³/h)', 'pres Δp (Pa)', 'pres q (m³/h)', 'mean q (m³/h)'],
      ...beside.map(
        ([, p1, q1, p2, q2]) => [p1, q1, p2, q2, ((q1 as number) + (q2 as number)) / 2] as Rows[0],
      ),
    ]),
  )
  expect(asked).toEqual([])
  close(n50, n50Of([dep, pres]))
})

describe('flows that are formulas without a stored result', () => {
  it.each([
    ['behind fan pressures', ['Pressure (Pa)', 'Fan pressure (Pa)', 'Flow (m³/h)']],
    ['alone', ['Pressure (Pa)', 'Gauge reading', 'Flow (m³/h)']],
  ])('%s are refused with the cell and what to do', async (_, headings) => {
    const rows: Rows = dep.readings.map(([p, q]) => [p, (q / 54) ** 2, { formula: 'B1*3.6' }])
    const { problems, n50 } = read(await sheetOfForm([...zeroRows(dep), headings, ...rows]))
    expect(n50).toBeUndefined()
    expect(problems.join('\n')).toMatch(/formula without a stored result: open the log/)
  })
})

it('gives two zero-flow values in a row to the two runs in their order, with a caution', async () => {
  const { n50, said } = read(
    await sheetOfForm([
      ['Zero flow before (Pa)', dep.before, pres.before],
      ['Zero flow after (Pa)', dep.after, pres.after],
      [null],
      [null, 'Depressurisation', null, 'Pressurisation'],
      ['No', ...HEADINGS, ...HEADINGS],
      ...beside,
    ]),
  )
  expect(said.join('\n')).toMatch(/used in the order of the runs/)
  close(n50, n50Of([dep, pres]))
})

it('takes extremes behind a zero-flow mean for no values', async () => {
  const { n50 } = read(
    await sheetOfForm([
      ['Zero flow before (Pa)', dep.before, 'min', -3.1, 'max', 0.2],
      ['Zero flow after (Pa)', dep.after, 'min', -2.4, 'max', 0.4],
      HEADINGS,
      ...dep.readings,
    ]),
  )
  close(n50, n50Of([dep]))
})

it('refuses a mass flow by name', async () => {
  const rows: Rows = dep.readings.map(([p, q]) => [p, q / 3000])
  const { problems } = read(await sheetOfForm([...zeroRows(dep), ['Pressure (Pa)', 'Flow (kg/s)'], ...rows]))
  expect(problems.join('\n')).toMatch(/kg\/s is a mass flow/)
})

describe('a hidden column', () => {
  const hiding = (...columns: number[]) =>
    sheetOfForm(
      [
        [null, 'Depressurisation', null, 'Pressurisation'],
        ['No', ...HEADINGS, ...HEADINGS],
        ['zero before', dep.before, null, pres.before],
        ...beside,
        ['zero after', dep.after, null, pres.after],
      ],
      (workbook) => {
        for (const column of columns) sheetOf(workbook, 'Test').getColumn(column).hidden = true
      },
    )

  it('of pressures does not hide the run, and it is said', async () => {
    const { n50, said } = read(await hiding(4))
    expect(said.join('\n')).toMatch(/in a hidden column, but it was read/)
    close(n50, n50Of([dep, pres]))
  })

  it('beside another with the flows hides a run', async () => {
    const { record, n50 } = read(await hiding(4, 5))
    expect(record?.runs.map(({ direction }) => direction)).toEqual(['depressurisation'])
    close(n50, n50Of([dep]))
  })
})

it('takes no label for the value of the label before it, where values stand below', async () => {
  const form = FORM.slice(0, 6)
  const { record, asked } = read(
    await book({
      Test: [
        form.map(([label]) => label ?? null),
        form.map(([, value]) => value ?? null),
        [null],
        ...zeroRows(dep),
        HEADINGS,
        ...dep.readings,
      ],
    }),
  )
  expect(asked).toEqual([])
  expect(record?.building.name).toBe('Pear Tree Barn')
  expect(record?.building.volume_m3).toBe(HOUSE.volume_m3)
})

describe('a zero flow in a line with more than its value', () => {
  it.each([
    ['the mean before its values', ['Zero flow', 'Mean', 0, 'Values', -0.3, 0.3, 0]],
    ['the mean behind its values', ['Zero flow', -0.3, 0.3, 0, 'avg', 0]],
    ['extremes first', ['Zero flow', 'min', -2, 'max', 2, 'mean', 0]],
  ] as [string, (string | number)[]][])('is read from %s', async (_, line) => {
    const lineOf = (which: string, zero: number) =>
      line.map((one, index) =>
        index === 0 ? `${one} ${which} (Pa)` : typeof one === 'number' ? zero + one : one,
      )
    const { n50 } = read(
      await sheetOfForm([
        lineOf('before', dep.before),
        lineOf('after', dep.after),
        HEADINGS,
        ...dep.readings,
      ]),
    )
    close(n50, n50Of([dep]))
  })

  it('is the one of all values, not that of one sign', async () => {
    const { n50 } = read(
      await sheetOfForm([
        [null, 'Δp0', 'Δp0+', 'Δp0-'],
        ['before (Pa)', dep.before, 0.2, -1.6],
        ['after (Pa)', dep.after, 0.3, -1.2],
        HEADINGS,
        ...dep.readings,
      ]),
    )
    close(n50, n50Of([dep]))
  })

  it('is read where only the second line says when', async () => {
    const { record } = read(
      await sheetOfForm([
        ['Baseline', dep.before, 'Pa'],
        ['Post baseline', dep.after, 'Pa'],
        HEADINGS,
        ...dep.readings,
      ]),
    )
    expect(record?.runs[0]?.zeroFlowBefore_Pa).toEqual([dep.before])
    expect(record?.runs[0]?.zeroFlowAfter_Pa).toEqual([dep.after])
  })
})

describe('a direction said in words', () => {
  it('is no temperature: "Blowing in" before its zero flow', async () => {
    const line = (word: string, { before, after }: OddRun) => [
      word,
      'zero before',
      before,
      'zero after',
      after,
    ]
    const across = (word: string, run: OddRun): Rows => [
      line(word, run),
      ['dp [Pa]', ...run.readings.map(([p]) => p)],
      ['V [m³/h]', ...run.readings.map(([, q]) => q)],
    ]
    const { record, n50 } = read(
      await sheetOfForm([...across('Suction', dep), [null], ...across('Blowing in', pres)]),
    )
    expect(record?.conditions.indoorTemperature_C).toBe(HOUSE.indoor_C)
    close(n50, n50Of([dep, pres]))
  })
})

it.each(['Atm. press.', 'Air press.', 'Site pres.'])(
  'takes "%s" above the zero flow for a pressure of the air, and not for a pressurisation',
  async (label) => {
    const form = FORM.map((row) => (String(row[0]).startsWith('Barometer') ? [label, 100.84, 'kPa'] : row))
    const { n50, asked } = read(
      await book({ Test: [...form, ...zeroRows(dep), ['Depressurisation'], HEADINGS, ...dep.readings] }),
    )
    expect(asked).toEqual([])
    close(n50, n50Of([dep]))
  },
)

describe('a column "Use?"', () => {
  const marked = (mark: (index: number) => string | null) =>
    sheetOfForm([
      ...zeroRows(dep),
      [...HEADINGS, 'Use?'],
      ...dep.readings.map((row, index) => [...row, mark(index)]),
    ])

  it('is asked about where it marks one reading alone', async () => {
    const { asked, texts } = read(await marked((index) => (index === 2 ? 'x' : null)))
    expect(asked).toEqual(['readings.remarked'])
    expect(texts.join()).toMatch(/"Use\?" says "x"/)
  })

  it('is asked about where it leaves one reading alone unmarked', async () => {
    const { asked, texts } = read(await marked((index) => (index === 2 ? null : 'x')))
    expect(asked).toEqual(['readings.remarked'])
    expect(texts.join()).toMatch(/C\d+ in column "Use\?" is empty/)
  })

  it('says nothing where it marks all', async () => {
    const { asked, n50 } = read(await marked(() => 'x'))
    expect(asked).toEqual([])
    close(n50, n50Of([dep]))
  })
})
