import { onTestFinished } from 'vitest'
import { startEvaluators } from '../../../service/src/jobs/evaluator-threads'
import { type PoolOptions, startPool } from '../../../service/src/jobs/pool'
import { EVALUATOR_THREAD, requireBuild, WORKER } from './built'

/** A pool of built workers that ends with the test. */
export async function testPool(options: Partial<PoolOptions> = {}) {
  await requireBuild()
  const pool = startPool({ workers: 1, queue: 4, file: WORKER, ...options })
  onTestFinished(() => pool.pool.destroy())
  return pool
}

/** Threads of built code that evaluate; they end with the test. */
export async function testEvaluators(threads = 1) {
  await requireBuild()
  const evaluators = startEvaluators(threads, EVALUATOR_THREAD)
  onTestFinished(() => evaluators.destroy())
  return evaluators
}
