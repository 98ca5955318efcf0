import { interpretLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { book, type Rows } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, n50Of, read, sheetOfForm, zeroRows } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const close = closeTo(0.0008)
const flows = dep.readings.map(([, flow]) => flow)
/** The readings with the flow of one of them written otherwise. */
const withFlow = (index: number, cell: Rows[number][number]): Rows =>
  dep.readings.map(([pressure, flow], at) => [pressure, at === index ? cell : flow])
const logOf = (readings: Rows, headings = HEADINGS) => sheetOfForm([...zeroRows(dep), headings, ...readings])

describe('what it takes to read a number is said with its cell', () => {
  const findings = async (readings: Rows) => {
    const { tests } = interpretLog({ bytes: await logOf(readings), fileName: 'log.xlsx' })
    return tests[0]?.findings.map(({ message, cells }) => `${message} ${cells?.join()}`).join('\n')
  }

  it('of a flow in a unit of its own', async () => {
    const said = await findings(withFlow(2, `${((flows[2] as number) / 3.6).toFixed(2)} l/s`))
    expect(said).toMatch(/states its own unit, l\/s, .*B13/)
    expect(said).toMatch(/The value in l\/s was converted .*B13/)
  })

  it('of a number stored as text', async () => {
    expect(await findings(withFlow(2, (flows[2] as number).toFixed(1).replace('.', ',')))).toMatch(
      /stored as text with a decimal comma\..*B13/,
    )
  })

  it('of a number with a remark, and of one marked as approximate', async () => {
    const said = await findings(withFlow(2, `${flows[2]} (gusty)`))
    expect(said).toMatch(/remark "\(gusty\)".*B13/)
    expect(await findings(withFlow(2, `~ ${flows[2]}`))).toMatch(/marked as approximate.*B13/)
  })

  it('of the result of a formula', async () => {
    const formula = { formula: `${flows[2]}*1`, result: flows[2] as number }
    expect(await findings(withFlow(2, formula as never))).toMatch(/holds a formula.*B13/)
  })
})

it('refuses a reading in a unit of something else', async () => {
  const { problems, record } = read(await logOf(withFlow(2, `${flows[2]} Pa`)))
  expect(record).toBeUndefined()
  expect(problems.join()).toMatch(/Pa is a unit of pressure; a flow is expected/)
})

it('asks what a number means that may be two', async () => {
  const rows: Rows = FORM.map((row) => (row[0] === 'Internal volume (m³)' ? [row[0], '41,412'] : row))
  const bytes = await book({ Test: [...rows, [null], ...zeroRows(dep), HEADINGS, ...dep.readings] })
  const { asked, texts, choices } = read(bytes)
  expect(asked).toEqual(['decimal'])
  expect(texts.join()).toMatch(/Is the number in B3 41412 or 41\.412\?/)
  expect(choices).toEqual(['.', ','])
  expect(read(bytes, { decimal: '.' }).record?.building.volume_m3).toBe(41412)
  close(read(await logOf(dep.readings)).n50, n50Of([dep]))
})

it('does not ask where one of the two is no house', async () => {
  const rows: Rows = FORM.map((row) => (row[0] === 'Internal volume (m³)' ? [row[0], '1,412'] : row))
  const { asked, record } = read(
    await book({ Test: [...rows, [null], ...zeroRows(dep), HEADINGS, ...dep.readings] }),
  )
  expect(asked).toEqual([])
  expect(record?.building.volume_m3).toBe(1412)
})
