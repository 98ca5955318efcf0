import { plainWord } from '../../cells/fields.js'
import type { FoundRun } from '../tables/runs.js'
import { readLabel, says } from '../words/label.js'

/** The ring or plate of a whole run stands so many rows over its headings at most. */
const ROWS_OVER = 8
/** And so many columns beside its table. */
const COLUMNS_BESIDE = 6

/**
 * "Plate | B" or "Pressurisation, plate: B" over the readings of a run: the ring or plate that was used for all of them.
 * @param labels - the ranges that the device has; a text that names none or several of them states nothing
 */
export function rangeOverRun(
  run: FoundRun,
  runs: readonly FoundRun[],
  labels: readonly string[],
): { text: string; cell: string } | undefined {
  const { view, block, left, right } = run
  if (view.turned || run.row !== undefined) return undefined
  const { top } = block.segment.head
  const above = Math.max(
    -1,
    ...runs.filter((one) => one.view.name === view.name && one.bottom < top).map(({ bottom }) => bottom),
  )
  const found = new Map<string, string>()
  for (let row = Math.max(above + 1, top - ROWS_OVER); row < top; row++)
    for (let column = Math.max(0, left - 1); column <= right + COLUMNS_BESIDE; column++) {
      const text = view.text(row, column)
      if (text === undefined || text.length > 70 || !says(readLabel(text), 'range')) continue
      const beside = view.text(row, column + 1) ?? view.number(row, column + 1)?.toString()
      const named = (beside === undefined ? behindWord(text) : [beside])
        .map((one) => namedIn(one, labels))
        .find((one) => one)
      if (named !== undefined) found.set(named, view.address(row, beside === undefined ? column : column + 1))
    }
  const [only, ...more] = found
  return only && more.length === 0 ? { text: only[0], cell: only[1] } : undefined
}

/** The words behind that for a ring or plate: "plate: B", "ring used: 2". */
const behindWord = (text: string): string[] => {
  const words = text.split(/[\s:=,;()]+/)
  const at = words.findIndex((word) => says(readLabel(word), 'range'))
  return words.slice(at + 1, at + 3).filter((word) => word !== 'a')
}

const namedIn = (text: string, labels: readonly string[]): string | undefined => {
  const wanted = plainWord(text)
  return labels.find((label) => {
    const name = plainWord(label)
    return wanted !== '' && (name === wanted || ` ${name} `.endsWith(` ${wanted} `))
  })
}
