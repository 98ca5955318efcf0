import { readFile } from 'node:fs/promises'
import { makeRerunReport, type RerunTest, rerunFile } from '@draughtbook/shared-calc/rerun'
import { beforeAll, describe, expect, it } from 'vitest'
import { PackageText } from './support/package'

/** Workbooks as they were issued by the versions named; the tests they are made of lie in that version's golden archive. */
const versions = [
  '1.4.0',
  '1.5.0',
  '1.6.0',
  '1.7.0',
  '1.8.0',
  '1.9.0',
  '1.10.0',
  '1.11.0',
  '1.12.0',
  '1.13.0',
] as const
type Version = (typeof versions)[number]
type Kind = 'building' | 'stages'
const kinds: readonly Kind[] = ['building', 'stages']
const cases = versions.flatMap((version) => kinds.map((kind) => ({ version, kind })))

const read = async (path: string) => new Uint8Array(await readFile(path))
const testsOf = new Map<Version, readonly RerunTest[]>()
beforeAll(async () => {
  for (const version of versions) {
    const tests: RerunTest[] = []
    for (const file of ['both directions.xlsx', 'misses its target.xlsx'])
      tests.push(...(await rerunFile(await read(`test/archive/golden-${version}/${file}`), file)))
    testsOf.set(version, tests)
  }
})

async function rerun(bytes: Uint8Array, version: Version, tests = testsOf.get(version) ?? []) {
  const given = [...tests, ...(await rerunFile(bytes, 'report.xlsx'))]
  const report = await makeRerunReport(given, '2026-11-27')
  return report.tests.find(({ file }) => file === 'report.xlsx')
}

const reportOf = async (kind: Kind, version: Version) =>
  new PackageText(await read(`test/rerun/earlier/${kind}-${version}.xlsx`))

/** The workbook with cells written otherwise: a number by 3 %, a text typed over it, a formula with more at its end. */
async function changed(kind: Kind, version: Version, cells: readonly string[]): Promise<Uint8Array> {
  const book = await reportOf(kind, version)
  for (const place of cells) change(book, place)
  return book.bytes
}

function change(book: PackageText, place: string): void {
  const [sheet = '', address = ''] = place.split('!')
  const cell = new RegExp(`<c r="${address}"[^>]*>.*?</c>`, 's')
  book.edit(book.sheet(sheet), cell, (found = '') => {
    if (found.includes('<f>')) return found.replace('</f>', '*0.97</f>')
    if (found.includes(' t="s"'))
      return found
        .replace(' t="s"', ' t="inlineStr"')
        .replace(/<v>.*<\/v>/, `<is><t>typed over ${place}</t></is>`)
    return found.replace(/<v>(.*)<\/v>/, (_, value) => `<v>${Number(value) * 1.03}</v>`)
  })
}

/** Cells of each sheet that have stood where they are since 1.4.0: heads, figures copied, results, what was entered, the working. */
const places: Record<Kind, readonly string[]> = {
  building: [
    'Building!A1',
    'Building!B3',
    'Building!B5',
    'Building!A8',
    'Homes!D3',
    'Homes!D4',
    'Homes!A11',
    'Homes!D11',
    'Homes!K12',
    'Working!C12',
    'Working!C91',
  ],
  stages: ['Site!A1', 'Site!D5', 'Site!E6', 'Allowance!A8', 'Allowance!F8', 'Allowance!Q9', 'Working!C8'],
}

/** What was entered is proven by other cells alone: where those change too, nothing is left to prove it. */
const ENTERED: ReadonlySet<string> = new Set(['Building!B3', 'Homes!D4'])

/** A cell of each sheet; the letters of another are made white beside them. */
const together: Record<Kind, readonly string[]> = {
  building: ['Building!A8', 'Homes!D11', 'Working!C91'],
  stages: ['Site!E6', 'Allowance!F8', 'Working!C8'],
}
const whitened: Record<Kind, readonly [sheet: string, address: string]> = {
  building: ['Homes', 'D12'],
  stages: ['Allowance', 'F9'],
}

/** Each cell is changed by itself in workbooks of the last version; in those before, what was entered, and one of each sheet at once. */
const LAST = versions.at(-1)

