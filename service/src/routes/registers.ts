import { Router } from 'express'
import { z } from 'zod'
import { answerArchive } from '../archive/answer-archive.js'
import { patiently } from '../archive/job-runner.js'
import { queryOf, serve } from '../http/route.js'
import type { Jobs } from '../jobs/jobs.js'
import { mayUse } from '../security/caller.js'

export const asOf = z.iso
  .date({ error: 'must be a date such as 2026-10-31' })
  .optional()
  .describe('date to use as today, such as 2026-10-31')
export const RegisterQuery = z.strictObject({
  month: z
    .string()
    .regex(/^\d{4}-(0[1-9]|1[0-2])$/, { error: 'must be a month such as 2026-10' })
    .optional()
    .describe('only tests of this month, such as 2026-10'),
  asOf,
})

/** Today in UTC, where the client does not say what stands for today. */
export const today = (): string => new Date().toISOString().slice(0, 10)

/** POST /v1/registers: workbooks in, the month's register out. */
export function registers(jobs: Jobs, workers: number): Router {
  const router = Router()
  serve(router, '/registers', {
    post: [
      mayUse('archive'),
      async (request, response) => {
        const { month, asOf = today() } = queryOf(request, RegisterQuery)
        const order = { asOf, month }
        await answerArchive(
          request,
          response,
          { jobs, workers },
          {
            task: 'register',
            name: 'register',
            fileName: `register${month === undefined ? '' : `-${month}`}.xlsx`,
            result: async (results, signal) =>
              (await patiently(jobs, 'registerResult', { ...order, results }, signal)).json,
            workbook: async (results, signal) =>
              (await patiently(jobs, 'registerWorkbook', { ...order, results }, signal)).bytes,
          },
        )
      },
    ],
  })
  return router
}
