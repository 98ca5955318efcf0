import { buildingRules } from '@draughtbook/shared-calc'
import { Router } from 'express'
import { z } from 'zod'
import { answerArchive } from '../archive/answer-archive.js'
import { patiently } from '../archive/job-runner.js'
import { queryOf, serve } from '../http/route.js'
import type { Jobs } from '../jobs/jobs.js'
import { mayUse } from '../security/caller.js'

const count = z.coerce.number().int().min(0).max(100_000).optional()
export const BuildingQuery = z.strictObject({
  name: z.string().max(200).optional().describe('name of the building'),
  rule: z
    .enum(buildingRules)
    .optional()
    .describe('how the homes are combined; without it, as the scheme of the target requires'),
  homes: count.describe('homes in the building, if not all were tested'),
  sampleSize: count.describe('homes that the scheme requires to be tested'),
  morePerMiss: count.describe('extra homes to test for each home that fails'),
})

/** POST /v1/buildings: the tests of several homes in, the building out. */
export function buildings(jobs: Jobs, workers: number): Router {
  const router = Router()
  serve(router, '/buildings', {
    post: [
      mayUse('archive'),
      async (request, response) => {
        const order = queryOf(request, BuildingQuery)
        await answerArchive(
          request,
          response,
          { jobs, workers },
          {
            task: 'records',
            name: 'building',
            fileName: 'building.xlsx',
            result: async (results, signal) =>
              (await patiently(jobs, 'buildingResult', { ...order, results }, signal)).json,
            workbook: async (results, signal) =>
              (await patiently(jobs, 'buildingWorkbook', { ...order, results }, signal)).bytes,
          },
        )
      },
    ],
  })
  return router
}
