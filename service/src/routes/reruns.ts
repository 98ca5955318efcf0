import { Router } from 'express'
import { z } from 'zod'
import { answerArchive } from '../archive/answer-archive.js'
import { patiently } from '../archive/job-runner.js'
import { flag, queryOf, serve } from '../http/route.js'
import type { Jobs } from '../jobs/jobs.js'
import { libraryKeys } from '../library/keys.js'
import { mayUse } from '../security/caller.js'
import { asOf, today } from './registers.js'

export const RerunQuery = z.strictObject({
  asOf,
  requireSignature: flag.describe('1 to fail every workbook that is not signed with one of the keys'),
})

/** POST /v1/reruns: archived workbooks in, what differs out. */
export function reruns(jobs: Jobs, workers: number, library?: string): Router {
  const router = Router()
  serve(router, '/reruns', {
    post: [
      mayUse('archive'),
      async (request, response) => {
        const { asOf = today(), requireSignature } = queryOf(request, RerunQuery)
        await answerArchive(
          request,
          response,
          { jobs, workers },
          {
            task: 'rerun',
            signatures: { keys: await libraryKeys(library), requireSignature },
            name: 'rerun',
            fileName: 'rerun.xlsx',
            result: async (results, signal) =>
              (await patiently(jobs, 'rerunResult', { results, asOf }, signal)).json,
            workbook: async (results, signal) =>
              (await patiently(jobs, 'rerunWorkbook', { results, asOf }, signal)).bytes,
          },
        )
      },
    ],
  })
  return router
}
