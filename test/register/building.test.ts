import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { assessBuilding, evaluate, type TestRecord } from '@draughtbook/shared-calc'
import { writeBuildingWorkbook } from '@draughtbook/shared-calc/building'
import { makeRegister, readLines, writeRegisterWorkbook } from '@draughtbook/shared-calc/register'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { inventedRecord } from '../archive/invented-record'
import { seeded } from '../archive/seeded'
import { commandLine } from '../service/support/command-line'
import { compareCached } from '../support/formula-cells'

const LIMIT = 0.6

interface Wish {
  readonly n50?: number
  readonly gauge?: string
  readonly device?: string
  readonly guarded?: 'guarded' | 'unguarded'
}

function flat(seed: number, { n50 = 0.5, gauge = 'G-1', device = 'F-1', guarded }: Wish = {}): TestRecord {
  const record = inventedRecord(seed, { n50, plot: `Flat ${seed}`, site: 'Invented Court' })
  return {
    ...record,
    format: 'draughtbook/record@3',
    test: { ...record.test, ...(guarded && { adjoiningSpaces: guarded }) },
    pressureGauge: { ...record.pressureGauge, serial: gauge, calibrationDue: '2031-01-01' },
    flowDevice: { ...record.flowDevice, serial: device, calibrationDue: '2031-01-01' },
    runs: record.runs.map((run) => ({ ...run, flowStatedAt: 'reference air' as const })),
    target: { quantity: 'n50', limit: LIMIT, referencePressure_Pa: 50, directions: 'mean' },
  } as TestRecord
}

const homes = (records: readonly TestRecord[]) =>
  records.map((record, i) => ({ file: `flat-${i + 1}.xlsx`, record }))
const building = (records: readonly TestRecord[], more = {}) =>
  assessBuilding({ name: 'Invented Court', homes: homes(records), rule: 'summed', ...more })
const summed = (result: ReturnType<typeof building>) => {
  const [way] = result.ways
  if (way?.rule !== 'summed') throw new Error('the homes are not summed')
  return way
}

