import { evaluate, parseRecord } from '@draughtbook/shared-calc'
import { Router } from 'express'
import { z } from 'zod'
import { serve } from '../http/methods.js'
import { flag, queryOf } from '../http/query.js'
import { bytesOf, jsonBytes, jsonOf } from '../http/read-body.js'
import { wanted } from '../http/wanted.js'
import type { Jobs } from '../jobs/jobs.js'

export const EvaluationQuery = z.strictObject({ trace: flag })

/**
 * Bodies above this go to a worker. A record of 2 × 25 readings has about 4 kB; nothing of this size takes the event
 * loop more than a few milliseconds, valid or not.
 */
export const LARGE = 32 * 1024

/** POST /v1/evaluations: a record in, its evaluation out. */
export function evaluations(jobs: Jobs): Router {
  const router = Router()
  serve(router, '/evaluations', {
    post: [
      ...jsonBytes(),
      async (request, response) => {
        const { trace } = queryOf(request, EvaluationQuery)
        const body = bytesOf(request)
        if (body.length > LARGE) {
          const { json, digest } = await jobs.run('evaluation', { body, trace }, wanted(response))
          response.locals.digest = digest
          response.type('json').send(json)
          return
        }
        const evaluation = evaluate(parseRecord(jsonOf(body)), { trace })
        response.locals.digest = evaluation.recordDigest
        response.json(evaluation)
      },
    ],
  })
  return router
}
