import express, { type ErrorRequestHandler, type Express } from 'express'
import { HttpFault } from './http/http-fault.js'
import { faultOf, problemBody } from './http/problem-body.js'
import { type Jobs, jobsHere } from './jobs/jobs.js'
import { evaluations } from './routes/evaluations.js'
import { health } from './routes/health.js'
import { reference } from './routes/reference.js'
import { workbooks } from './routes/workbooks.js'

export interface AppDeps {
  readonly jobs?: Jobs
  /** Called with every error that is our fault, not the caller's. */
  readonly report?: (error: unknown) => void
}

/** The service as an express app that listens nowhere yet. */
export function createApp({ jobs = jobsHere, report = () => undefined }: AppDeps = {}): Express {
  const app = express()
  app.disable('x-powered-by').disable('etag').set('query parser', 'simple')
  app.use(health())
  app.use('/v1', evaluations(jobs), workbooks(jobs), reference())
  app.use(() => {
    throw new HttpFault(404, 'There is nothing at this address')
  })
  app.use(answerWithProblem(report))
  return app
}

function answerWithProblem(report: (error: unknown) => void): ErrorRequestHandler {
  return (error: unknown, _request, response, _next) => {
    const fault = faultOf(error)
    if (fault.status >= 500) report(error)
    if (response.headersSent) return void response.destroy()
    response
      .status(fault.status)
      .set(fault.details.headers ?? {})
      .type('application/problem+json')
      .send(JSON.stringify(problemBody(fault)))
  }
}
