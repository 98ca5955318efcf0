/** Rows that are taken from the clipboard at once; no run has as many readings. */
const MOST_ROWS = 200

/** Cells copied in a spreadsheet, row by row; undefined where the text is a single value, which the field itself takes. */
export function pastedRows(text: string): string[][] | undefined {
  const lines = text.trimEnd().split(/\r\n|\n|\r/)
  if (lines.length === 1 && !lines[0]?.includes('\t')) return undefined
  return lines.map((line) => line.split('\t').map((cell) => cell.trim()))
}

/** Why these cells do not fit into a table with so many columns from the cursor on; undefined where they do. */
export function whyNotPasted(rows: readonly (readonly string[])[], columns: number): string | undefined {
  const widest = Math.max(...rows.map(({ length }) => length))
  if (rows.length > MOST_ROWS)
    return `Nothing was pasted: the clipboard holds ${rows.length} rows, and at most ${MOST_ROWS} are taken at once.`
  if (widest > columns)
    return `Nothing was pasted: the clipboard holds ${widest} columns, and from here on the table has ${columns}. Copy only these columns.`
  return undefined
}
