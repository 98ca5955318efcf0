import {
  type Evaluation,
  evaluate,
  judgedTexts,
  parseRecord,
  type TestRecord,
} from '@draughtbook/shared-calc'
import { rerunFile } from '@draughtbook/shared-calc/rerun'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { verdictLines } from '../../service/src/cli/print/verdict-text'
import { inventedRecord } from '../archive/invented-record'
import { seeded } from '../archive/seeded'
import { recalculate } from '../support/libreoffice'

const RECORDS = 2000
const IN_WORKBOOKS = 40
/** How far a limit lies from the result, as a share of it; 0 is the result itself, and what lies below 1e-9 counts as equal. */
const SHARES = [0, 1e-12, 3e-10, 3e-9, 1e-8, 1e-6, 1e-5, 1e-4, 1e-3, 4e-3, 1e-2, 0.1]
const QUANTITIES = ['n50', 'q50', 'qE50'] as const

/** An invented test whose limit lies just beside its result, with two digits as schemes print them, or up to eight. */
function nearItsLimit(seed: number): TestRecord {
  const random = seeded(seed)
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T
  const record = inventedRecord(seed, { n50: 0.3 + 5 * random() ** 2 })
  const quantity = pick(QUANTITIES)
  const result = evaluate(record).results[quantity]?.value ?? 0
  const beside = result * (1 + (random() < 0.5 ? 1 : -1) * pick(SHARES))
  const limit = Number(beside.toPrecision(pick([2, 3, 4, 6, 8, 8])))
  return parseRecord({
    ...record,
    target: { quantity, limit, referencePressure_Pa: 50, directions: 'mean', label: 'invented limit' },
  })
}

/** A number as a reader takes it from a page. */
const read = (text: string | undefined): number => {
  const number = Number((text ?? '').replace('−', '-').replace('+', ''))
  if (text === undefined || !Number.isFinite(number)) throw new Error(`no number: ${text}`)
  return number
}

interface Page {
  readonly value: number
  readonly limit: number
  /** Signed: above 0 where the value is below the limit. */
  readonly margin: number
}

/** What is wrong with a page, as a reader with its verdict would say; nothing where all fits. */
function contradictions(meets: boolean, { value, limit, margin }: Page): string[] {
  return [
    ...(meets && value > limit ? [`meets, but ${value} is above ${limit}`] : []),
    ...(!meets && value <= limit ? [`fails, but ${value} is not above ${limit}`] : []),
    ...(meets && margin < 0 ? [`meets with the margin ${margin}`] : []),
    ...(!meets && margin >= 0 ? [`fails with the margin ${margin}`] : []),
    ...(margin === 0 && value !== limit ? [`${value} is not ${limit}, but the margin is 0`] : []),
  ]
}

function fromCommand(evaluation: Evaluation): Page {
  const text = verdictLines(evaluation).find(({ label }) => label === 'Margin')?.text ?? ''
  const [, value, rest = '', limit] = / is (\S+) [^,]*, (.*) the limit of (\S+) /.exec(text) ?? []
  const [, size, side] = /^(\S+) .*(below|above)$/.exec(rest) ?? []
  const margin = rest === 'equal to' ? 0 : read(size) * (side === 'below' ? 1 : -1)
  return { value: read(value), limit: read(limit), margin }
}

/** The pane draws these three texts; its component holds no figures of its own. */
function fromPane({ verdict }: Evaluation): Page {
  const [criterion] = verdict.criteria
  if (!criterion) throw new Error('nothing was judged')
  const { value, limit, margin } = judgedTexts(criterion)
  return { value: read(value), limit: read(limit), margin: read(margin) }
}

/** From the banner of the Summary, and from the lines under it as their number formats show them. */
async function fromWorkbook(record: TestRecord): Promise<{ meets: boolean; pages: Page[] }> {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load((await writeSummaryWorkbook(record)) as never)
  const sheet = workbook.getWorksheet('Summary')
  const rows: ExcelJS.Row[] = []
  sheet?.eachRow((row) => rows.push(row))
  const banner = rows.find((row) => ['MEETS', 'FAILS'].includes(String(row.getCell(1).result)))
  const words = String(banner?.getCell(2).result)
  const [, value, limit, margin] = /^\S+ (\S+) .*limit (\S+) +margin (\S+)$/.exec(words) ?? []
  const line = rows.find((row) => /, mean of both directions$/.test(String(row.getCell(1).value)))
  const below = rows.find((row) => row.getCell(1).value === 'Margin to the limit')
  const printed = (cell: ExcelJS.Cell | undefined) =>
    read(Number(cell?.result).toFixed(String(cell?.numFmt).split('.')[1]?.length ?? 0))
  return {
    meets: banner?.getCell(1).result === 'MEETS',
    pages: [
      { value: read(value), limit: read(limit), margin: read(margin) },
      {
        value: printed(line?.getCell(2)),
        limit: read(/^limit (\S+)/.exec(String(line?.getCell(4).result))?.[1]),
        margin: printed(below?.getCell(2)),
      },
    ],
  }
}

