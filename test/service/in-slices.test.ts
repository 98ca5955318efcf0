import { IncomingMessage, ServerResponse } from 'node:http'
import { Socket } from 'node:net'
import { setImmediate as nextTurn } from 'node:timers/promises'
import { describe, expect, it } from 'vitest'
import { inSlices } from '../../service/src/running/in-slices'

/** Hands over so many requests at once, each of which takes so long by a clock of the test's own. */
function handOver(count: number, each_ms: number) {
  let clock = 0
  const begun: string[] = []
  const take = inSlices(
    (request) => {
      begun.push(request.url ?? '')
      clock += each_ms
    },
    () => clock,
  )
  const responses = Array.from({ length: count }, (_, i) => {
    const request = new IncomingMessage(new Socket())
    request.url = `/${i}`
    const response = new ServerResponse(request)
    take(request, response)
    return response
  })
  return { begun, responses }
}

const addresses = (count: number) => Array.from({ length: count }, (_, i) => `/${i}`)

describe('requests that arrive together', () => {
  it('are all begun at once while that is quick', () => {
    expect(handOver(20, 0.1).begun).toEqual(addresses(20))
  })

  it('are begun over several turns of the event loop when they take long, in their order', async () => {
    const { begun } = handOver(20, 4)
    let turns = 0
    for (; begun.length < 20; turns++) {
      const before = begun.length
      await nextTurn()
      // 15 ms, and whatever the last one takes.
      expect(begun.length - before).toBeLessThanOrEqual(4)
    }
    expect(turns).toBeGreaterThanOrEqual(4)
    expect(begun).toEqual(addresses(20))
  })

  it('are not begun any more where the client has gone meanwhile', async () => {
    const { begun, responses } = handOver(8, 10)
    const waiting = begun.length
    expect(waiting).toBeLessThan(8)
    responses[6]?.destroy()
    while (begun.at(-1) !== '/7') await nextTurn()
    expect(begun).toEqual(addresses(8).filter((address) => address !== '/6'))
  })
})
