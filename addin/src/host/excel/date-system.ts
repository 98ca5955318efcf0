import { dateOfSerial, type Finding, fileText, remarkFinding } from '@draughtbook/shared-calc/log'

/** A cell that holds a day number, with what Excel shows of it. */
export interface ShownDate {
  readonly serial: number
  readonly shown: string
  readonly cell: string
}

export interface DateSystem {
  readonly date1904: boolean
  readonly findings: Finding[]
}

/**
 * Whether a workbook counts its days from 1900 or from 1904. Office.js does not say, so the years that Excel shows
 * decide; where no date shows a whole year, 1900 is taken and a finding says so.
 */
export function dateSystem(dates: readonly ShownDate[]): DateSystem {
  for (const { serial, shown } of dates) {
    const year = /(?<!\d)(?:19|20)\d\d(?!\d)/.exec(shown)?.[0]
    if (year === undefined) continue
    if (dateOfSerial(serial, false)?.startsWith(year)) return { date1904: false, findings: [] }
    if (dateOfSerial(serial, true)?.startsWith(year)) return { date1904: true, findings: [] }
  }
  const cells = dates.map(({ cell }) => cell)
  return {
    date1904: false,
    findings: cells.length === 0 ? [] : [remarkFinding(fileText('log-date-system'), cells, ['test.date'])],
  }
}
