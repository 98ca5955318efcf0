import type { ChildProcess } from 'node:child_process'
import { mkdtemp, readFile, rm, utimes, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Queue, Worker } from 'bullmq'
import { Redis } from 'ioredis'
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest'
import { runArchive, runnerHere } from '../../service/src/archive/run-archive'
import { QUEUE_NAME } from '../../service/src/queue/file-jobs'
import { startQueue } from '../../service/src/queue/queue-runner'
import { startWorker } from '../../service/src/queue/queue-worker'
import { requireBuild } from '../service/support/built'
import { commandLine } from '../service/support/command-line'
import { spawnCommand } from '../service/support/spawned'
import { makeArchive } from './make-archive'
import { startRedis } from './redis'

const COUNT = 8
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

/** A worker process, once it waits for files. */
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
  await new Promise<void>((resolve, reject) => {
    child.stderr?.on('data', (text: Buffer) => {
      if (text.toString().includes('waiting for files')) resolve()
      else reject(new Error(text.toString()))
    })
  })
  return child
}

/** One that is ended with the test. */
async function ownWorker(root?: string): Promise<ChildProcess> {
  const child = await startWorkerProcess(root)
  onTestFinished(() => void child.kill('SIGKILL'))
  return child
}

async function queue(say: (line: string) => void = () => undefined) {
  const runner = await startQueue({ url: redis.url, wait_s: 60, say })
  onTestFinished(() => runner.close())
  return runner
}

