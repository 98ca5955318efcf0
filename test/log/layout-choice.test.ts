import { LAYOUT_SHEET, layoutPieces, parseLayout, readLog } from '@draughtbook/shared-calc/log'
import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { englishForm } from './logs/english-form'
import { expectRecord } from './support/expect-record'

const named = (name: string, cells: { cell: string; text: string }[]) =>
  parseLayout({ ...englishForm.layout, name, fingerprint: { sheets: ['Air *'], cells } })

async function withLayoutSheet(pieces: readonly string[]) {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load((await englishForm.write()).slice().buffer)
  workbook.addWorksheet(LAYOUT_SHEET, { state: 'hidden' }).addRows(pieces.map((piece) => [piece]))
  return new Uint8Array(await workbook.xlsx.writeBuffer())
}

describe('the layout of a log', () => {
  it('is the one whose fingerprint has most of the log’s marks', async () => {
    const few = named('few', [{ cell: 'A2', text: 'Building' }])
    const more = named('more', [
      { cell: 'A2', text: 'building:' },
      { cell: 'A4', text: 'Volume' },
    ])
    const other = named('other', [{ cell: 'A2', text: 'Objekt' }])
    const read = readLog(await englishForm.write(), englishForm.fileName, { layouts: [few, more, other] })
    expect(read.layoutUsed?.name).toBe('more')
  })

  it('is not chosen between two that fit equally well', async () => {
    const one = named('one', [{ cell: 'A2', text: 'Building' }])
    const two = named('two', [{ cell: 'A4', text: 'Volume' }])
    const bytes = await englishForm.write()
    expect(() => readLog(bytes, englishForm.fileName, { layouts: [one, two] })).toThrow(
      /"one" and "two" fit this log equally well/,
    )
  })

  it('comes with the workbook where it carries one, before any other that fits', async () => {
    const bytes = await withLayoutSheet(
      layoutPieces({ ...englishForm.layout, name: 'its own', note: 'n'.repeat(2000) }),
    )
    const read = readLog(bytes, englishForm.fileName, {
      layouts: [named('few', [{ cell: 'A2', text: 'Building' }])],
    })
    expect(read.layoutUsed?.name).toBe('its own')
    expectRecord(read.tests[0]?.record, englishForm.records[0])
  })

  it('is refused where the one the workbook carries is damaged, naming its sheet', async () => {
    const bytes = await withLayoutSheet(['{"format":'])
    expect(() => readLog(bytes, englishForm.fileName)).toThrow(
      /'Draughtbook layout'!A1: the layout saved with the workbook is not JSON/,
    )
  })

  it('is refused for an unknown key, a wrong cell or no run, each with its path', () => {
    const wrong = {
      ...englishForm.layout,
      colour: 'red',
      fields: [{ path: 'building.name', at: { cell: 'B0' } }],
    }
    expect(() => parseLayout(wrong)).toThrow(/fields\[0\]\.at/)
    expect(() => parseLayout(wrong)).toThrow(/colour/)
    expect(() => parseLayout({ ...englishForm.layout, runs: [] })).toThrow(/names no runs, no series/)
  })
})
