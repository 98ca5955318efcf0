import { readFileSync } from 'node:fs'
import { evaluate, parseRecord, type TestRecord } from '@draughtbook/shared-calc'
import { type RunnableVersion, rerunFile, runnable, versions } from '@draughtbook/shared-calc/rerun'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { evaluateWorked } from '../../shared-calc/src/assessment/evaluate.js'
import { issue } from '../../shared-calc/src/reports/workbook/issued/issue.js'
import { packSummary } from '../../shared-calc/src/reports/workbook/issued/pack-summary.js'
import { layOutSummary } from '../../shared-calc/src/reports/workbook/write-summary.js'
import { setText, textOf, writeParts } from '../../shared-calc/src/reports/workbook/zip/parts.js'
import { inventedRecord } from '../archive/invented-record'
import { recalculate } from '../support/libreoffice'
import { PackageText } from './support/package'

const demo = () => parseRecord(JSON.parse(readFileSync('test/demo/demo-record.json', 'utf8')))

async function rerun(bytes: Uint8Array) {
  const [test, ...others] = await rerunFile(bytes, 'archived.xlsx')
  expect(others).toEqual([])
  if (!test) throw new Error('no test came back')
  return test
}

describe('Re-run of an untouched summary workbook', () => {
  it('agrees in every figure and cell of the demonstration test', async () => {
    const test = await rerun(await writeSummaryWorkbook(demo()))
    expect(test.differences).toEqual([])
    expect(test.outcome).toBe('exactly as issued')
    expect(test.compared.figures).toBeGreaterThan(40)
    expect(test.compared.cells).toBeGreaterThan(1500)
    expect(test.verdict).toEqual({ recorded: 'meets', recomputed: 'meets' })
  })

  it('is exactly as issued where another engine works numbers out to other last digits, such as a browser’s', async () => {
    const worked = evaluateWorked(demo(), { uncertainty: true })
    const parts = await packSummary(await layOutSummary(demo(), worked))
    // One more in the last place of a double, in every number that a formula gives and every one the chart keeps.
    const nudged = (number: string) => String(Number(number) * (1 + Number.EPSILON))
    let count = 0
    for (const path of parts.keys())
      if (/worksheets\/sheet|charts\/chart/.test(path))
        setText(
          parts,
          path,
          textOf(parts, path).replace(
            /(<\/f><v>|<c:pt idx="\d+"><c:v>)(\d+\.\d{9,})</g,
            (_, head: string, number: string) => {
              count += 1
              return `${head}${nudged(number)}<`
            },
          ),
        )
    expect(count).toBeGreaterThan(500)
    issue(parts, worked.evaluation)
    const issued = writeParts(parts)
    const test = await rerun(issued)
    expect(test.outcome).toBe('exactly as issued')
    expect(test.why).toMatch(/numbers? differs? in the last digits/)
    expect(test.differences.every(({ rounding }) => rounding)).toBe(true)
  })

  it('agrees for invented tests of any seed', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 0, max: 1e6 }), async (seed) => {
        const test = await rerun(await writeSummaryWorkbook(inventedRecord(seed)))
        expect(test.differences).toEqual([])
        expect(test.outcome).toBe('exactly as issued')
      }),
      { numRuns: 12 },
    )
  })

  it('agrees where the findings name cells of the log the test was read from', async () => {
    const record = demo()
    delete record.conditions.barometricPressure_Pa
    const cells = { 'conditions.outdoorTemperature_C': 'Log!C4', 'runs[0].readings[2].pressure_Pa': 'Log!B9' }
    expect((await rerun(await writeSummaryWorkbook(record, { cells }))).outcome).toBe('exactly as issued')
  })

  it('finds nothing but rounding after LibreOffice has recalculated and saved it', async () => {
    const test = await rerun(await recalculate(await writeSummaryWorkbook(demo())))
    expect(test.differences.filter(({ rounding }) => !rounding)).toEqual([])
    expect(['saved again']).toContain(test.outcome)
  })

  it('finds nothing but rounding where mathematics comes out differently in the last digit', async () => {
    const [latest] = versions.slice(-1)
    if (!latest) throw new Error('no version')
    const current = await runnable(latest)
    const otherMachine: RunnableVersion = {
      ...current,
      evaluateWorked: (given, options) => {
        const worked = current.evaluateWorked(given, options)
        const { results } = worked.evaluation
        const q50 = { ...results.q50, value: results.q50.value * (1 + Number.EPSILON) }
        return { ...worked, evaluation: { ...worked.evaluation, results: { ...results, q50 } } }
      },
    }
    const bytes = await writeSummaryWorkbook(demo())
    const [test] = await rerunFile(bytes, 'a.xlsx', { versions: [otherMachine] })
    expect(test?.differences.filter(({ rounding }) => !rounding)).toEqual([])
    expect(test?.outcome).toBe('exactly as issued')
  })

  it('agrees where somebody made a column wider, a row higher, or chose another printer', async () => {
    const book = new PackageText(await writeSummaryWorkbook(demo()))
    const summary = book.sheet('Summary')
    book
      .edit(summary, /(<col min="1" max="1" width=")[\d.]+/, '$145')
      .edit(summary, /<row r="3" /, '<row r="3" ht="17" customHeight="1" ')
      .edit(summary, /horizontalDpi="\d+"/, 'horizontalDpi="600"')
    const { differences, outcome } = await rerun(book.bytes)
    expect(differences).toEqual([])
    expect(outcome).toBe('agrees')
  })

  it('differs by a row made three times as high, which pushes others off the page', async () => {
    const book = new PackageText(await writeSummaryWorkbook(demo()))
    book.edit(book.sheet('Summary'), /<row r="3" /, '<row r="3" ht="47" customHeight="1" ')
    expect((await rerun(book.bytes)).differences).toMatchObject([{ cell: 'Summary!A3', recorded: 47 }])
  })

  it('finds nothing but rounding where logarithms come out differently, and a margin is next to nothing', async () => {
    const [latest] = versions.slice(-1)
    if (!latest) throw new Error('no version')
    const current = await runnable(latest)
    const otherMachine: RunnableVersion = {
      ...current,
      evaluateWorked: (given, options) => {
        const { log } = Math
        // Engines differ in the last place of a logarithm: the language leaves it to them (ECMA-262, 21.3.2).
        Math.log = (x) => log(x) * (1 + 2 * Number.EPSILON)
        try {
          return current.evaluateWorked(given, options)
        } finally {
          Math.log = log
        }
      },
    }
    for (const distance of [1.3e-2, -4e-6]) {
      const record = demo()
      const n50 = evaluate(record).results.n50?.value ?? 0
      record.target = { quantity: 'n50', limit: n50 + distance, referencePressure_Pa: 50, directions: 'mean' }
      const [test] = await rerunFile(await writeSummaryWorkbook(record), 'a.xlsx', {
        versions: [otherMachine],
      })
      expect(test?.differences.length, `${distance}`).toBeGreaterThan(0)
      expect(
        test?.differences.filter(({ rounding }) => !rounding),
        `${distance}`,
      ).toEqual([])
      expect(test?.outcome, `${distance}`).toBe('exactly as issued')
    }
  })

  it('names a sheet that was added', async () => {
    const test = await rerun(await withSheet(await writeSummaryWorkbook(demo()), 'Office notes'))
    expect(test.differences.map(({ label }) => label)).toContain('sheet Office notes was added')
    expect(test.outcome).toBe('differs')
  })
})

