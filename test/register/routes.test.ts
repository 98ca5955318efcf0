import type { TestRecord } from '@draughtbook/shared-calc'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { beforeAll, describe, expect, it } from 'vitest'
import { createApp } from '../../service/src/app'
import { inventedMonth } from '../archive/invented-month'
import { listen } from '../service/support/listen'

const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'
let workbooks: Uint8Array[]

beforeAll(async () => {
  workbooks = await Promise.all(inventedMonth(4).map((record) => writeSummaryWorkbook(record)))
})

function form(files: readonly (readonly [string, Uint8Array])[]): FormData {
  const body = new FormData()
  for (const [name, bytes] of files) body.append('files', new Blob([Uint8Array.from(bytes)]), name)
  return body
}

const all = () => form(workbooks.map((bytes, i) => [`2026-10/${i + 1}.xlsx`, bytes] as const))
const lines = async (response: Response) =>
  (await response.text())
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Record<string, never>)

describe('POST /v1/registers', () => {
  it('answers in JSON lines: progress, then the register', async () => {
    const base = await listen(createApp())
    const response = await fetch(`${base}/v1/registers?asOf=2026-10-31&month=2026-10`, {
      method: 'POST',
      body: all(),
    })
    expect(response.status).toBe(200)
    expect(response.headers.get('content-type')).toMatch(/^application\/x-ndjson/)
    const said = await lines(response)
    expect(said.slice(0, -1)).toEqual([1, 2, 3, 4].map((done) => ({ progress: { done, of: 4 } })))
    const { register } = said.at(-1) as unknown as {
      register: { rows: { file: string }[]; leftOut: unknown[] }
    }
    expect(register.rows.map(({ file }) => file).sort()).toEqual([1, 2, 3, 4].map((i) => `2026-10/${i}.xlsx`))
    expect(register.leftOut).toEqual([])
  })

  it('answers with the workbook where the client asks for it', async () => {
    const base = await listen(createApp())
    const response = await fetch(`${base}/v1/registers?asOf=2026-10-31`, {
      method: 'POST',
      body: all(),
      headers: { accept: XLSX },
    })
    expect(response.headers.get('content-type')).toBe(XLSX)
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load(await response.arrayBuffer())
    expect(workbook.getWorksheet('Register')?.getCell('A10').value).toBe(4)
  })

  it('lists a file that cannot be read instead of failing', async () => {
    const base = await listen(createApp())
    const body = form([
      ['good.xlsx', workbooks[0] ?? new Uint8Array()],
      ['../../etc/bad.xlsx', new Uint8Array([1, 2, 3])],
    ])
    const said = await lines(await fetch(`${base}/v1/registers`, { method: 'POST', body }))
    const { register } = said.at(-1) as unknown as {
      register: { rows: unknown[]; leftOut: { file: string; why: string }[] }
    }
    expect(register.rows).toHaveLength(1)
    expect(register.leftOut).toHaveLength(1)
    expect(register.leftOut[0]?.file).not.toContain('..')
  })

  it('refuses other bodies, parts and questions, each by its status', async () => {
    const base = await listen(createApp())
    const status = async (path: string, body: BodyInit, headers: Record<string, string> = {}) =>
      (await fetch(`${base}${path}`, { method: 'POST', body, headers })).status
    expect(await status('/v1/registers', '{}', { 'content-type': 'application/json' })).toBe(415)
    expect(await status('/v1/registers', form([]))).toBeGreaterThanOrEqual(400)
    const wrong = new FormData()
    wrong.append('other', new Blob(['x']), 'x')
    expect(await status('/v1/registers', wrong)).toBe(422)
    expect(await status('/v1/registers?month=October', all())).toBe(400)
    expect(await status('/v1/registers', all(), { accept: 'image/png' })).toBe(406)
    const cut = '--b\r\nContent-Disposition: form-data; name="files"; filename="a.xlsx"\r\n\r\nabc'
    expect(await status('/v1/registers', cut, { 'content-type': 'multipart/form-data; boundary=b' })).toBe(
      400,
    )
  })
})

