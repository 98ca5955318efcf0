import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it, onTestFinished } from 'vitest'
import { createApp } from '../../service/src/app'
import { startPool } from '../../service/src/jobs/pool'
import { requireBuild } from './support/built'
import { folder } from './support/command-line'
import { listen, postJson } from './support/listen'
import { demoRecord } from './support/record'
import { testPool } from './support/running'
import { spawnService } from './support/spawned'

const RECORD = JSON.stringify(demoRecord())
const body = () => new TextEncoder().encode(RECORD)
const never = new AbortController().signal

describe('requests that are called off', () => {
  it('do not end the thread that works on them, or was about to', async () => {
    const pool = await testPool()
    await pool.run('workbook', { body: body() }, never)
    const thread = pool.pool.threads[0]?.threadId
    for (let i = 0; i < 10; i++) {
      const gone = new AbortController()
      const asked = pool.run('workbook', { body: body() }, gone.signal)
      const waiting = pool.run('workbook', { body: body() }, gone.signal)
      setTimeout(() => gone.abort(), 20)
      await Promise.allSettled([asked, waiting])
    }
    const { bytes } = await pool.run('workbook', { body: body() }, never)
    expect(bytes.length).toBeGreaterThan(10_000)
    expect(pool.pool.threads.map(({ threadId }) => threadId)).toEqual([thread])
  })
})

describe('a file that never ends', () => {
  const ENTRY = fileURLToPath(new URL('./support/endless-worker.mjs', import.meta.url))

  it('keeps no workbook waiting, and is set aside after its time', async () => {
    await requireBuild()
    const longJobs = startPool({ workers: 1, queue: 4, file: ENTRY, deadline_ms: 2000 })
    onTestFinished(() => longJobs.destroy())
    const base = await listen(createApp({ jobs: await testPool(), longJobs }))
    const form = new FormData()
    form.append('files', new Blob(['a,b\n1,2\n']), 'endless.csv')
    const archive = fetch(`${base}/v1/registers?asOf=2026-10-31`, { method: 'POST', body: form })
    expect((await postJson(`${base}/v1/workbooks`, RECORD)).status).toBe(200)
    const text = await (await archive).text()
    const { register } = JSON.parse(text.trim().split('\n').at(-1) ?? '')
    expect(register.leftOut).toEqual([
      { file: 'endless.csv', why: 'it could not be processed: The input takes longer than the 2 s allowed' },
    ])
  })
})

describe('a service with one thread of each kind', () => {
  const HOLDS = fileURLToPath(new URL('./support/holds-archives.mjs', import.meta.url))

  it('writes workbooks while an archive is being read', async () => {
    const goOn = join(await folder(), 'go on')
    const env = { NODE_OPTIONS: `--import ${HOLDS}`, HELD_UNTIL: goOn }
    const { base } = await spawnService({ args: ['--workers', '1', '--timeout', '300'], env })
    const form = new FormData()
    form.append('files', new Blob(['a,b\n1,2\n']), 'held.csv')
    let read = false
    const archive = fetch(`${base}/v1/registers?asOf=2026-10-31`, { method: 'POST', body: form })
      .then((answer) => answer.text())
      .finally(() => {
        read = true
      })
    const metrics = async () => (await fetch(`${base}/metrics`)).text()
    await expect.poll(metrics, { timeout: 60_000 }).toMatch(/^draughtbook_requests_in_hand 1$/m)
    expect((await postJson(`${base}/v1/workbooks`, RECORD)).status).toBe(200)
    expect(read).toBe(false)
    await writeFile(goOn, '')
    expect(await archive).toMatch(/"register":/)
  })
})
