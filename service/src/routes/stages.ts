import { usualShares } from '@draughtbook/shared-calc'
import { Router } from 'express'
import { z } from 'zod'
import { answerArchive } from '../archive/answer-archive.js'
import { patiently } from '../archive/job-runner.js'
import { queryOf, serve } from '../http/route.js'
import type { Jobs } from '../jobs/jobs.js'
import { mayUse } from '../security/caller.js'

/** Below 1 it is a share, mistaken for a percentage. */
const LOWEST = 1
const percent = z.coerce.number().min(LOWEST).max(100).optional()
export const StagesQuery = z.strictObject({
  fabric: percent.describe('percentage of the target allowed at fabric'),
  afterServices: percent.describe('percentage of the target allowed after services'),
  confidence: z.coerce
    .number()
    .min(LOWEST)
    .lt(100)
    .optional()
    .describe('probability, as a percentage, needed before the next trade starts'),
})

/** POST /v1/stages: the tests of the plots of a site in, what each stage uses and whether the next trade may start out. */
export function stages(jobs: Jobs, workers: number): Router {
  const router = Router()
  serve(router, '/stages', {
    post: [
      mayUse('archive'),
      async (request, response) => {
        const { fabric, afterServices, confidence } = queryOf(request, StagesQuery)
        const order = {
          ...((fabric !== undefined || afterServices !== undefined) && {
            shares: {
              ...usualShares,
              ...(fabric !== undefined && { fabric: fabric / 100 }),
              ...(afterServices !== undefined && { 'after services': afterServices / 100 }),
            },
          }),
          ...(confidence !== undefined && { confidence: confidence / 100 }),
        }
        await answerArchive(
          request,
          response,
          { jobs, workers },
          {
            task: 'records',
            name: 'stages',
            fileName: 'stages.xlsx',
            result: async (results, signal) =>
              (await patiently(jobs, 'stagesResult', { ...order, results }, signal)).json,
            workbook: async (results, signal) =>
              (await patiently(jobs, 'stagesWorkbook', { ...order, results }, signal)).bytes,
          },
        )
      },
    ],
  })
  return router
}
