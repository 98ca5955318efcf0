import { parseLayout, readLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { madeUpLogs } from './logs/index'
import { expectRecord } from './support/expect-record'

describe.each(madeUpLogs)('$name: $imitates', ({ fileName, write, layout, records, findings }) => {
  it('is read into exactly these records', async () => {
    const read = readLog(await write(), fileName, { layout: parseLayout(layout) })
    expect(read.problems).toEqual([])
    expect(read.tests).toHaveLength(records.length)
    for (const [index, expected] of records.entries())
      expectRecord(read.tests[index]?.record, expected, `tests[${index}]`)
  })

  it('tells of every conversion and omission with its cells, and of nothing else', async () => {
    const read = readLog(await write(), fileName, { layout: parseLayout(layout) })
    const told = (read.tests[0]?.findings ?? []).map(({ rule, cells = [] }) => [rule, ...cells])
    expect(told).toEqual([['log-layout'], ...findings])
  })

  it('names a cell for every value of the record that the layout does not state itself', async () => {
    const { layout: given, ...rest } = { layout: parseLayout(layout), bytes: await write() }
    const [test] = readLog(rest.bytes, fileName, { layout: given }).tests
    const stated = Object.keys(given.constants)
    for (const path of leaves(test?.record))
      if (!stated.includes(path) && path !== 'format' && !(path.endsWith('.direction') && fixed(given)))
        expect(cellFor(path, test?.cells ?? {}), path).toMatch(/^.+![A-Z]+\d+(:[A-Z]+\d+)?$/)
  })
})

describe('without a layout', () => {
  it.each(madeUpLogs.filter(({ proposable }) => proposable))(
    'the $name is understood from its own words',
    async ({ fileName, write, records }) => {
      const read = readLog(await write(), fileName, { acceptProposal: true })
      expect(read.problems).toEqual([])
      for (const [index, expected] of records.entries())
        expectRecord(read.tests[index]?.record, expected, `tests[${index}]`)
    },
  )

  it.each(madeUpLogs)('the $name is not read unless someone confirms', async ({ fileName, write }) => {
    const read = readLog(await write(), fileName)
    expect(read.tests).toEqual([])
    expect(read.problems).toMatchObject([{ code: 'no-layout' }])
  })
})

const fixed = ({ runs, series }: ReturnType<typeof parseLayout>) =>
  [...runs, ...series].some(({ direction }) => typeof direction === 'string')

/** A raw series gives one range for a whole list of zero-flow values, and for averages of many cells. */
function cellFor(path: string, cells: Readonly<Record<string, string>>): string {
  return (
    cells[path] ??
    cells[path.replace(/\[\d+\]$/, '')] ??
    (/averagingTime_s|\.range$/.test(path) ? 'layout!A1' : '')
  )
}

function leaves(value: unknown, path = ''): string[] {
  if (Array.isArray(value)) return value.flatMap((one, index) => leaves(one, `${path}[${index}]`))
  if (typeof value === 'object' && value !== null)
    return Object.entries(value).flatMap(([key, one]) => leaves(one, path ? `${path}.${key}` : key))
  return [path]
}
