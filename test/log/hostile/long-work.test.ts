import { LogError, readLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { longWork } from './long-work'

/**
 * Processor time, which other work on the machine does not lengthen: each of these takes well under a second, and took
 * between six seconds and minutes as long as a step of it was of the square or the cube of its size.
 */
const MOST_s = 4

describe('a file made to take long', () => {
  it.each(longWork)('$name is read or refused in time that grows with its size', ({ make, fileName }) => {
    const bytes = make()
    const before = process.cpuUsage()
    let refused: unknown
    try {
      readLog(bytes, fileName, { acceptProposal: true })
    } catch (error) {
      refused = error
    }
    const { user, system } = process.cpuUsage(before)
    expect((user + system) / 1e6).toBeLessThan(MOST_s)
    if (refused) expect(refused).toBeInstanceOf(LogError)
  })
})
