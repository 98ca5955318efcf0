import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { createApp } from '../../service/src/app'
import { listen, postJson } from './support/listen'
import { demoRecord } from './support/record'

/** Texts that a spreadsheet would take for formulas or commands if they were written carelessly. */
const HOSTILE = [
  '=1+1',
  '=HYPERLINK("http://evil.example","click")',
  "=cmd|' /C calc'!A0",
  '+1+1',
  '-1+1',
  '@SUM(1,1)',
  '\t=1+1',
  '\r=1+1',
  '<script>alert(1)</script>',
  '{=1+1}',
]

function recordWith(text: string) {
  const record = demoRecord()
  Object.assign(record.building, { name: text, site: text, address: text })
  Object.assign(record.test, {
    id: text,
    tester: text,
    organisation: text,
    client: text,
    purpose: text,
    notes: text,
  })
  record.test.openings = [{ opening: text, state: 'sealed', note: text }]
  record.target = { quantity: 'n50', limit: 0.6, label: text }
  return record
}

async function formulasOf(base: string, text: string) {
  const answer = await postJson(`${base}/v1/workbooks`, JSON.stringify(recordWith(text)))
  expect(answer.status).toBe(200)
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load(await answer.arrayBuffer())
  const formulas: string[] = []
  const texts: string[] = []
  for (const sheet of workbook.worksheets)
    sheet.eachRow((row) =>
      row.eachCell((cell) => {
        if (cell.formula) formulas.push(`${sheet.name}!${cell.address} ${cell.formula}`)
        else if (typeof cell.value === 'string') texts.push(cell.value)
      }),
    )
  return { formulas, texts }
}

describe('text of users', () => {
  it.each(HOSTILE)('never becomes a formula of the workbook: %j', async (text) => {
    const base = await listen(createApp())
    const harmless = await formulasOf(base, 'Plot 7')
    const hostile = await formulasOf(base, text)
    // Formulas may quote a text, but there is no further one, and none that begins with it.
    const cells = (formulas: readonly string[]) => formulas.map((formula) => formula.split(' ')[0])
    expect(cells(hostile.formulas)).toEqual(cells(harmless.formulas))
    const bare = text.trim().replace(/^[={]+/, '')
    expect(
      hostile.formulas.filter((formula) => formula.split(' ').slice(1).join(' ').startsWith(bare)),
    ).toEqual([])
    expect(hostile.texts.some((one) => one.includes(text.trim()))).toBe(true)
  })

  it.each([
    'a\r\nset-cookie: b=c',
    'a"; filename="b',
    '../../etc/passwd',
    'ä€漢',
    '\u202egpj.exe',
    'x'.repeat(300),
  ])('never breaks out of the header that names the file: %j', async (text) => {
    const base = await listen(createApp())
    const record = demoRecord()
    record.building.name = text
    const answer = await postJson(`${base}/v1/workbooks`, JSON.stringify(record))
    expect(answer.status).toBe(200)
    expect(answer.headers.get('set-cookie')).toBeNull()
    const named = answer.headers.get('content-disposition') ?? ''
    expect(named).toMatch(/^attachment; filename=("[^"\\/]*"|[\w.-]+)(; filename\*=UTF-8''[^;"\\/]*)?$/)
    expect(named).not.toMatch(/\.\.[\\/]|%E2%80%AE|%2F/i)
    expect(named.length).toBeLessThan(800)
  })
})
