import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { evaluate, stagesResult, type TestRecord, workStages } from '@draughtbook/shared-calc'
import { writeStagesWorkbook } from '@draughtbook/shared-calc/stages'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { inventedRecord } from '../archive/invented-record'
import { commandLine } from '../service/support/command-line'
import { compareCached } from '../support/formula-cells'

const LIMIT = 0.6
const VOLUME = 300

function tested(plot: string, stage: string, n50: number, date: string, seed = 1): TestRecord {
  const record = inventedRecord(seed, { n50, plot, site: 'Invented Lane', date, volume: VOLUME })
  return {
    ...record,
    test: { ...record.test, stage },
    target: { quantity: 'n50', limit: LIMIT, referencePressure_Pa: 50, directions: 'mean' },
  } as TestRecord
}

const records = [
  tested('Plot 2', 'fabric', 0.3, '2026-03-02'),
  tested('Plot 2', 'after services', 0.45, '2026-05-02'),
  tested('Plot 2', 'acceptance', 0.55, '2026-07-02'),
  tested('Plot 10', 'fabric', 0.5, '2026-03-03'),
  tested('Plot 3', 'fabric', 0.41, '2026-03-04'),
]
const tests = records.map((record, i) => ({ file: `test-${i + 1}.xlsx`, record }))
const result = () => stagesResult(workStages({ tests }))

describe('the leakage of a plot over its stages', () => {
  it('is what the target allows, what each stage used and what is left, by arithmetic on the single tests', () => {
    const { stages } = result()
    const q = records.map((record) => evaluate(record).results.q50.value)
    const target = LIMIT * VOLUME
    const [fabric, services, acceptance] = stages
    expect(stages.map(({ plot, stage }) => `${plot}: ${stage}`)).toEqual([
      'Invented Lane, Plot 2: fabric',
      'Invented Lane, Plot 2: after services',
      'Invented Lane, Plot 2: acceptance',
      'Invented Lane, Plot 3: fabric',
      'Invented Lane, Plot 10: fabric',
    ])
    expect(fabric?.used_m3_h).toBeUndefined()
    expect(services?.used_m3_h).toBeCloseTo((q[1] ?? 0) - (q[0] ?? 0), 9)
    expect(acceptance?.left_m3_h).toBeCloseTo(target - (q[2] ?? 0), 9)
    expect(fabric?.allowed_m3_h).toBeCloseTo(0.7 * target, 9)
    // Orifice law with C = 0.61 and air of 1.204 kg/m³: A = q/(C·√(2Δp/ρ)).
    const area = ((target - (q[0] ?? 0)) / 3600 / (0.61 * Math.sqrt((2 * 50) / 1.2041))) * 1e4
    expect((fabric?.left_cm2 ?? 0) / area).toBeCloseTo(1, 3)
  })

  it('lets the next trade start where it is sure enough, and stops it where not', () => {
    expect(result().stages.map(({ decision }) => decision)).toEqual(['go', 'go', 'meets', 'stop', 'stop'])
    // 0.41 of at most 0.42: within, but not surely enough.
    const plot3 = result().stages[3]
    expect(plot3?.measured_m3_h).toBeLessThan(plot3?.allowed_m3_h ?? 0)
    expect(plot3?.probability).toBeGreaterThan(0.5)
    expect(plot3?.probability).toBeLessThan(0.8)
    const bold = stagesResult(workStages({ tests, confidence: 0.5 }))
    expect(bold.stages[3]?.decision).toBe('go')
  })

  it('counts what is left from the largest figure that meets a target which rounds', () => {
    // Rounded to one place, 0.63 is 0.6: the limit of 0.6 is met up to 0.65, so a plot that meets it has something left.
    const record = tested('Plot 4', 'acceptance', 0.63, '2026-07-03')
    const rounding = {
      ...record,
      target: { quantity: 'n50', limit: LIMIT, directions: 'mean', decimalPlaces: 1 },
    } as TestRecord
    const { results, decision } = evaluate(rounding, { uncertainty: true })
    expect(Math.round((results.n50?.value ?? 0) * 10) / 10).toBe(0.6)
    expect(results.n50?.value).toBeGreaterThan(0.6)
    const [plot] = stagesResult(workStages({ tests: [{ file: 'a.xlsx', record: rounding }] })).stages
    expect(plot?.decision).toBe('meets')
    expect(plot?.left_m3_h).toBeCloseTo(0.65 * VOLUME - results.q50.value, 6)
    expect(plot?.probability).toBeCloseTo(decision?.[0]?.probability ?? 0, 9)
  })

  it('has the probability of a normal distribution about the measured flow', () => {
    const plot3 = result().stages[3]
    const figure = evaluate(records[4] as TestRecord, { uncertainty: true }).uncertainty?.figures.find(
      ({ quantity }) => quantity === 'n50',
    )
    if (!plot3 || !figure) throw new Error('no budget')
    const z =
      (Math.log((0.7 * LIMIT) / figure.value) - figure.expectedCorrection) /
      figure.relativeStandardUncertainty
    // Abramowitz and Stegun, 26.2.17: within 7.5e-8. The t distribution with these degrees of freedom is within 0.02 of it.
    const t = 1 / (1 + 0.2316419 * Math.abs(z))
    const tail =
      (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) *
      t *
      (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))))
    expect(Math.abs(plot3.probability - (z > 0 ? 1 - tail : tail))).toBeLessThan(0.02)
  })

  it('leaves out, with the reason, tests without a target or a stage, and those tested again', () => {
    const none = tested('Plot 4', 'fabric', 0.3, '2026-03-02')
    delete none.target
    const unstaged = tested('Plot 5', 'fabric', 0.3, '2026-03-02')
    delete unstaged.test.stage
    const { leftOut, stages } = workStages({
      tests: [
        { file: 'a.xlsx', record: none },
        { file: 'b.xlsx', record: unstaged },
        { file: 'c.xlsx', record: tested('Plot 6', 'fabric', 0.5, '2026-03-02') },
        { file: 'd.xlsx', record: tested('Plot 6', 'fabric', 0.3, '2026-04-02') },
      ],
    })
    expect(leftOut.map(({ file, why }) => `${file}: ${why}`)).toEqual([
      expect.stringMatching(/^a\.xlsx: the test has no target/),
      'b.xlsx: the test does not state its stage; state it in the log, or evaluate the log with --stage',
      'c.xlsx: the plot was tested again at this stage (d.xlsx)',
    ])
    expect(stages.map(({ test }) => test.file)).toEqual(['d.xlsx'])
  })

  it('stops where a file was altered, and refuses shares that fall', () => {
    const [first] = tests
    if (!first) throw new Error('no test')
    const [stage] = workStages({
      tests: [{ ...first, altered: 'the record was changed after issue' }],
    }).stages
    expect([stage?.decision, stage?.why]).toEqual(['stop', 'the record was changed after issue'])
    const shares = { fabric: 0.9, 'after services': 0.5, acceptance: 1 }
    expect(() => workStages({ tests, shares })).toThrow(/must not decrease from stage to stage/)
  })
})

