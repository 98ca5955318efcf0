import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, rm } from 'node:fs/promises'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

export interface TestRedis {
  readonly url: string
  /** For signals that make it hang, go on or end. */
  readonly process: ChildProcess
  stop(): Promise<void>
}

/**
 * A Redis of its own for a test: on loopback, its files in a folder that is removed.
 * @param at - address of an earlier one that has ended, whose place it takes with nothing in it; else a free port
 */
export async function startRedis(at?: string): Promise<TestRedis> {
  const folder = await mkdtemp(join(tmpdir(), 'draughtbook-redis-'))
  const port = at === undefined ? await freePort() : new URL(at).port
  const settings = [
    '--port',
    `${port}`,
    '--bind',
    '127.0.0.1',
    '--dir',
    folder,
    '--save',
    '',
    '--appendonly',
    'no',
  ]
  const child = spawn('redis-server', settings, { stdio: ['ignore', 'pipe', 'inherit'] })
  const ready = new Promise<void>((resolve, reject) => {
    child.on('error', () => reject(new Error('these tests need redis-server: apt-get install redis-server')))
    child.on('exit', (code) => reject(new Error(`redis-server ended with ${code}`)))
    child.stdout.on('data', (text: Buffer) => {
      if (text.toString().includes('Ready to accept connections')) resolve()
    })
  })
  await ready
  return {
    url: `redis://127.0.0.1:${port}`,
    process: child,
    stop: async () => {
      child.removeAllListeners('exit')
      if (child.exitCode === null && child.signalCode === null) {
        const ended = once(child, 'exit')
        child.kill('SIGKILL')
        await ended
      }
      await rm(folder, { recursive: true, force: true })
    },
  }
}

async function freePort(): Promise<number> {
  const server = createServer()
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const address = server.address()
  await new Promise((resolve) => server.close(resolve))
  if (typeof address !== 'object' || !address) throw new Error('no port is free')
  return address.port
}
