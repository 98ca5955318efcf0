/** Steps that can be taken back; more than anybody goes. */
const MOST = 200

/** What was there before each change, latest last. */
export class Past<T> {
  #states: T[] = []
  #last: string | undefined

  /** @param what names what is changed: changes of the same thing in a row are one step */
  add(before: T, what: string | undefined): void {
    if (what !== undefined && what === this.#last) return
    this.#last = what
    this.#states = [...this.#states.slice(1 - MOST), before]
  }

  take(): T | undefined {
    this.#last = undefined
    return this.#states.pop()
  }

  get any(): boolean {
    return this.#states.length > 0
  }

  clear(): void {
    this.#states = []
    this.#last = undefined
  }
}
