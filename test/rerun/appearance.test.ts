import { readFileSync } from 'node:fs'
import { parseRecord } from '@draughtbook/shared-calc'
import { rerunFile } from '@draughtbook/shared-calc/rerun'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { beforeAll, describe, expect, it } from 'vitest'
import { PackageText } from './support/package'
import { tamperingsOf } from './support/tamperings'

let whole: Uint8Array

beforeAll(async () => {
  whole = await writeSummaryWorkbook(
    parseRecord(JSON.parse(readFileSync('test/demo/demo-record.json', 'utf8'))),
  )
})

async function rerun(bytes: Uint8Array) {
  const [test] = await rerunFile(bytes, 'archived.xlsx')
  if (!test) throw new Error('no test came back')
  return test
}

describe('a summary that was tampered with', () => {
  it('is found out, whatever was done to what is seen of it', async () => {
    const missed: string[] = []
    const unnamed: string[] = []
    const tamperings = tamperingsOf(new PackageText(whole))
    for (const { name, change } of tamperings) {
      const book = new PackageText(whole)
      change(book)
      const test = await rerun(book.bytes)
      if (!['differs', 'inputs changed after issue'].includes(test.outcome))
        missed.push(`${name}: ${test.why}`)
      else if (test.differences.every(({ rounding }) => rounding)) unnamed.push(name)
      if (process.env.SHOW) console.log(name, '→', test.outcome, '|', test.why)
    }
    expect(missed).toEqual([])
    expect(unnamed).toEqual([])
    expect(tamperings.length).toBeGreaterThanOrEqual(120)
  }, 600_000)
})
