import { Redis } from 'ioredis'
import { UsageError } from '../cli/errors.js'

/** Connects to Redis, or says why not. Throws UsageError. */
export async function connect(url: string): Promise<Redis> {
  if (!/^rediss?:\/\/./.test(url))
    throw new UsageError(
      `--queue must name a Redis server, as redis://host:6379, not ${withoutPassword(url)}`,
    )
  const redis = new Redis(url, {
    // Workers wait for ever for their next job.
    maxRetriesPerRequest: null,
    lazyConnect: true,
    retryStrategy: (tries) => Math.min(tries * 100, 2000),
  })
  // Lost connections are made again; without a listener each would be printed.
  redis.on('error', () => undefined)
  try {
    await Promise.race([redis.connect(), late()])
  } catch (error) {
    redis.disconnect()
    throw new UsageError(`the Redis server at ${withoutPassword(url)} cannot be reached: ${whyNot(error)}`)
  }
  return redis
}

/** Does the first work on a queue, or says why its server does not take it, as where its memory is full. Throws UsageError. */
export async function firstWork(url: string, work: () => Promise<unknown>): Promise<void> {
  try {
    await work()
  } catch (error) {
    if (error instanceof UsageError) throw error
    const why = error instanceof Error ? error.message : String(error)
    throw new UsageError(
      `the Redis server at ${withoutPassword(url)} refuses work: ${why.startsWith('OOM') ? 'its memory is full' : why}`,
    )
  }
}

/** The client says of every server that refuses it that the connection is closed. */
function whyNot(error: unknown): string {
  const said = (error instanceof Error ? error.message : String(error)).replace(/\.$/, '')
  return said === 'Connection is closed' ? 'no connection. Check the address, and that the server runs' : said
}

const LIMIT_MS = 5000

const late = (): Promise<never> =>
  new Promise((_, reject) => {
    setTimeout(() => reject(new Error(`no answer within ${LIMIT_MS / 1000} s`)), LIMIT_MS).unref()
  })

export const withoutPassword = (url: string): string => url.replace(/\/\/[^@/]*@/, '//')
