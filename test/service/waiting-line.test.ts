import { EventEmitter } from 'node:events'
import { expect, it } from 'vitest'
import { createApp } from '../../service/src/app'
import { HttpFault } from '../../service/src/http/http-fault'
import { RunningState } from '../../service/src/running/state'
import { heldJobs } from './support/held-jobs'
import { listen, postJson } from './support/listen'
import { demoRecord } from './support/record'

const RECORD = JSON.stringify(demoRecord())
/** Longer than a test lasts: what ends the wait there is something else. */
const LONG_ms = 600_000

/** A request of a caller, as the app hands it over: what became of it, and its end. */
function ask(state: RunningState, key: string, bytes = 100) {
  const response = Object.assign(new EventEmitter(), { locals: { caller: { key } }, destroyed: false })
  const asked = {
    became: 'waits' as string | number,
    leaves() {
      response.destroyed = true
      response.emit('close')
    },
  }
  state.admit({ body: Buffer.alloc(bytes) } as never, response as never, (fault?: unknown) => {
    asked.became = fault instanceof HttpFault ? fault.status : 'is in hand'
  })
  return asked
}

it('a burst of small requests is served, the first to come first', () => {
  const state = new RunningState(1, 1, { most: 3, mostOfOne: 3, wait_ms: LONG_ms })
  const [first, second, third] = [ask(state, 'a'), ask(state, 'b'), ask(state, 'c')]
  expect([first.became, second.became, third.became]).toEqual(['is in hand', 'waits', 'waits'])
  expect(state.waiting).toBe(2)
  first.leaves()
  expect([second.became, third.became]).toEqual(['is in hand', 'waits'])
  second.leaves()
  expect(third.became).toBe('is in hand')
  third.leaves()
  expect([state.inHand, state.waiting]).toEqual([0, 0])
})

it('more than may wait, and what is too large to wait, are turned away at once', () => {
  const state = new RunningState(1, 1, { most: 2, mostOfOne: 2, wait_ms: LONG_ms })
  ask(state, 'a')
  expect(ask(state, 'a', 1024 * 1024).became).toBe(503)
  expect([1, 2, 3].map(() => ask(state, 'a').became)).toEqual(['waits', 'waits', 503])
})

it('who waits too long is turned away, and keeps nobody else out', async () => {
  const state = new RunningState(1, 1, { most: 2, mostOfOne: 2, wait_ms: 20 })
  const first = ask(state, 'a')
  const waited = ask(state, 'a')
  await expect.poll(() => waited.became).toBe(503)
  const again = ask(state, 'a')
  expect(again.became).toBe('waits')
  await expect.poll(() => again.became).toBe(503)
  first.leaves()
  expect(ask(state, 'a').became).toBe('is in hand')
})

it('who has gone while waiting gets no place', () => {
  const state = new RunningState(1, 1, { most: 2, mostOfOne: 2, wait_ms: LONG_ms })
  const [first, gone, next] = [ask(state, 'a'), ask(state, 'a'), ask(state, 'a')]
  gone.leaves()
  first.leaves()
  expect(gone.became).toBe(499)
  expect(next.became).toBe('is in hand')
  expect(state.inHand).toBe(1)
})

it('a caller that waits for its own places lets another pass, and cannot fill the line', () => {
  const state = new RunningState(2, 1, { most: 4, mostOfOne: 2, wait_ms: LONG_ms })
  const [one, two] = [ask(state, 'greedy'), ask(state, 'greedy')]
  const other = ask(state, 'other')
  expect([one.became, two.became, other.became]).toEqual(['is in hand', 'waits', 'is in hand'])
  ask(state, 'greedy')
  expect(ask(state, 'greedy').became).toBe(503)
  const third = ask(state, 'third')
  expect(third.became).toBe('waits')
  other.leaves()
  expect([two.became, third.became]).toEqual(['waits', 'is in hand'])
})

it('a burst over the network is answered whole', async () => {
  const { jobs, release } = heldJobs()
  const state = new RunningState(2, 2, { most: 10, mostOfOne: 10, wait_ms: LONG_ms })
  const base = await listen(createApp({ jobs, state }))
  const asked = Array.from({ length: 8 }, async () => (await postJson(`${base}/v1/workbooks`, RECORD)).status)
  await expect.poll(() => state.waiting, { timeout: 20_000 }).toBe(6)
  expect(state.inHand).toBe(2)
  release()
  expect(await Promise.all(asked)).toEqual(Array.from({ length: 8 }, () => 200))
  await expect.poll(() => state.inHand).toBe(0)
})
