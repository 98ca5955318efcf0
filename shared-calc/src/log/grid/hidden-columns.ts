import { LIMITS } from '../limits.js'

/** The hidden columns of a sheet. A file may name the same ones a million times, so each statement only marks its two ends. */
export class HiddenColumns {
  private readonly ends = new Int32Array(LIMITS.columns + 1)
  private hidden: Uint8Array | undefined

  /** Columns from 0; what is beyond the sheet is skipped. */
  add(first: number, last: number): void {
    const from = Math.max(0, first)
    const to = Math.min(LIMITS.columns - 1, last)
    if (!(from <= to)) return
    this.ends[from] = (this.ends[from] ?? 0) + 1
    this.ends[to + 1] = (this.ends[to + 1] ?? 0) - 1
    this.hidden = undefined
  }

  has(column: number): boolean {
    this.hidden ??= this.marked()
    return this.hidden[column] === 1
  }

  private marked(): Uint8Array {
    const hidden = new Uint8Array(LIMITS.columns)
    let open = 0
    for (let column = 0; column < hidden.length; column++) {
      open += this.ends[column] ?? 0
      hidden[column] = open > 0 ? 1 : 0
    }
    return hidden
  }
}
