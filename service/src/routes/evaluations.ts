import { Router } from 'express'
import { z } from 'zod'
import { bytesOf, wholeJsonBytes } from '../http/read-body.js'
import { flag, queryOf, sendJson, serve } from '../http/route.js'
import { within } from '../http/within.js'
import type { Evaluator } from '../jobs/evaluator.js'
import type { Jobs } from '../jobs/jobs.js'
import { mayUse } from '../security/caller.js'

export const EvaluationQuery = z.strictObject({
  trace: flag.describe('1 for every step of the working'),
  uncertainty: flag.describe(
    '1 for the uncertainty budget, further fits and the probability of meeting the target',
  ),
})

/**
 * Bodies above this go to the workers. A record of 2 × 25 readings has about 4 kB; nothing of this size takes the
 * evaluator more than a few milliseconds, valid or not.
 */
export const LARGE = 32 * 1024

/** POST /v1/evaluations: a record in, its evaluation out. */
export function evaluations(evaluate: Evaluator, jobs: Jobs, timeout_s: number): Router {
  const router = Router()
  serve(router, '/evaluations', {
    post: [
      mayUse('evaluate'),
      ...wholeJsonBytes(),
      async (request, response) => {
        const { trace, uncertainty } = queryOf(request, EvaluationQuery)
        const body = bytesOf(request)
        const order = { body, trace, uncertainty }
        const { json, digest, outcome } =
          body.length > LARGE
            ? await within(response, timeout_s, (signal) => jobs.run('evaluation', order, signal))
            : await evaluate(order, () => !response.destroyed)
        response.locals.digest = digest
        response.locals.outcome = outcome
        sendJson(response, json)
      },
    ],
  })
  return router
}
