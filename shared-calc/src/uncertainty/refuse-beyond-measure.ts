import { InputError } from '../contract/problem.js'
import type { Block } from '../engine/index.js'

/**
 * Readings may lie so near to zero that an interval about them leaves the numbers: nothing can be said of such a test.
 * @throws InputError when a block holds what is no finite number
 */
export function refuseBeyondMeasure(blocks: readonly Block[]): void {
  const beyond = blocks.find((block) => !block.isFinite())
  if (!beyond) return
  throw new InputError([
    {
      path: 'runs',
      message: `${beyond.title}: the result is not finite. Pressures or flows are too close to zero for their uncertainty, or far from any curve; check them`,
    },
  ])
}
