import type { ChildProcess } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Queue } from 'bullmq'
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest'
import { runArchive, runnerHere } from '../../service/src/archive/run-archive'
import { QUEUE_NAME } from '../../service/src/queue/file-jobs'
import { startQueue } from '../../service/src/queue/queue-runner'
import { requireBuild } from '../service/support/built'
import { commandLine } from '../service/support/command-line'
import { spawnCommand } from '../service/support/spawned'
import { makeArchive } from './make-archive'
import { startRedis } from './redis'

const COUNT = 20
let archive: string
let redis: Awaited<ReturnType<typeof startRedis>>
let paths: string[]

beforeAll(async () => {
  await requireBuild()
  redis = await startRedis()
  archive = await mkdtemp(join(tmpdir(), 'draughtbook-queue-'))
  paths = (await makeArchive(archive, COUNT)).map(({ path }) => path)
})
afterAll(async () => {
  await redis?.stop()
  await rm(archive, { recursive: true, force: true })
})

const ordersOf = (files: readonly string[]) =>
  files.map((path) => ({ path, file: path, layouts: [], keys: [] }))

/** A worker process of its own, once it waits for files. */
async function startWorkerProcess(root = archive): Promise<ChildProcess> {
  const child = spawnCommand([
    'worker',
    '--queue',
    redis.url,
    '--workers',
    '1',
    '--silence',
    '2',
    '--root',
    root,
  ])
  onTestFinished(() => void child.kill('SIGKILL'))
  await new Promise<void>((resolve, reject) => {
    child.stderr?.on('data', (text: Buffer) => {
      if (text.toString().includes('waiting for files')) resolve()
      else reject(new Error(text.toString()))
    })
  })
  return child
}

async function queue() {
  const runner = await startQueue(redis.url)
  onTestFinished(() => runner.close())
  return runner
}

/** How many jobs lie in Redis, by state. */
async function counts() {
  const { port } = new URL(redis.url)
  const seen = new Queue(QUEUE_NAME, { connection: { host: '127.0.0.1', port: Number(port) } })
  try {
    return await seen.getJobCounts('completed', 'failed', 'active', 'waiting')
  } finally {
    await seen.close()
  }
}

describe('files handed over through Redis', () => {
  it('come back as if worked on here, from two worker processes; a second run finds them done', async () => {
    await Promise.all([startWorkerProcess(), startWorkerProcess()])
    const args = ['register', archive, '--as-of', '2026-10-31', '--json']
    const here = await commandLine(...args, '--workers', '1')
    const there = await commandLine(...args, '--queue', redis.url)
    expect([there.code, there.err]).toEqual([0, []])
    expect(JSON.parse(there.out)).toEqual(JSON.parse(here.out))
    expect(await counts()).toMatchObject({ completed: COUNT, failed: 0, active: 0, waiting: 0 })
    await commandLine(...args, '--queue', redis.url)
    expect(await counts()).toMatchObject({ completed: COUNT, failed: 0 })
  }, 120_000)

  it('are all done once where a worker is killed in the middle: nothing lost, nothing doubled', async () => {
    const [doomed] = await Promise.all([startWorkerProcess(), startWorkerProcess()])
    let killed = false
    const orders = ordersOf(paths)
    const results = await runArchive(await queue(), 'rerun', orders, {
      onProgress: ({ done }) => {
        if (done < 4 || killed) return
        killed = true
        doomed.kill('SIGKILL')
      },
    })
    expect(killed).toBe(true)
    expect(results.map((tests) => tests.map(({ file, outcome }) => [file, outcome]))).toEqual(
      paths.map((path) => [[path, 'exactly as issued']]),
    )
  }, 120_000)

  it('are left alone where they lie outside the folder that a worker may read', async () => {
    await startWorkerProcess(join(archive, 'Invented Green'))
    const outside = paths.find((path) => !path.includes('Invented Green')) ?? ''
    // Another question than before, so that no earlier answer serves.
    const [order] = ordersOf([outside])
    if (!order) throw new Error('no file')
    const results = await runArchive(await queue(), 'register', [{ ...order, file: 'another name' }])
    expect(results[0]?.leftOut[0]?.why).toMatch(/outside the folder that this worker may read/)
  }, 60_000)

  it('are worked on here without any Redis', async () => {
    const results = await runArchive(runnerHere, 'register', ordersOf(paths.slice(0, 2)))
    expect(results.map(({ lines }) => lines.length)).toEqual([1, 1])
  })
})
