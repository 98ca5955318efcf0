import { request } from 'node:http'
import { describe, expect, it, onTestFinished } from 'vitest'
import { createApp } from '../../service/src/app'
import { type Jobs, jobsHere } from '../../service/src/jobs/jobs'
import { RunningState } from '../../service/src/running/state'
import { listen, postJson } from './support/listen'
import { demoRecord } from './support/record'
import { settings } from './support/settings'

const RECORD = JSON.stringify(demoRecord())

/** Begins to send a body and never ends. Resolves once the service has the headers. */
function beginBody(base: string): Promise<void> {
  return new Promise((resolve) => {
    const sent = request(`${base}/v1/evaluations`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'content-length': 1000, expect: '100-continue' },
    })
    onTestFinished(() => void sent.destroy())
    sent.on('error', () => undefined)
    sent.once('continue', () => sent.write('{', () => resolve()))
    sent.flushHeaders()
  })
}

describe('a place among the requests in hand', () => {
  it('is taken by whole requests: slow senders keep nobody out', async () => {
    const base = await listen(createApp({ settings: settings({ concurrency: 4 }) }))
    await Promise.all(Array.from({ length: 12 }, () => beginBody(base)))
    expect((await postJson(`${base}/v1/evaluations`, RECORD)).status).toBe(200)
  })

  it('is not given to one caller alone', () => {
    const state = new RunningState(10, 5)
    const ask = (key: string) => {
      let answer: unknown = 'taken'
      const response = { locals: { caller: { key } }, once: () => response }
      state.admit({} as never, response as never, (fault?: unknown) => {
        if (fault) answer = fault
      })
      return answer
    }
    const many = Array.from({ length: 8 }, () => ask('one'))
    expect(many.filter((answer) => answer === 'taken').length).toBe(5)
    expect(ask('other')).toBe('taken')
  })
})

describe('a body of more than a few kB', () => {
  const padding = ' '.repeat(5000)
  it.each([
    ['/v1/plans', 'POST', 'plan', []],
    ['/v1/take-offs', 'POST', 'takeOff', []],
    ['/v1/running-estimates', 'POST', 'runningEstimate', []],
    ['/v1/leak-reports', 'POST', 'leakReport', []],
    // A few cells may name the far corners of many sheets: it is never worked on by the event loop, however small.
    ['/v1/readings', 'POST', 'readings', ['readings']],
    ['/v1/library/devices/fan-a', 'PUT', 'libraryEntry', []],
  ])('is never worked on by the event loop: %s', async (path, method, task, whenSmall) => {
    const ran: string[] = []
    const jobs: Jobs = {
      ...jobsHere,
      run: (name, input, signal) => {
        ran.push(name)
        return jobsHere.run(name, input, signal)
      },
    }
    const base = await listen(createApp({ jobs, settings: settings({ library: '/nowhere' }) }))
    const send = (body: string) =>
      fetch(base + path, {
        method,
        body,
        headers: { 'content-type': 'application/json', 'if-none-match': '*' },
      })
    expect((await send(`{"a":1,"a":2}${padding}`)).status).toBe(400)
    expect(ran).toEqual([task])
    expect((await send('{"a":1,"a":2}')).status).toBe(400)
    expect(ran).toEqual([task, ...whenSmall])
  })
})
