import type { Block } from '../engine/index.js'

/** No bounds can be set about a figure: the budget is left out, and a finding says so. The method's figures stand. */
export class UnboundedUncertainty extends Error {
  /** @param block - title of the block that holds what is no finite number */
  constructor(readonly block: string) {
    super(`${block}: no finite number`)
  }
}

/**
 * Readings may lie so near to zero that an interval about them leaves the numbers.
 * @throws UnboundedUncertainty when a block holds what is no finite number
 */
export function refuseBeyondMeasure(blocks: readonly Block[]): void {
  const beyond = blocks.find((block) => !block.isFinite())
  if (beyond) throw new UnboundedUncertainty(beyond.title)
}
