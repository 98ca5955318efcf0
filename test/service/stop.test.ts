import { connect } from 'node:net'
import { describe, expect, it } from 'vitest'
import { postJson } from './support/listen'
import { demoRecord } from './support/record'
import { spawnService } from './support/spawned'

const RECORD = JSON.stringify(demoRecord())

describe('a service told to stop', () => {
  it('finishes what it began, under load, loses no answer and ends with 0', async () => {
    const { base, child, ended, text } = await spawnService({ args: ['--drain', '3', '--queue', '200'] })
    const asked = Array.from({ length: 30 }, (_, i) =>
      postJson(`${base}/v1/${i % 2 ? 'workbooks' : 'evaluations'}`, RECORD).then(async (answer) => ({
        status: answer.status,
        bytes: (await answer.arrayBuffer()).byteLength,
      })),
    )
    // All are under way once the first is answered.
    await Promise.any(asked)
    child.kill('SIGTERM')
    await expect.poll(async () => (await fetch(`${base}/readyz`)).status).toBe(503)
    const health = await fetch(`${base}/healthz`)
    expect(health.status).toBe(200)
    // Whoever keeps connections open must not send the next request on this one.
    expect(health.headers.get('connection')).toBe('close')
    const answers = await Promise.all(asked)
    expect(answers.map(({ status }) => status)).toEqual(Array(30).fill(200))
    expect(Math.min(...answers.map(({ bytes }) => bytes))).toBeGreaterThan(1000)
    expect(await ended).toBe(0)
    expect(text()).toMatch(/SIGTERM, finishing running requests[\s\S]*stopped/)
    expect(text().match(/"audit":true/g)?.length).toBeGreaterThanOrEqual(30)
    await expect(fetch(`${base}/healthz`)).rejects.toThrow()
  })

  it('does not wait for idle connections, nor longer than allowed for others', async () => {
    const { base, child, ended, text } = await spawnService({ args: ['--grace', '1'] })
    await fetch(`${base}/healthz`)
    const socket = connect(Number(new URL(base).port), '127.0.0.1')
    socket.on('error', () => undefined)
    socket.write('POST /v1/evaluations HTTP/1.1\r\nhost: localhost\r\ncontent-length: 100\r\n\r\n')
    await new Promise((resolve) => setTimeout(resolve, 100))
    child.kill('SIGINT')
    // 3: something was not finished (service/deploy/README.md).
    expect(await ended).toBe(3)
    expect(text()).toMatch(/some requests were not finished within 1 s[\s\S]*stopped/)
  })

  it('ends within what is allowed while its threads are busy', async () => {
    const { base, child, ended } = await spawnService({ args: ['--grace', '1', '--workers', '1'] })
    const asked = Array.from({ length: 60 }, () =>
      postJson(`${base}/v1/workbooks`, RECORD).catch(() => undefined),
    )
    await Promise.race(asked)
    child.kill('SIGTERM')
    expect(await ended).toBe(3)
    await Promise.all(asked)
  })

  it('answers that it lives at once, and says what it waits for until it is ready', async () => {
    const { base, text } = await spawnService()
    expect((await fetch(`${base}/healthz`)).status).toBe(200)
    expect(text()).toMatch(/starting; waiting for a thread that evaluates and a thread that writes workbooks/)
    await expect.poll(async () => (await fetch(`${base}/readyz`)).status, { timeout: 50_000 }).toBe(200)
    await expect.poll(text).toMatch(/^draughtbook: ready$/m)
  })

  it('says why when the address is taken', async () => {
    const { base } = await spawnService()
    const port = new URL(base).port
    await expect(spawnService({ args: ['--port', port] })).rejects.toThrow(
      `127.0.0.1:${port} is in use by another program`,
    )
  })
})
