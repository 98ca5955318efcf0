import { createHash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { type Job, Queue, QueueEvents } from 'bullmq'
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest'
import { clearOld, type FileJob, jobIdOf, QUEUE_NAME, UNTAKEN_s } from '../../service/src/queue/file-jobs'
import { requireBuild } from '../service/support/built'
import { folder } from '../service/support/command-line'
import { spawnCommand } from '../service/support/spawned'
import { makeArchive } from './make-archive'
import { startRedis, type TestRedis } from './redis'

let redis: TestRedis

beforeAll(async () => {
  await requireBuild()
  redis = await startRedis()
})
afterAll(() => redis?.stop())

const connection = () => ({ host: '127.0.0.1', port: Number(new URL(redis.url).port) })

function queue(): Queue {
  const made = new Queue(QUEUE_NAME, { connection: connection() })
  onTestFinished(() => made.close())
  return made
}

describe('a worker of the queue', () => {
  it('takes no job that is none, that is of another version, or whose file has changed meanwhile, and says why', async () => {
    const root = await folder()
    const [made] = await makeArchive(root, 1)
    const path = made?.path ?? ''
    const content = createHash('sha256')
      .update(await readFile(path))
      .digest('hex')
    const order = { path, file: path, layouts: [], keys: [] }
    const sound: FileJob = { task: 'register', order, content }
    const changed: FileJob = { ...sound, content: '0'.repeat(64) }
    const jobs = queue()
    const events = new QueueEvents(QUEUE_NAME, { connection: connection() })
    onTestFinished(() => events.close())
    await events.waitUntilReady()
    const worker = spawnCommand(['worker', '--queue', redis.url, '--workers', '1', '--root', root])
    onTestFinished(() => void worker.kill('SIGKILL'))
    const outcome = async (data: unknown, jobId: string) => {
      const job = (await jobs.add('register', data, { jobId })) as Job
      return job.waitUntilFinished(events).catch((error: Error) => error.message)
    }
    expect(await outcome({ task: 'rm', order }, 'none')).toBe('the queue sent a job that cannot be used')
    expect(await outcome(sound, 'f'.repeat(64))).toMatch(/install the same version everywhere$/)
    expect(await outcome(changed, jobIdOf(changed))).toBe(
      'the file was changed after it was handed over; run the command again',
    )
    expect(await outcome(sound, jobIdOf(sound))).toMatchObject({ job: jobIdOf(sound) })
  })
})

describe('a job that no worker takes', () => {
  it('is removed after its time, and not before', async () => {
    const jobs = queue()
    const add = (jobId: string, age_s: number) =>
      jobs.add('register', {}, { jobId, timestamp: Date.now() - age_s * 1000 })
    await jobs.obliterate({ force: true })
    await add('old', UNTAKEN_s + 60)
    await add('young', UNTAKEN_s - 60)
    await clearOld(jobs)
    expect((await jobs.getWaiting()).map(({ id }) => id)).toEqual(['young'])
  })
})
