import { withMinus } from '@draughtbook/shared-calc'
import { type RerunTest, type ThreeValues, threeValues } from '@draughtbook/shared-calc/rerun'
import type { TableColumn } from '../month/sortable-table.js'

/** One thing that differs, as the table shows it. */
export interface DifferenceRow {
  readonly file: string
  readonly building: string | undefined
  readonly which: string
  readonly cell: string | undefined
  readonly unit: string | undefined
  readonly values: ThreeValues
}

/** Rows of one file at most; the workbook lists more. */
const MOST = 60

/** What differs by more than rounding in all files; under a changed input the figures that follow from it. */
export function differenceRows(
  tests: readonly RerunTest[],
  names: ReadonlyMap<string, string>,
): { readonly rows: DifferenceRow[]; readonly left: number } {
  let left = 0
  const rows = tests.flatMap(({ file, building, differences }) => {
    const all = differences
      .filter(({ rounding }) => !rounding)
      .flatMap((one) => [
        { one, following: false },
        ...(one.follows ?? []).map((figure) => ({ one: figure, following: true })),
      ])
    left += Math.max(0, all.length - MOST)
    return all.slice(0, MOST).map(({ one, following }) => ({
      file: names.get(file) ?? file,
      building,
      which: following ? `… ${one.label}` : one.label,
      cell: one.cell,
      unit: one.unit,
      values: threeValues(one, following),
    }))
  })
  return { rows, left }
}

export const fileColumn: TableColumn<DifferenceRow> = { head: 'File', value: ({ file }) => file }

const valueColumn = (head: string, key: keyof ThreeValues): TableColumn<DifferenceRow> => ({
  head,
  value: ({ values }) => {
    const content = values[key]
    return typeof content === 'number' ? content : content === undefined ? undefined : shown(content)
  },
  text: ({ values }) => shown(values[key]),
})

/** Longest text of a cell; the workbook holds the whole. */
const LONGEST = 80

function shown(content: ThreeValues[keyof ThreeValues]): string {
  if (content === undefined) return ''
  if (content === null) return '(nothing)'
  if (typeof content === 'number') return withMinus(String(Number(content.toPrecision(6))))
  const text = String(content)
  return text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text
}

export const differenceColumns: readonly TableColumn<DifferenceRow>[] = [
  fileColumn,
  { head: 'Plot', value: ({ building }) => building },
  { head: 'Cell', value: ({ cell }) => cell },
  valueColumn('Issued', 'issued'),
  valueColumn('Now in the file', 'inFile'),
  valueColumn('Recalculated', 'workedOut'),
  { head: 'Unit', value: ({ unit }) => unit },
  { head: 'Which', value: ({ which }) => which },
]
