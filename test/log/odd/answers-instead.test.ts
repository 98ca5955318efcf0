import { readFileSync } from 'node:fs'
import type { Finding } from '@draughtbook/shared-calc'
import { builtInLayouts, interpretLog, readLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import type { Rows } from '../support/book'
import { dep, HEADINGS, HOUSE, sheetOfForm, zeroRows } from './house'

// Truth: what is written into the log, and what is answered.
const RUN: Rows = [['Depressurisation'], ...zeroRows(dep), HEADINGS, ...dep.readings]

/** What is said of the answers, each with its cells. */
const saidOf = (findings: readonly Finding[]) =>
  findings
    .filter(({ rule }) => rule === 'log-answer')
    .map(({ severity, message, cells = [] }) => `${severity}: ${message} ${cells.join()}`)

describe('an answer to what the log has', () => {
  it('is used, and the value it takes the place of is named with its cell', async () => {
    const bytes = await sheetOfForm(RUN)
    const answers = { 'building.volume_m3': '10594 ft3', 'test.method': 'EN 13829' }
    const [test] = interpretLog({ bytes, fileName: 'log.xlsx' }, { answers }).tests
    expect(test?.record?.building.volume_m3).toBeCloseTo(10594 * 0.3048 ** 3, 9)
    const said = saidOf(test?.findings ?? [])
    expect(said).toContainEqual(
      expect.stringMatching(
        new RegExp(
          `^caution: Internal volume: your answer "10594 ft3" was used instead of ${HOUSE.volume_m3} m³\\. Test!\\w+`,
        ),
      ),
    )
  })

  it('is only noted where both say the same, or the log says nothing', async () => {
    const bytes = await sheetOfForm(RUN)
    const answers = { 'building.volume_m3': String(HOUSE.volume_m3), 'building.height_m': '5.5' }
    const [test] = interpretLog({ bytes, fileName: 'log.xlsx' }, { answers }).tests
    expect(saidOf(test?.findings ?? []).map((one) => one.split(':')[0])).toEqual(['note', 'note'])
  })

  it('is named where a layout has read the log', () => {
    const bytes = new Uint8Array(readFileSync('test/demo/demo-log.xlsx'))
    const answers = { 'test.date': '2026-10-20', 'building.volume_m3': '243.6' }
    const [test] = readLog(bytes, 'demo-log.xlsx', { layouts: builtInLayouts, answers }).tests
    expect(test?.record?.test.date).toBe('2026-10-20')
    expect(saidOf(test?.findings ?? [])).toEqual([
      'caution: Test date: your answer "2026-10-20" was used instead of 14 October 2026. Log!B4',
      'note: Internal volume: your answer "243.6" was used. Log!B17',
    ])
    // The date is not in that cell any more.
    expect(test?.cells['test.date']).toBeUndefined()
  })
})
