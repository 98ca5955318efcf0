import { onTestFinished } from 'vitest'
import { type PoolOptions, startPool } from '../../../service/src/jobs/pool'
import { requireBuild, WORKER } from './built'

/** A pool of built workers that ends with the test. */
export async function testPool(options: Partial<PoolOptions> = {}) {
  await requireBuild()
  const pool = startPool({ workers: 1, queue: 4, file: WORKER, ...options })
  onTestFinished(() => pool.pool.destroy())
  return pool
}