async function withSheet(bytes: Uint8Array, name: string): Promise<Uint8Array> {
  const { default: ExcelJS } = await import('exceljs')
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load(bytes.slice().buffer)
  workbook.addWorksheet(name).getCell('A1').value = 'seen by the office'
  return new Uint8Array(await workbook.xlsx.writeBuffer())
}

describe('Re-run of what cannot be read', () => {
  const why = async (bytes: Uint8Array, name = 'archived.xlsx') => {
    const [test] = await rerunFile(bytes, name)
    expect(test?.outcome).toBe('cannot be read')
    return test?.why
  }

  it('says why, for each kind of fault', async () => {
    expect(await why(new Uint8Array())).toMatch(/empty/)
    expect(await why(new TextEncoder().encode('not a workbook at all'), 'a.xlsx')).toMatch(/\w/)
    const whole = await writeSummaryWorkbook(demo())
    expect(await why(whole.slice(0, 20_000))).toMatch(/incomplete or damaged/)
  })

  it('names the versions known where the version is not', async () => {
    const record: TestRecord = demo()
    const bytes = await writeSummaryWorkbook(record)
    const [test] = await rerunFile(bytes, 'a.xlsx', { versions: [] })
    expect(test?.outcome).toBe('cannot be read')
    expect(test?.why).toContain(evaluate(record).calculationVersion)
  })
})
