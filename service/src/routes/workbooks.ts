import { Router } from 'express'
import { serve } from '../http/methods.js'
import { bytesOf, jsonBytes } from '../http/read-body.js'
import { wanted } from '../http/wanted.js'
import type { Jobs } from '../jobs/jobs.js'

export const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'

/** POST /v1/workbooks: a record in, its summary workbook out. */
export function workbooks(jobs: Jobs): Router {
  const router = Router()
  serve(router, '/workbooks', {
    post: [
      ...jsonBytes(),
      async (request, response) => {
        const { bytes, digest, name } = await jobs.run(
          'workbook',
          { body: bytesOf(request) },
          wanted(response),
        )
        response.locals.digest = digest
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
