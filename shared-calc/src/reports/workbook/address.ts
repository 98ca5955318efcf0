/** A cell of the workbook; column and row count from 1. */
export interface Address {
  readonly sheet: string
  readonly column: number
  readonly row: number
}

/** A column's letters: 1 → A, 27 → AA. */
export function columnLetters(column: number): string {
  let text = ''
  for (let rest = column; rest > 0; rest = Math.floor((rest - 1) / 26))
    text = String.fromCharCode(65 + ((rest - 1) % 26)) + text
  return text
}

/** `$C$5`, or `Working!$C$5` as seen from another sheet. Sheet names of this project need no quotes. */
export function reference({ sheet, column, row }: Address, from?: string): string {
  const cell = `$${columnLetters(column)}$${row}`
  return sheet === from ? cell : `${sheet}!${cell}`
}

/** `Readings!$B$5:$B$14` for cells one below the other. */
export function rangeReference(first: Address, count: number, from?: string): string {
  return `${reference(first, from)}:$${columnLetters(first.column)}$${first.row + count - 1}`
}
