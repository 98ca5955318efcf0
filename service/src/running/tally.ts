/** How many of something each caller has. A caller that has none left takes no memory. */
export class Tally {
  private readonly counts = new Map<string, number>()

  of(caller: string): number {
    return this.counts.get(caller) ?? 0
  }

  add(caller: string): void {
    this.counts.set(caller, this.of(caller) + 1)
  }

  remove(caller: string): void {
    const left = this.of(caller) - 1
    if (left > 0) this.counts.set(caller, left)
    else this.counts.delete(caller)
  }
}