describe('near the limit, what is shown never contradicts the verdict', () => {
  const seeds = Array.from({ length: RECORDS }, (_, i) => 5000 + i)

  it(`in the command and the pane, for ${RECORDS} invented tests`, () => {
    const found = { meets: 0, misses: 0, equal: 0 }
    const wrong = seeds.flatMap((seed) => {
      const record = nearItsLimit(seed)
      const evaluation = evaluate(record)
      const { outcome, margin } = evaluation.verdict
      if (outcome !== 'meets' && outcome !== 'misses') throw new Error(`seed ${seed} is ${outcome}`)
      found[outcome] += 1
      if (margin === 0) found.equal += 1
      // The verdict itself, from value and limit alone: what lies within 1e-9 of the limit counts as equal.
      const { value = Number.NaN } = evaluation.verdict
      const { limit = Number.NaN } = record.target as { limit?: number }
      if (value <= limit * (1 + 1e-9) !== (outcome === 'meets'))
        return [`seed ${seed}: ${value} against ${limit} ${outcome}`]
      return [fromCommand(evaluation), fromPane(evaluation)].flatMap((page) =>
        contradictions(outcome === 'meets', page).map((words) => `seed ${seed}: ${words}`),
      )
    })
    expect(wrong).toEqual([])
    // Both verdicts and equality were met often enough for the test to mean something.
    expect(Math.min(found.meets, found.misses)).toBeGreaterThan(500)
    expect(found.equal).toBeGreaterThan(10)
  }, 120_000)

  it(`in the workbook, for ${IN_WORKBOOKS} of them`, async () => {
    const wrong: string[] = []
    for (const seed of seeds.slice(0, IN_WORKBOOKS)) {
      const { meets, pages } = await fromWorkbook(nearItsLimit(seed))
      for (const page of pages)
        for (const words of contradictions(meets, page)) wrong.push(`seed ${seed}: ${words}`)
    }
    expect(wrong).toEqual([])
  }, 120_000)

  it('says so where a page contradicts itself', () => {
    expect(contradictions(false, { value: 0.6, limit: 0.6, margin: 0 })).toHaveLength(2)
    expect(contradictions(true, { value: 0.61, limit: 0.6, margin: -0.01 })).toHaveLength(2)
    expect(contradictions(true, { value: 0.59, limit: 0.6, margin: 0 })).toHaveLength(1)
  })
})

describe('sheet Check, recalculated, with a margin that is next to nothing', () => {
  /** 1e-8 beside the limit: the margin has lost eight of its sixteen digits. */
  const besideBy = (share: number): TestRecord => {
    const record = inventedRecord(77)
    const value = evaluate(record).results.n50?.value ?? 0
    const target = {
      quantity: 'n50',
      limit: Number((value * (1 + share)).toPrecision(10)),
      referencePressure_Pa: 50,
      directions: 'mean',
    }
    return parseRecord({ ...record, target: { ...target, label: 'invented limit' } })
  }

  const recalculated = async (record: TestRecord) =>
    recalculate(await writeSummaryWorkbook(record, { uncertainty: true }))

  /** States of the rows as LibreOffice works them out anew. */
  async function states(bytes: Uint8Array): Promise<string[]> {
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load(bytes as never)
    const found: string[] = []
    workbook.getWorksheet('Check')?.eachRow((row) => {
      const state = row.getCell(5).result
      if (state === 'agrees' || state === 'differs') found.push(`${row.getCell(1).text}: ${state}`)
    })
    return found
  }

  it.each([1e-8, -1e-8, -3e-9])(
    'agrees in every row at a share of %f of the limit',
    async (share) => {
      const bytes = await recalculated(besideBy(share))
      const found = await states(bytes)
      expect(found.filter((text) => /margin|probability|to seal/.test(text)).length).toBeGreaterThanOrEqual(3)
      expect(found.filter((text) => text.endsWith('differs'))).toEqual([])
      const [again] = await rerunFile(bytes, 'archived.xlsx')
      expect(again?.differences.filter(({ rounding }) => !rounding)).toEqual([])
      expect(again?.outcome).toBe('saved again')
    },
    120_000,
  )

  it('tolerates as much of the limit as of any figure, and no more', async () => {
    const record = besideBy(1e-3)
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load((await writeSummaryWorkbook(record)) as never)
    const rows: ExcelJS.Row[] = []
    workbook.getWorksheet('Check')?.eachRow((row) => rows.push(row))
    const margin = rows.find((row) => /: margin, /.test(row.getCell(1).text))
    const formula = margin?.getCell(5).formula ?? ''
    const { limit = 0 } = record.target as { limit?: number }
    const [, tolerance, size] = /<=(1E-9)\*MAX\(ABS\(B\d+\),ABS\(C\d+\),([\d.]+)\)/.exec(formula) ?? []
    expect(Number(tolerance)).toBe(1e-9)
    expect(Math.abs(Number(size) / limit - 1)).toBeLessThan(0.01)
  })
})
