/** Where the lines of a text begin, found once however many places are asked for. */
export class LineTable {
  private readonly starts: readonly number[]

  constructor(text: string) {
    const starts = [0]
    for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1)
    this.starts = starts
  }

  /** Line and column of a place, both counted from 1. */
  place(offset: number): { line: number; column: number } {
    let low = 0
    let high = this.starts.length - 1
    while (low < high) {
      const middle = Math.ceil((low + high) / 2)
      if ((this.starts[middle] ?? 0) <= offset) low = middle
      else high = middle - 1
    }
    return { line: low + 1, column: offset - (this.starts[low] ?? 0) + 1 }
  }

  /** "line 3, column 7". */
  text(offset: number): string {
    const { line, column } = this.place(offset)
    return `line ${line}, column ${column}`
  }
}
