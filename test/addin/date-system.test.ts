import { describe, expect, it } from 'vitest'
import { dateSystem } from '../../addin/src/host/excel/date-system.js'

// 14 October 2026 is day 46 309 counted from 1900 and day 44 847 counted from 1904 (1 462 days less; ECMA-376 part 1, 18.17.4.1).
const date = (serial: number, shown: string) => ({ serial, shown, cell: 'Log!B4' })

describe('the date system of an open workbook', () => {
  it('is 1900 where the day number gives the year that is shown', () => {
    expect(dateSystem([date(46_309, '14/10/2026')])).toEqual({ date1904: false, findings: [] })
  })

  it('is 1904 where only the later start gives the year that is shown', () => {
    expect(dateSystem([date(44_847, '2026-10-14')])).toEqual({ date1904: true, findings: [] })
  })

  it('passes over dates that do not show their year', () => {
    expect(dateSystem([date(44_847, '14 Oct'), date(44_847, '14.10.2026')]).date1904).toBe(true)
  })

  it('is taken as 1900 with a finding that names the cells where no date shows a whole year', () => {
    const { date1904, findings } = dateSystem([date(44_847, '14.10.26')])
    expect(date1904).toBe(false)
    expect(findings).toMatchObject([{ rule: 'log-date-system', severity: 'note', cells: ['Log!B4'] }])
  })

  it('needs no finding in a workbook without dates', () => {
    expect(dateSystem([])).toEqual({ date1904: false, findings: [] })
  })
})