/** A zip file with a comment of some length at its end, where it had none (APPNOTE.TXT 4.3.16: length, then text). */
function withComment(bytes: Buffer, length: number): Buffer {
  const longer = Buffer.concat([bytes, Buffer.alloc(length, ' ')])
  longer.writeUInt16LE(length, bytes.length - 2)
  return longer
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
    await Promise.all([ownWorker(), ownWorker()])
    const args = ['register', archive, '--as-of', '2026-10-31', '--json']
    const here = await commandLine(...args, '--workers', '1')
    const there = await commandLine(...args, '--queue', redis.url)
    expect([there.code, there.err]).toEqual([0, []])
    expect(JSON.parse(there.out)).toEqual(JSON.parse(here.out))
    expect(await counts()).toMatchObject({ completed: COUNT, failed: 0, active: 0, waiting: 0 })
    await commandLine(...args, '--queue', redis.url)
    expect(await counts()).toMatchObject({ completed: COUNT, failed: 0 })
  }, 120_000)

  it('are set aside with a sentence where something else than a worker answers', async () => {
    const runner = await queue()
    const { port } = new URL(redis.url)
    const answers = [
      { lines: [], leftOut: [] },
      { job: 'f'.repeat(64), result: { lines: [], leftOut: [] } },
      '=HYPERLINK("https://elsewhere.example")',
      null,
    ]
    let taken = 0
    const impostor = new Worker(QUEUE_NAME, async () => answers[taken++], {
      connection: { host: '127.0.0.1', port: Number(port) },
    })
    onTestFinished(() => impostor.close())
    const orders = answers.map((_, i) => ({ ...ordersOf(paths.slice(0, 1))[0], file: `false ${i}.xlsx` }))
    const results = await runArchive(runner, 'register', orders as Parameters<typeof runArchive>[2])
    expect(results.map(({ lines }) => lines)).toEqual([[], [], [], []])
    for (const { leftOut } of results)
      expect(leftOut).toEqual([
        {
          file: expect.stringMatching(/^false/),
          why: expect.stringMatching(/^it could not be processed: the queue returned /),
        },
      ])
    // What was refused is not given to whoever asks next.
    await impostor.close()
    await ownWorker()
    const again = await runArchive(runner, 'register', orders as Parameters<typeof runArchive>[2])
    expect(again.map(({ lines }) => lines.length)).toEqual([1, 1, 1, 1])
  }, 120_000)

  it('are all done once where a worker is killed in the middle: nothing lost, nothing doubled', async () => {
    const [doomed] = await Promise.all([ownWorker(), ownWorker()])
    let killed = false
    const orders = ordersOf(paths)
    const results = await runArchive(await queue(), 'rerun', orders, {
      onProgress: ({ done }) => {
        if (done < 2 || killed) return
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
    await ownWorker(join(archive, 'Invented Green'))
    const outside = paths.find((path) => !path.includes('Invented Green')) ?? ''
    // Another question than before, so that no earlier answer serves.
    const [order] = ordersOf([outside])
    if (!order) throw new Error('no file')
    const results = await runArchive(await queue(), 'register', [{ ...order, file: 'another name' }])
    expect(results[0]?.leftOut[0]?.why).toMatch(/outside the folder that this worker may read/)
  }, 60_000)

  it('wait, and it is said that no worker is there, without any warning of Node', async () => {
    let said = ''
    const warnings: string[] = []
    const note = (warning: Error) => warnings.push(warning.message)
    process.on('warning', note)
    onTestFinished(() => void process.off('warning', note))
    const runner = await queue((line) => {
      said += `${line}\n`
    })
    const waiting = runArchive(
      runner,
      'rerun',
      Array.from({ length: 25 }, (_, i) => ({
        path: paths[0] ?? '',
        file: `name ${i}`,
        layouts: [],
        keys: [],
      })),
    )
    await expect
      .poll(() => said, { timeout: 30_000 })
      .toMatch(/no worker is connected to the queue; \d+ files wait/)
    await ownWorker()
    expect((await waiting).length).toBe(25)
    expect(warnings).toEqual([])
  }, 120_000)

  it('are not handed over to a Redis whose memory is full, which is said', async () => {
    const client = new Redis(redis.url)
    await client.config('SET', 'maxmemory', '1')
    onTestFinished(async () => {
      await client.config('SET', 'maxmemory', '0')
      client.disconnect()
    })
    await expect(startQueue({ url: redis.url, wait_s: 60 })).rejects.toThrow(
      /^the Redis server at .* refuses work: its memory is full$/,
    )
    const worker = { url: redis.url, workers: 1, root: archive, wait_s: 60 }
    await expect(startWorker(worker)).rejects.toThrow(/refuses work: its memory is full$/)
  })

  it('are worked on here without any Redis', async () => {
    const results = await runArchive(runnerHere, 'register', ordersOf(paths.slice(0, 2)))
    expect(results.map(({ lines }) => lines.length)).toEqual([1, 1])
  })
})

describe('files handed over to one worker', () => {
  let worker: ChildProcess
  beforeAll(async () => {
    worker = await startWorkerProcess()
  })
  afterAll(() => void worker?.kill('SIGKILL'))

  it.each(['building', 'stages'])(
    'come back for %s as if worked on here',
    async (command) => {
      const args = [command, ...paths.slice(0, 2), '--json']
      const here = await commandLine(...args, '--workers', '1')
      expect(here.out).toContain('{')
      const there = await commandLine(...args, '--queue', redis.url)
      expect(there).toEqual(here)
    },
    60_000,
  )

  it('are done anew where the content has changed and neither size nor time has', async () => {
    const path = join(archive, 'changed.xlsx')
    const runner = await queue()
    const ask = async (bytes: Buffer) => {
      await writeFile(path, bytes)
      await utimes(path, 1_700_000_000, 1_700_000_000)
      const [lines] = await runArchive(runner, 'register', ordersOf([path]))
      return lines?.lines[0]?.building
    }
    const books = await Promise.all(paths.slice(0, 2).map((file) => readFile(file)))
    const size = Math.max(...books.map(({ length }) => length))
    // Made equally long with a comment at the end of the archive, as the zip format allows.
    const padded = books.map((bytes) => withComment(bytes, size + 10 - bytes.length))
    expect(padded[0]?.length).toBe(padded[1]?.length)
    const found = [await ask(padded[0] as Buffer), await ask(padded[1] as Buffer)]
    const wanted = await runArchive(runnerHere, 'register', ordersOf(paths.slice(0, 2)))
    expect(found).toEqual(wanted.map(({ lines }) => lines[0]?.building))
    await rm(path)
  }, 60_000)

  it('are forgotten by Redis itself: every key that holds data of theirs runs out', async () => {
    await runArchive(await queue(), 'register', ordersOf(paths))
    const client = new Redis(redis.url)
    try {
      const keys = (await client.keys('bull:*')).filter((key) => /:[0-9a-f]{64}$|:events$/.test(key))
      expect(keys.length).toBeGreaterThan(COUNT)
      for (const key of keys) {
        const seconds = await client.ttl(key)
        expect(seconds, key).toBeGreaterThan(0)
        expect(seconds, key).toBeLessThanOrEqual(25 * 3600)
      }
    } finally {
      client.disconnect()
    }
  }, 60_000)
})
