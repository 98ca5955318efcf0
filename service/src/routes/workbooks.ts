import { Router } from 'express'
import { serve } from '../http/methods.js'
import { bytesOf, jsonBytes } from '../http/read-body.js'
import { within } from '../http/within.js'
import type { Jobs } from '../jobs/jobs.js'

export const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'

/** POST /v1/workbooks: a record in, its summary workbook out. */
export function workbooks(jobs: Jobs, timeout_s: number): Router {
  const router = Router()
  serve(router, '/workbooks', {
    post: [
      ...jsonBytes(),
      async (request, response) => {
        const body = bytesOf(request)
        const { bytes, name, ...told } = await within(response, timeout_s, (signal) =>
          jobs.run('workbook', { body }, signal),
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