describe('the workbook of the stages', () => {
  it('holds formulas that LibreOffice works out to the stored results, and a picture of plots and stages', async () => {
    const bytes = await writeStagesWorkbook({ tests })
    expect(await compareCached(bytes)).toEqual([])
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load(bytes.slice().buffer)
    const site = workbook.getWorksheet('Site')
    const row = (number: number) => [1, 2, 3, 4, 5].map((column) => site?.getCell(number, column).text)
    const used = Math.round((100 * evaluate(records[0] as TestRecord).results.q50.value) / (LIMIT * VOLUME))
    expect(row(5).slice(0, 2)).toEqual(['Invented Lane, Plot 2', `${used} %, go`])
    expect(row(7).slice(2)).toEqual(['not tested', 'not tested', 'stop'])
  }, 60_000)
})

describe('stages on the command line', () => {
  let folder: string
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'draughtbook-stages-'))
    for (const [i, record] of records.slice(0, 2).entries())
      await writeFile(join(folder, `${i}.xlsx`), await writeSummaryWorkbook(record))
  })
  afterAll(() => rm(folder, { recursive: true, force: true }))

  it('says of each stage whether the next trade may start, and writes the workbook', async () => {
    const out = join(folder, 'stages.xlsx')
    const done = await commandLine('stages', folder, '--out', out, '--allow', '70,90')
    expect([done.code, done.err]).toEqual([0, []])
    expect(done.out).toMatch(
      /Plot 2, fabric: go \(90\.6 m³\/h measured, 126\.0 m³\/h allowed at this stage; 89\.4 m³\/h or 45 cm² below the target/,
    )
    expect((await commandLine('stages', folder, '--json', '--allow', '70')).code).toBe(2)
  })
})