describe('POST /v1/reruns', () => {
  it('answers in JSON lines: progress, then what differs', async () => {
    const base = await listen(createApp())
    const said = await lines(
      await fetch(`${base}/v1/reruns?asOf=2030-01-01`, { method: 'POST', body: all() }),
    )
    const { rerun } = said.at(-1) as unknown as { rerun: { counts: Record<string, number>; asOf: string } }
    expect(rerun.counts['exactly as issued']).toBe(4)
    expect(rerun.asOf).toBe('2030-01-01')
  })

  it('refuses a private key, so that none is handed round by mistake', async () => {
    const { makeKeyPair } = await import('../../service/src/signature/keys')
    const base = await listen(createApp())
    const body = all()
    body.append('keys', new Blob([makeKeyPair().privateKey]), 'firm')
    const response = await fetch(`${base}/v1/reruns`, { method: 'POST', body })
    expect(response.status).toBe(422)
    expect(await response.text()).toContain('this is a private key')
  })
})

describe('POST /v1/buildings', () => {
  it('puts the homes together, as data and as a workbook', async () => {
    const base = await listen(createApp())
    const homes = await Promise.all(
      inventedMonth(3).map((record) =>
        writeSummaryWorkbook({ ...record, target: { preset: 'passive-house-new' } }),
      ),
    )
    const body = () => form(homes.map((bytes, i) => [`flat ${i + 1}.xlsx`, bytes] as const))
    const url = `${base}/v1/buildings?rule=summed&name=Invented%20Court`
    const said = await lines(await fetch(url, { method: 'POST', body: body() }))
    expect(said.at(-1)).toMatchObject({
      building: {
        format: 'draughtbook/building@1',
        name: 'Invented Court',
        rule: 'summed',
        homes: [{ file: 'flat 1.xlsx' }, { file: 'flat 2.xlsx' }, { file: 'flat 3.xlsx' }],
      },
    })
    const written = await fetch(url, { method: 'POST', body: body(), headers: { accept: XLSX } })
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load(await written.arrayBuffer())
    expect(workbook.worksheets.map(({ name }) => name)).toEqual(['Building', 'Homes', 'Working'])
  })

  it('refuses a building of which one file cannot be read', async () => {
    const base = await listen(createApp())
    const [first = new Uint8Array()] = workbooks
    const said = await lines(
      await fetch(`${base}/v1/buildings`, {
        method: 'POST',
        body: form([
          ['flat 1.xlsx', first],
          ['flat 2.xlsx', first.slice(0, 9000)],
        ]),
      }),
    )
    expect(said.at(-1)).toMatchObject({ problem: { status: 422, errors: [{ path: 'flat 2.xlsx' }] } })
  })
})

describe('POST /v1/stages', () => {
  it('says what each stage uses of the target, as data and as a workbook; a file that cannot be read is named', async () => {
    const base = await listen(createApp())
    const [record] = inventedMonth(1)
    const tests = await Promise.all(
      (['fabric', 'acceptance'] as const).map((stage) =>
        writeSummaryWorkbook({
          ...record,
          test: { ...record?.test, stage },
          target: { preset: 'passive-house-new' },
        } as TestRecord),
      ),
    )
    const [first = new Uint8Array()] = tests
    const body = () =>
      form([
        ...tests.map((bytes, i) => [`test ${i + 1}.xlsx`, bytes] as const),
        ['cut.xlsx', first.slice(0, 9000)],
      ])
    const url = `${base}/v1/stages?fabric=60&confidence=90`
    const said = await lines(await fetch(url, { method: 'POST', body: body() }))
    expect(said.at(-1)).toMatchObject({
      stages: {
        format: 'draughtbook/stages@1',
        shares: { fabric: 0.6, 'after services': 0.9, acceptance: 1 },
        confidence: 0.9,
        stages: [
          { stage: 'fabric', file: 'test 1.xlsx' },
          { stage: 'acceptance', file: 'test 2.xlsx' },
        ],
        leftOut: [{ file: 'cut.xlsx' }],
      },
    })
    const written = await fetch(url, { method: 'POST', body: body(), headers: { accept: XLSX } })
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load(await written.arrayBuffer())
    expect(workbook.worksheets.map(({ name }) => name)).toEqual(['Site', 'Allowance', 'Working'])
    expect((await fetch(`${base}/v1/stages?fabric=0`, { method: 'POST', body: body() })).status).toBe(400)
  })
})