describe('a building of several homes', () => {
  it('leaks what its homes leak together: flows at one pressure over the volume of all (conservation of mass)', () => {
    const records = [flat(1), flat(2, { n50: 0.8 }), flat(3, { n50: 0.3 })]
    const singles = records.map((record) => evaluate(record))
    const flows = singles.map(({ results }) => results.q50.value)
    const volumes = records.map(({ building: { volume_m3 = 0 } }) => volume_m3)
    const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0)
    expect(summed(building(records)).value / (sum(flows) / sum(volumes))).toBeCloseTo(1, 12)
  })

  it('says what to do where each home keeps another of the limits that meet its target', () => {
    // US model code 2021: n50 of 3 1/h, or 0.28 cfm/ft² (5.12 m³/(h·m²)), is enough.
    const of = (record: TestRecord, envelopeArea_m2: number): TestRecord => ({
      ...record,
      building: { ...record.building, envelopeArea_m2 },
      target: { preset: 'us-2021' },
    })
    const low = of(flat(1, { n50: 2 }), 60)
    const wide = of(flat(2, { n50: 4 }), 900)
    const [a, b] = [low, wide].map((record) => evaluate(record).verdict)
    expect([a?.outcome, b?.outcome, a?.target?.quantity, b?.target?.quantity]).toEqual([
      'meets',
      'meets',
      'n50',
      'qE50',
    ])
    expect(() => building([low, wide])).toThrow(
      /qE50 ≤ [\d.]+ m3\/\(h·m2\) decides here, but n50 ≤ 3 1\/h in flat-1.xlsx.*Enter one of them as a target of your own/,
    )
  })

  it('is weighted by floor or envelope where that is asked for', () => {
    const records = [flat(1), flat(2, { n50: 0.8 })]
    const [a, b] = records.map((record) => evaluate(record).results.n50?.value ?? 0)
    const [fa, fb] = records.map(({ building: { floorArea_m2 = 0 } }) => floorArea_m2)
    const result = building(records, { rule: 'floor' })
    const expected = ((a ?? 0) * (fa ?? 0) + (b ?? 0) * (fb ?? 0)) / ((fa ?? 0) + (fb ?? 0))
    expect(result.ways.find(({ rule }) => rule === 'floor')?.value).toBeCloseTo(expected, 12)
    expect(result.value).toBeCloseTo(expected, 12)
    // The figure is related to the volume: by volume is the same as summed.
    expect(building(records, { rule: 'volume' }).rule).toBe('summed')
  })

  it('is as uncertain as draws of every cause make it, shared instruments drawn once', () => {
    const records = [flat(1), flat(2, { n50: 0.7 }), flat(3, { n50: 0.4, device: 'F-2' }), flat(4)]
    const budgets = records.map((record) => {
      const { uncertainty, results } = evaluate(record, { uncertainty: true })
      const n50 = uncertainty?.figures.find(({ quantity }) => quantity === 'n50')
      return { rows: n50?.contributions ?? [], q: results.q50.value }
    })
    const total = budgets.reduce((sum, { q }) => sum + q, 0)
    const random = seeded(20)
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
    const draws = Array.from({ length: 12_000 }, () => {
      const shared = new Map<string, number>()
      return budgets.reduce((sum, { rows, q }, home) => {
        const { gauge, device } = {
          gauge: records[home]?.pressureGauge?.serial,
          device: records[home]?.flowDevice?.serial,
        }
        const change = rows.reduce((all, { id, sensitivity, standardUncertainty }) => {
          const of = /flow calibration/.test(id) ? device : /gauge/.test(id) ? gauge : undefined
          const key = of === undefined ? `${home} ${id}` : `${of} ${id}`
          const z = shared.get(key) ?? normal()
          shared.set(key, z)
          return all + sensitivity * standardUncertainty * z
        }, 0)
        return sum + (q / total) * change
      }, 0)
    })
    const mean = draws.reduce((sum, one) => sum + one, 0) / draws.length
    const spread = Math.sqrt(draws.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (draws.length - 1))
    // 12,000 draws: standard error of a standard deviation 0.65 %.
    expect(summed(building(records)).standardUncertainty / spread).toBeGreaterThan(0.97)
    expect(summed(building(records)).standardUncertainty / spread).toBeLessThan(1.03)
  })

  it('does not average the error of one instrument out, and averages those of many', () => {
    const many = Array.from({ length: 9 }, (_, i) => flat(i + 1, { gauge: `G-${i}`, device: `F-${i}` }))
    const one = Array.from({ length: 9 }, (_, i) => flat(i + 1))
    const single = Math.max(
      ...one.map(
        (record) =>
          evaluate(record, { uncertainty: true }).uncertainty?.figures.find(
            ({ quantity }) => quantity === 'n50',
          )?.relativeStandardUncertainty ?? 0,
      ),
    )
    const [apart, together] = [building(many), building(one)].map(
      (result) => summed(result).standardUncertainty,
    )
    expect(apart).toBeLessThan((1.15 * single) / 3)
    expect(together).toBeGreaterThan(1.3 * (apart ?? 0))
    expect(together).toBeLessThan(single)
  })

  it('takes instruments that are not named for the same ones, and says so', () => {
    const records = [flat(1), flat(2)].map((record) => {
      const { serial: _, ...gauge } = record.pressureGauge ?? {}
      return { ...record, pressureGauge: gauge }
    })
    const result = building(records)
    expect(summed(result).standardUncertainty).toBeCloseTo(
      summed(building([flat(1), flat(2)])).standardUncertainty,
      12,
    )
    expect(result.findings.map(({ message }) => message).join()).toMatch(
      /2 tests do not name the pressure gauge or the flow device/,
    )
  })

  it('tells guarded tests from unguarded ones', () => {
    const messages = (...kinds: (Wish['guarded'] | undefined)[]) =>
      building(kinds.map((guarded, i) => flat(i + 1, guarded ? { guarded } : {}))).findings.map(
        ({ message }) => message,
      )
    expect(messages('guarded', 'guarded')).toEqual([])
    expect(messages('guarded', 'unguarded').join()).toMatch(
      /1 of 2 homes was tested with guarded adjoining spaces/,
    )
    expect(messages('unguarded', 'unguarded').join()).toMatch(/Leaks between two homes count in both tests/)
    expect(messages(undefined, undefined).join()).toMatch(/do not say whether adjoining spaces were guarded/)
  })

  it('is judged home by home unless something else is asked for, which it says', () => {
    const result = assessBuilding({ name: 'x', homes: homes([flat(1), flat(2, { n50: 0.9 })]) })
    expect([result.rule, result.outcome, result.value]).toEqual(['each', 'misses', undefined])
    expect(result.findings.map(({ message }) => message).join()).toMatch(/each home must meet it/)
    // Summed, the tight home makes up for the leaky one.
    expect(building([flat(1, { n50: 0.2 }), flat(2, { n50: 0.7 })]).outcome).toBe('meets')
  })

  it('is not valid where homes are still to be tested, or a file was altered', () => {
    const few = building([flat(1), flat(2, { n50: 0.9 })], {
      homesInBuilding: 20,
      sampleSize: 2,
      morePerMiss: 2,
      rule: 'each',
    })
    expect([few.outcome, few.sample]).toEqual(['not valid', { required: 4, tested: 2, stillToTest: 2 }])
    expect(building([flat(1), flat(2)], { homesInBuilding: 3 }).findings[0]?.message).toMatch(
      /this target states no sample size/,
    )
    const [one, two] = homes([flat(1), flat(2)])
    if (!one || !two) throw new Error('no homes')
    const altered = assessBuilding({
      name: 'x',
      rule: 'summed',
      homes: [one, { ...two, altered: 'changed' }],
    })
    expect([altered.outcome, altered.findings[0]?.message]).toEqual([
      'not valid',
      'flat-2.xlsx: changed Find out what was changed, or use the workbook as issued.',
    ])
  })

  it('of a French sample is the weighted mean times 1.2 (French trade pages on RE2020), 3 homes of up to 30 (FD P50-784, value from memory)', () => {
    const french = [1, 2, 3].map((seed) => {
      const record = flat(seed, { n50: 2 })
      return {
        ...record,
        building: { ...record.building, lossArea_m2: 160 },
        target: { preset: 'france-flats' },
      } as TestRecord
    })
    const result = assessBuilding({ name: 'x', homes: homes(french), homesInBuilding: 24 })
    const way = summed(result)
    expect(result.sample).toEqual({ required: 3, tested: 3, stillToTest: 0 })
    expect(way.judged / way.value).toBeCloseTo(1.2, 12)
    expect(assessBuilding({ name: 'x', homes: homes(french), homesInBuilding: 31 }).sample?.required).toBe(6)
  })

  it('refuses one home, and homes with unlike targets', () => {
    expect(() => building([flat(1)])).toThrow(/at least two homes/)
    const other = { ...flat(2), target: { ...flat(2).target, limit: 1.5 } } as TestRecord
    expect(() => building([flat(1), other])).toThrow(/flat-2\.xlsx.*differs from that of flat-1\.xlsx/)
    const none = flat(2)
    delete none.target
    expect(() => building([flat(1), none])).toThrow(/flat-2\.xlsx.*no target/)
  })
})

