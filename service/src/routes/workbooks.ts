import { Router } from 'express'
import { z } from 'zod'
import { bytesOf, jsonBytes } from '../http/read-body.js'
import { flag, queryOf, serve } from '../http/route.js'
import { within } from '../http/within.js'
import type { Jobs } from '../jobs/jobs.js'
import { mayUse } from '../security/caller.js'

export const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'

export const WorkbookQuery = z.strictObject({ uncertainty: flag.describe('1 for sheet Uncertainty too') })

/** POST /v1/workbooks: a record in, its summary workbook out; with `uncertainty=1` also sheet Uncertainty. */
export function workbooks(jobs: Jobs, timeout_s: number): Router {
  const router = Router()
  serve(router, '/workbooks', {
    post: [
      mayUse('evaluate'),
      ...jsonBytes(),
      async (request, response) => {
        const { uncertainty } = queryOf(request, WorkbookQuery)
        const body = bytesOf(request)
        const { bytes, name, ...told } = await within(response, timeout_s, (signal) =>
          jobs.run('workbook', { body, uncertainty }, signal),
        )
        Object.assign(response.locals, told)
        response.attachment(fileName(name)).type(XLSX).send(Buffer.from(bytes))
      },
    ],
  })
  return router
}

/** A name that every file system takes. */
const fileName = (name: string) =>
  `${name
    .replace(/[^\p{L}\p{N} ._-]+/gu, '-')
    .replace(/^[ .]+/, '')
    .slice(0, 80)}-summary.xlsx`
