import { evaluate, parseRecord } from '@draughtbook/shared-calc'
import { Router } from 'express'
import { z } from 'zod'
import { serve } from '../http/methods.js'
import { flag, queryOf } from '../http/query.js'
import { bytesOf, jsonBytes, jsonOf } from '../http/read-body.js'
import { within } from '../http/within.js'
import { evaluateOptions, evaluationText } from '../jobs/evaluation-text.js'
import type { Jobs } from '../jobs/jobs.js'

export const EvaluationQuery = z.strictObject({ trace: flag, uncertainty: flag })

/**
 * Bodies above this go to a worker. A record of 2 × 25 readings has about 4 kB; nothing of this size takes the event
 * loop more than a few milliseconds, valid or not.
 */
export const LARGE = 32 * 1024

/** POST /v1/evaluations: a record in, its evaluation out. */
export function evaluations(jobs: Jobs, timeout_s: number): Router {
  const router = Router()
  serve(router, '/evaluations', {
    post: [
      ...jsonBytes(),
      async (request, response) => {
        const { trace, uncertainty } = queryOf(request, EvaluationQuery)
        const body = bytesOf(request)
        const { json, ...told } =
          body.length > LARGE
            ? await within(response, timeout_s, (signal) =>
                jobs.run('evaluation', { body, trace, uncertainty }, signal),
              )
            : evaluationText(evaluate(parseRecord(jsonOf(body)), evaluateOptions(trace, uncertainty)))
        Object.assign(response.locals, told)
        response.type('json').send(json)
      },
    ],
  })
  return router
}