describe('the workbook of a building', () => {
  it('holds formulas that LibreOffice works out to the stored results, and is no test of its own', async () => {
    const request = {
      name: 'Invented Court',
      homes: homes([flat(1), flat(2, { n50: 0.8 }), flat(3)]),
      rule: 'summed' as const,
      homesInBuilding: 5,
      sampleSize: 3,
    }
    const bytes = await writeBuildingWorkbook(request)
    expect(await compareCached(bytes)).toEqual([])
    expect(readLines(bytes, 'building.xlsx').leftOut).toMatchObject([{ kind: 'own report', expected: true }])
    expect(Buffer.compare(await writeBuildingWorkbook(request), bytes)).toBe(0)
  }, 60_000)
})

describe('building on the command line', () => {
  let folder: string
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'draughtbook-building-'))
    for (const seed of [1, 2])
      await writeFile(join(folder, `flat ${seed}.xlsx`), await writeSummaryWorkbook(flat(seed)))
  })
  afterAll(() => rm(folder, { recursive: true, force: true }))

  it('reads a folder, prints each home and the building, and writes the workbook', async () => {
    const out = join(folder, 'out.xlsx')
    const done = await commandLine('building', folder, '--rule', 'summed', '--out', out)
    expect([done.code, done.err]).toEqual([0, []])
    expect(done.out).toMatch(/^Invented Court: meets .*\n {2}Flat 1: .*\n {2}Flat 2: /)
    const again = await commandLine('building', folder, '--rule', 'summed', '--json')
    expect(JSON.parse(again.out)).toMatchObject({ format: 'draughtbook/building@1', outcome: 'meets' })
    expect((await commandLine('building', folder, '--rule', 'median', '--json')).code).toBe(2)
    expect((await commandLine('building', join(folder, 'flat 1.xlsx'), '--json')).code).toBe(2)
    const aimless = flat(2)
    delete aimless.target
    const named = join(folder, 'aimless.xlsx')
    await writeFile(named, await writeSummaryWorkbook(aimless))
    const refused = await commandLine('building', join(folder, 'flat 1.xlsx'), named, '--json')
    expect([refused.code, refused.err.join()]).toEqual([
      2,
      expect.stringContaining('aimless.xlsx: the test has no target'),
    ])
  })
})

describe('the register of a month with a building among its files', () => {
  it('has a row for it, with what its workbook shows', async () => {
    const records = [flat(1), flat(2, { n50: 0.58 }), flat(3, { n50: 0.3 })]
    const result = building(records)
    const request = { name: 'Invented Court', homes: homes(records), rule: 'summed' as const }
    const { lines, leftOut } = readLines(await writeBuildingWorkbook(request), 'court.xlsx')
    expect(lines).toEqual([])
    const [left] = leftOut
    expect(left?.building).toMatchObject({
      name: 'Invented Court',
      verdict: result.outcome,
      tests: '3 of 3 homes',
    })
    expect(left?.building?.value).toBeCloseTo(summed(result).value, 12)
    const register = makeRegister([], leftOut, { asOf: '2026-10-31' })
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load((await writeRegisterWorkbook(register)) as never)
    const row = workbook.getWorksheet('Buildings')?.getRow(5)
    expect(row?.getCell(1).value).toBe('Invented Court')
    expect(Number(row?.getCell(5).value)).toBeCloseTo(summed(result).value, 12)
  })
})
