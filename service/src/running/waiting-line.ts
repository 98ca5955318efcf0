import { Tally } from './tally.js'

export interface WaitingLineBounds {
  /** Most that wait at one time. */
  readonly most: number
  /** Most of them for one caller. */
  readonly mostOfOne: number
  /** After this time, one that waits is turned away. */
  readonly wait_ms: number
}

export interface Waiting {
  /** The caller. */
  readonly key: string
  /** Called once: either this, */
  readonly enter: () => void
  /** or this. */
  readonly turnAway: () => void
}

/** Requests that wait for a place, the first to come the first to enter. */
export class WaitingLine {
  private readonly line: { readonly one: Waiting; readonly until: number }[] = []
  private readonly byCaller = new Tally()
  private timer: NodeJS.Timeout | undefined

  constructor(private readonly bounds: WaitingLineBounds) {}

  /** False where the line is too long already. */
  join(one: Waiting): boolean {
    const { most, mostOfOne, wait_ms } = this.bounds
    if (this.line.length >= most || this.byCaller.of(one.key) >= mostOfOne) return false
    this.byCaller.add(one.key)
    this.line.push({ one, until: performance.now() + wait_ms })
    this.watch()
    return true
  }

  get length(): number {
    return this.line.length
  }

  /** Lets in those for whom there is a place. One whose caller has all places a caller may have keeps nobody behind it waiting. */
  letIn(places: { readonly any: () => boolean; readonly for: (key: string) => boolean }): void {
    for (let at = 0; at < this.line.length && places.any(); ) {
      const { one } = this.line[at] as { one: Waiting }
      if (places.for(one.key)) {
        this.leave(at)
        one.enter()
      } else at++
    }
  }

  private leave(at: number): void {
    const [gone] = this.line.splice(at, 1)
    if (gone) this.byCaller.remove(gone.one.key)
  }

  /** One timer, for the first in the line: all wait equally long. */
  private watch(): void {
    const [first] = this.line
    if (!first || this.timer) return
    this.timer = setTimeout(
      () => {
        this.timer = undefined
        const now = performance.now()
        const late = this.line.findIndex(({ until }) => until > now)
        const over = this.line.slice(0, late < 0 ? this.line.length : late)
        for (const _ of over) this.leave(0)
        for (const { one } of over) one.turnAway()
        this.watch()
      },
      Math.max(1, first.until - performance.now()),
    )
  }
}
