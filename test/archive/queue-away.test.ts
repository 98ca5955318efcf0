import type { ChildProcess } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it, type TestContext } from 'vitest'
import { requireBuild } from '../service/support/built'
import { commandLine } from '../service/support/command-line'
import { spawnCommand } from '../service/support/spawned'
import { makeArchive } from './make-archive'
import { startRedis, type TestRedis } from './redis'

const COUNT = 3
let archive: string

beforeAll(async () => {
  await requireBuild()
  archive = await mkdtemp(join(tmpdir(), 'draughtbook-away-'))
  await makeArchive(archive, COUNT)
})
afterAll(() => rm(archive, { recursive: true, force: true }))

interface Started {
  readonly child: ChildProcess
  /** Resolves once its standard error holds this. */
  readonly says: (what: RegExp) => Promise<void>
  readonly out: () => string
  readonly err: () => string
  readonly ended: Promise<number | null>
}

function start({ onTestFinished }: TestContext, ...args: string[]): Started {
  const child = spawnCommand(args)
  onTestFinished(() => void child.kill('SIGKILL'))
  let [out, err] = ['', '']
  child.stdout?.on('data', (text) => {
    out += text
  })
  child.stderr?.on('data', (text) => {
    err += text
  })
  const ended = once(child, 'close').then(([code]) => code as number | null)
  const says = async (what: RegExp) => {
    while (!what.test(err)) {
      const more = once(child.stderr as NodeJS.ReadableStream, 'data')
      const over = ended.then((code) => {
        if (!what.test(err)) throw new Error(`ended with ${code} before it said ${what}: ${err}`)
      })
      await Promise.race([more, over])
    }
  }
  return { child, says, out: () => out, err: () => err, ended }
}

async function ownRedis({ onTestFinished }: TestContext, at?: string): Promise<TestRedis> {
  const redis = await startRedis(at)
  onTestFinished(() => redis.stop())
  return redis
}

const ASKED = ['--as-of', '2026-10-31', '--json']
const worker = (test: TestContext, url: string, ...more: string[]) =>
  start(test, 'worker', '--queue', url, '--workers', '1', '--root', archive, ...more)
const register = (test: TestContext, url: string, ...more: string[]) =>
  start(test, 'register', archive, ...ASKED, '--queue', url, ...more)

const AWAY =
  /^draughtbook: the Redis server at redis:\/\/127\.0\.0\.1:\d+ does not answer; waiting for it, at most/m
const BACK = /^draughtbook: the Redis server answers again$/m

// They mostly wait for what is away, each with processes of its own: so all wait at the same time.
describe.concurrent('a queue whose Redis', () => {
  it('is killed and comes back with nothing in it: both say so, and nothing is lost', async (test) => {
    const first = await ownRedis(test)
    const asked = register(test, first.url)
    await asked.says(/no worker is connected to the queue; 3 files wait/)
    await first.stop()
    await asked.says(AWAY)
    await ownRedis(test, first.url)
    await asked.says(BACK)
    const helper = worker(test, first.url)
    expect(await asked.ended, asked.err()).toBe(0)
    const here = await commandLine('register', archive, ...ASKED, '--workers', '1')
    expect(JSON.parse(asked.out())).toEqual(JSON.parse(here.out))
    helper.child.kill('SIGTERM')
    expect(await helper.ended, helper.err()).toBe(0)
  })

  it('hangs for a while: both wait, and go on', async (test) => {
    const redis = await ownRedis(test)
    const helper = worker(test, redis.url)
    await helper.says(/waiting for files/)
    redis.process.kill('SIGSTOP')
    test.onTestFinished(() => void redis.process.kill('SIGCONT'))
    await helper.says(AWAY)
    redis.process.kill('SIGCONT')
    await helper.says(BACK)
    const asked = register(test, redis.url)
    expect(await asked.ended, asked.err()).toBe(0)
  })

  it('hangs for longer than it is waited for: both end with 2 and say why', async (test) => {
    const redis = await ownRedis(test)
    const asked = register(test, redis.url, '--wait', '3')
    await asked.says(/no worker is connected/)
    const helper = worker(test, redis.url, '--wait', '3')
    await helper.says(/waiting for files/)
    redis.process.kill('SIGSTOP')
    test.onTestFinished(() => void redis.process.kill('SIGCONT'))
    for (const { ended, err } of [asked, helper]) {
      expect(await ended).toBe(2)
      expect(err()).toMatch(AWAY)
      expect(err()).toMatch(/^draughtbook: the Redis server at \S+ has not answered for 3 seconds$/m)
    }
    expect(asked.out()).toBe('')
  })

  it('hangs does not keep a worker from stopping', async (test) => {
    const redis = await ownRedis(test)
    const helper = worker(test, redis.url)
    await helper.says(/waiting for files/)
    redis.process.kill('SIGSTOP')
    test.onTestFinished(() => void redis.process.kill('SIGCONT'))
    helper.child.kill('SIGTERM')
    expect(await helper.ended, helper.err()).toBe(0)
  })
})
