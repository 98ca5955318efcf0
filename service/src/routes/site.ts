import { type Request, type RequestHandler, type Response, Router } from 'express'
import { HttpFault } from '../http/http-fault.js'
import { bytesOf, jsonBytes } from '../http/read-body.js'
import { serve } from '../http/route.js'
import { within } from '../http/within.js'
import { doWork, type Jobs } from '../jobs/jobs.js'
import { mayUse } from '../security/caller.js'
import { XLSX } from './workbooks.js'

/** What each of these routes answers, in JSON and where it can in a workbook. */
const ROUTES = {
  '/take-offs': { json: 'takeOff', workbook: { task: 'takeOffWorkbook', fileName: 'volume.xlsx' } },
  '/plans': { json: 'plan', workbook: { task: 'planWorkbook', fileName: 'plan.xlsx' } },
  '/running-estimates': { json: 'runningEstimate' },
  '/leak-reports': { json: 'leakReport' },
} as const

/**
 * What is done before and on site. POST /v1/take-offs and /v1/plans answer JSON, or a workbook where the client accepts
 * that first; POST /v1/running-estimates and /v1/leak-reports answer JSON.
 * @param library - folder of the firm's library, whose equipment a plan that names none is given
 */
export function site(jobs: Jobs, timeout_s: number, library: string | undefined): Router {
  const router = Router()
  for (const [path, answers] of Object.entries(ROUTES)) {
    const handler: RequestHandler = async (request, response) => {
      const order = { body: bytesOf(request), library }
      if ('workbook' in answers && wants(request) === XLSX) {
        const { task, fileName } = answers.workbook
        const { bytes } = await within(response, timeout_s, (signal) => jobs.run(task, order, signal))
        sendWorkbook(response, fileName, bytes)
        return
      }
      const { json } = await doWork({ jobs, timeout_s, response }, answers.json, order)
      response.type('json').send(json)
    }
    serve(router, path, { post: [mayUse('evaluate'), ...jsonBytes(), handler] })
  }
  return router
}

function sendWorkbook(response: Response, fileName: string, bytes: Uint8Array): void {
  response.attachment(fileName).type(XLSX).send(Buffer.from(bytes))
}

function wants(request: Request): string {
  const type = request.accepts(['application/json', XLSX])
  if (type === false) throw new HttpFault(406, `Only application/json or ${XLSX} can be sent back`)
  return type
}
