import {
  estimateWhileReading,
  makePlan,
  measureTakeOff,
  type PlanRequest,
  parsePlan,
  parseRecord,
  parseTakeOff,
  reportLeaks,
} from '@draughtbook/shared-calc'
import { type Request, type RequestHandler, type Response, Router } from 'express'
import { HttpFault } from '../http/http-fault.js'
import { serve } from '../http/methods.js'
import { bytesOf, jsonBytes, jsonOf } from '../http/read-body.js'
import { within } from '../http/within.js'
import type { Jobs } from '../jobs/jobs.js'
import { firmsPlan } from '../library/firms-plan.js'
import type { Library } from '../library/library.js'
import { XLSX } from './workbooks.js'

/**
 * What is done before and on site. POST /v1/take-offs and /v1/plans answer JSON, or a workbook where the client accepts
 * that first; POST /v1/running-estimates and /v1/leak-reports answer JSON.
 */
export function site(jobs: Jobs, timeout_s: number, library: Library | undefined): Router {
  const router = Router()
  const workbook = async (
    response: Response,
    task: 'planWorkbook' | 'takeOffWorkbook',
    body: Uint8Array,
  ): Promise<void> => {
    const { bytes } = await within(response, timeout_s, (signal) => jobs.run(task, { body }, signal))
    response.attachment(task === 'planWorkbook' ? 'plan.xlsx' : 'volume.xlsx')
    response.type(XLSX).send(Buffer.from(bytes))
  }
  const post = (path: string, handler: RequestHandler) =>
    serve(router, path, { post: [...jsonBytes(), handler] })

  post('/take-offs', async (request, response) => {
    const body = bytesOf(request)
    if (wants(request) === XLSX) return workbook(response, 'takeOffWorkbook', body)
    response.json(measureTakeOff(parseTakeOff(jsonOf(body)).takeOff))
  })
  post('/plans', async (request, response) => {
    const asked = parsePlan(jsonOf(bytesOf(request)))
    const plan: PlanRequest = library ? await firmsPlan(asked, library) : asked
    if (wants(request) === XLSX)
      return workbook(response, 'planWorkbook', new TextEncoder().encode(JSON.stringify(plan)))
    response.json(makePlan(plan))
  })
  post('/running-estimates', (request, response) => {
    response.json(estimateWhileReading(jsonOf(bytesOf(request))))
  })
  post('/leak-reports', (request, response) => {
    response.json(reportLeaks(parseRecord(jsonOf(bytesOf(request)))))
  })
  return router
}

function wants(request: Request): string {
  const type = request.accepts(['application/json', XLSX])
  if (type === false) throw new HttpFault(406, `Only application/json and ${XLSX} can be sent back`)
  return type
}