describe.each(cases)('a $kind issued by version $version', ({ kind, version }) => {
  it('is made again by that version, part by part as it was issued', async () => {
    const entry = await rerun(await read(`test/rerun/earlier/${kind}-${version}.xlsx`), version)
    expect(entry?.differences).toEqual([])
    expect(entry?.outcome).toBe('older calculation version')
    expect(entry?.calculationVersion).toBe(version)
    expect(entry?.why).toBe(
      `made again from its 2 tests under calculation version ${version}, every figure and everything visible agrees`,
    )
  })

  it.each(places[kind].filter((place) => version === LAST || ENTERED.has(place)))(
    'differs by %s, and names it',
    async (place) => {
      const entry = await rerun(await changed(kind, version, [place]), version)
      expect(entry?.outcome).toBe('differs')
      expect(entry?.differences.filter(({ rounding }) => !rounding).map(({ cell }) => cell)).toContain(place)
    },
  )

  it('differs by cells of all sheets changed together and letters made white, and names each', async () => {
    const book = new PackageText(await changed(kind, version, together[kind]))
    const [sheet, address] = whitened[kind]
    const white = book.addTo(
      'fonts',
      '<font><sz val="10"/><color rgb="FFFFFFFF"/><name val="Calibri"/></font>',
    )
    book.restyle(sheet, address, (xf) => xf.replace(/fontId="\d+"/, `fontId="${white}"`))
    const entry = await rerun(book.bytes, version)
    const named = entry?.differences.filter(({ rounding }) => !rounding).map(({ cell }) => cell)
    expect(named).toEqual(expect.arrayContaining([...together[kind]]))
    expect(entry?.differences).toContainEqual(
      expect.objectContaining({ label: 'text colour', cell: `${sheet}!${address}` }),
    )
    expect(entry?.outcome).toBe('differs')
  })
})

describe('a report that names another version than made it', () => {
  it.each(['1.6.0', '9.9.9'])(
    'is compared under its own, and differs by the line that now says %s',
    async (other) => {
      const book = await reportOf('building', '1.9.0')
      book.edit('xl/sharedStrings.xml', 'Calculation version 1.9.0', `Calculation version ${other}`)
      const entry = await rerun(book.bytes, '1.9.0')
      expect(entry?.calculationVersion).toBe('1.9.0')
      expect(entry?.outcome).toBe('differs')
      expect(entry?.differences.map(({ recorded }) => String(recorded))).toContainEqual(
        expect.stringContaining(other),
      )
    },
  )
})

it('a report that names another version, and was changed in further cells, is still compared under its own', async () => {
  const book = new PackageText(await changed('building', '1.9.0', together.building))
  book.edit('xl/sharedStrings.xml', 'Calculation version 1.9.0', 'Calculation version 1.8.0')
  const entry = await rerun(book.bytes, '1.9.0')
  expect(entry?.calculationVersion).toBe('1.9.0')
  const named = entry?.differences.filter(({ rounding }) => !rounding).map(({ cell }) => cell)
  expect(named).toEqual(expect.arrayContaining([...together.building, 'Building!A30']))
})

describe('what was entered for a report', () => {
  it('is said with its cells, because only the file says it', async () => {
    const entry = await rerun(await read('test/rerun/earlier/stages-1.9.0.xlsx'), '1.9.0')
    expect(entry?.notes.join()).toMatch(/cannot be checked: .*70 % \(Allowance!D3\).*80 % \(Allowance!D4\)/)
  })

  it('is taken from the rest of the file where its cell holds what cannot be', async () => {
    const book = await reportOf('stages', '1.9.0')
    const bytes = book.edit(book.sheet('Allowance'), /(<c r="F3"[^>]*><v>)0\.9/, '$17.5').bytes
    const entry = await rerun(bytes, '1.9.0')
    expect(entry?.differences.map(({ cell }) => cell)).toEqual(['Allowance!F3'])
  })
})

it('a row whose file is not given is compared with the test of its plot and date, and says so', async () => {
  const [first, second] = testsOf.get('1.9.0') ?? []
  if (!first || !second) throw new Error('no tests')
  const renamed = { ...second, file: 'renamed.xlsx' }
  const entry = await rerun(await read('test/rerun/earlier/building-1.9.0.xlsx'), '1.9.0', [first, renamed])
  expect(entry?.differences).toMatchObject([
    { cell: 'Homes!K12', recorded: 'misses its target.xlsx', expected: 'renamed.xlsx' },
  ])
})
