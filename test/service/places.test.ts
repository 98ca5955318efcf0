import { EventEmitter } from 'node:events'
import { request } from 'node:http'
import { builtInLayouts } from '@draughtbook/shared-calc/log'
import express, { type Response } from 'express'
import { describe, expect, it, onTestFinished } from 'vitest'
import { createApp } from '../../service/src/app'
import { onceOver } from '../../service/src/http/gone'
import { readWhole } from '../../service/src/http/read-body'
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

  it('is not taken by a sender who has gone while what was sent was looked at', async () => {
    const state = new RunningState(10)
    let seen: (signal: AbortSignal) => void = () => undefined
    const looking = new Promise<AbortSignal>((resolve) => {
      seen = resolve
    })
    // Its look at a layout goes on after the sender has gone, as a read of a file does.
    const jobs = {
      ...jobsHere,
      run: async (_name: unknown, _input: unknown, signal: AbortSignal) => {
        seen(signal)
        await new Promise((resolve) => signal.addEventListener('abort', resolve))
        return { value: builtInLayouts[0] }
      },
    } as unknown as Jobs
    const base = await listen(createApp({ jobs, state }))
    const form = new FormData()
    form.append('files', new Blob(['a,b']), 'a.csv')
    form.append('layouts', new Blob(['{}']), 'a.json')
    const gone = new AbortController()
    const sent = fetch(`${base}/v1/registers`, { method: 'POST', body: form, signal: gone.signal })
    const signal = await looking
    gone.abort()
    await expect(sent).rejects.toThrow()
    await expect.poll(() => signal.aborted).toBe(true)
    // Answered after whatever the one before would still do.
    expect((await fetch(`${base}/v1/methods`)).status).toBe(200)
    expect(state.inHand).toBe(0)
  })
})

it('what is to be done once an answer is over is done at once where its client has gone already', () => {
  const done: string[] = []
  onceOver({ destroyed: true, once: () => undefined } as unknown as Response, () => done.push('gone before'))
  const response = Object.assign(new EventEmitter(), { destroyed: false })
  onceOver(response as unknown as Response, () => done.push('goes later'))
  expect(done).toEqual(['gone before'])
  response.emit('close')
  expect(done).toEqual(['gone before', 'goes later'])
})

describe('the memory for bodies that are being received', () => {
  it('is counted as they arrive: who would send more than there is room for is turned away', async () => {
    const app = express()
    const receiving = { most: 1000, bytes: 0 }
    app.post('/', readWhole(10_000, receiving), (_request, response) => void response.send('taken'))
    app.use(((error, _request, response, _next) => {
      response.status(error.status).send('turned away')
    }) satisfies express.ErrorRequestHandler)
    const base = await listen(app)
    const begin = () => {
      const sent = request(base, { method: 'POST', headers: { 'content-length': 1200 } })
      onTestFinished(() => void sent.destroy())
      sent.on('error', () => undefined)
      const status = new Promise<number>((resolve) => {
        sent.once('response', (answer) => resolve(answer.resume().statusCode ?? 0))
      })
      sent.write('x'.repeat(400))
      return { sent, status }
    }
    const [one, other] = [begin(), begin()]
    await expect.poll(() => receiving.bytes).toBe(800)
    one.sent.write('x'.repeat(400))
    expect(await one.status).toBe(503)
    // What it had sent makes room.
    await expect.poll(() => receiving.bytes).toBe(400)
    other.sent.write('x'.repeat(500))
    await expect.poll(() => receiving.bytes).toBe(900)
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

describe('what may take long', () => {
  const long = 300 * 1024
  it.each<[string, () => RequestInit]>([
    ...['registers', 'buildings', 'stages', 'reruns'].map((path): [string, () => RequestInit] => [
      path,
      () => {
        const body = new FormData()
        body.append('files', new Blob(['a,b']), 'a.csv')
        return { body }
      },
    ]),
    ['readings', () => ({ body: `{}${' '.repeat(long)}`, headers: { 'content-type': 'application/json' } })],
  ])('has threads of its own, so that nothing quick waits behind it: %s', async (path, sent) => {
    const ran: string[] = []
    const noting = (threads: string): Jobs => ({
      ...jobsHere,
      run: (name, input, signal) => {
        ran.push(threads)
        return jobsHere.run(name, input, signal)
      },
    })
    const base = await listen(createApp({ jobs: noting('quick'), longJobs: noting('long') }))
    const query = path === 'buildings' ? '?rule=summed' : ''
    const answer = await fetch(`${base}/v1/${path}${query}`, { method: 'POST', ...sent() })
    await answer.text()
    expect([...new Set(ran)], `${answer.status}`).toEqual(['long'])
  })
})
