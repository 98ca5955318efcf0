import { IncomingMessage, ServerResponse } from 'node:http'
import { Socket } from 'node:net'
import express, { type ErrorRequestHandler, type Express, type RequestHandler } from 'express'
import helmet from 'helmet'
import type { Logger } from 'pino'
import { HttpFault } from './http/http-fault.js'
import { faultOf, problemBody } from './http/problem-body.js'
import { type Evaluator, evaluatorHere } from './jobs/evaluator.js'
import { type Jobs, jobsHere } from './jobs/jobs.js'
import { Library } from './library/library.js'
import { buildings } from './routes/buildings.js'
import { evaluations } from './routes/evaluations.js'
import { firmRoute } from './routes/firm.js'
import { libraryRoutes } from './routes/library.js'
import { manifestRoute } from './routes/manifest.js'
import { health, metricsRoute } from './routes/monitoring.js'
import { documentPages, statusRoute } from './routes/pages.js'
import { pane } from './routes/pane.js'
import { readings } from './routes/readings.js'
import { reference } from './routes/reference.js'
import { registers } from './routes/registers.js'
import { reruns } from './routes/reruns.js'
import { site } from './routes/site.js'
import { stages } from './routes/stages.js'
import { workbooks } from './routes/workbooks.js'
import { RunningState } from './running/state.js'
import { authenticate } from './security/authenticate.js'
import { checkHost, checkOrigin } from './security/origin.js'
import { limitCallers } from './security/rate-limit.js'
import { audit, requestId } from './seen/audit.js'
import { silentLog } from './seen/log.js'
import { Metrics } from './seen/metrics.js'
import { defaultSettings, isLoopback, type Settings } from './settings/settings.js'

export interface AppDeps {
  readonly settings?: Settings
  readonly jobs?: Jobs
  /** For what may take long, archives and long series, so that nothing else waits behind it. */
  readonly longJobs?: Jobs
  readonly evaluate?: Evaluator
  readonly log?: Logger
  readonly state?: RunningState
  readonly metrics?: Metrics
}

/** The service as an express app that listens nowhere yet. */
export function createApp(deps: AppDeps = {}): Express {
  const { settings = defaultSettings, jobs = jobsHere, evaluate = evaluatorHere, log = silentLog } = deps
  const { state = new RunningState(settings.concurrency), longJobs = jobs } = deps
  const { metrics = new Metrics({ inHand: () => state.inHand, waiting: () => 0 }) } = deps
  const app = express()
  app.disable('x-powered-by').disable('etag').set('query parser', 'simple')
  // What a proxy says about the caller's address is believed of these alone: anybody could say it.
  app.set('trust proxy', settings.behindProxy ? [...settings.proxies] : false)
  app.use(requestId, audit(log), metrics.observe, state.sayWhenLast)
  app.use(safeHeaders(settings.behindProxy || !isLoopback(settings.host)))
  app.use(checkHost(settings), checkOrigin(settings))
  // For those who may; first, because most requests are for these.
  const guard = [authenticate(settings), ...limitCallers(settings)]
  app.locals.state = state
  const { timeout_s, workers } = settings
  const library = settings.library === undefined ? undefined : new Library(settings.library)
  app.use(
    '/v1',
    ...guard,
    evaluations(evaluate, jobs, timeout_s),
    workbooks(jobs, timeout_s),
    readings({ jobs, longJobs, timeout_s, library }),
    reference(),
    site(jobs, timeout_s, settings.library),
    libraryRoutes(library, jobs, timeout_s),
    firmRoute(settings.library),
    registers(longJobs, workers),
    buildings(longJobs, workers),
    stages(longJobs, workers),
    reruns(longJobs, workers, settings.library),
  )
  app.use(['/metrics', '/status'], ...guard)
  app.use(metricsRoute(metrics), statusRoute(settings))
  // For everybody.
  app.use(health(state), documentPages(), manifestRoute(settings), pane({ folder: settings.pane }))
  app.use(() => {
    throw new HttpFault(404, 'There is nothing at this address', { detail: '/api lists the addresses' })
  })
  app.use(answerWithProblem(log))
  return app
}

/** Every error as a problem (RFC 9457). Only bugs are logged in full; the caller sees an id to quote. */
function answerWithProblem(log: Logger): ErrorRequestHandler {
  return (error: unknown, _request, response, _next) => {
    const fault = faultOf(error)
    const { requestId: id } = response.locals
    if (fault.status === 500) log.error({ requestId: id, err: error }, 'unexpected error')
    // Nobody is left to answer, or an answer has begun.
    if (response.destroyed || response.headersSent) return void response.destroy()
    response
      .status(fault.status)
      .set(fault.details.headers ?? {})
      .type('application/problem+json')
      .send(JSON.stringify(problemBody(fault, typeof id === 'string' ? `/requests/${id}` : undefined)))
  }
}

/** Headers that are the same for every answer, asked of their package once. The API is data only, so its policy allows nothing; pages set their own, wider one. */
function safeHeaders(fromElsewhere: boolean): RequestHandler {
  const make = helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: { defaultSrc: ["'none'"], frameAncestors: ["'none'"], baseUri: ["'none'"] },
    },
    // Behind TLS it keeps browsers there. For localhost it would bind every other program of this machine, whatever its port.
    strictTransportSecurity: fromElsewhere && { maxAge: 31_536_000 },
    crossOriginResourcePolicy: { policy: 'same-origin' },
    referrerPolicy: { policy: 'no-referrer' },
  })
  const seen = new ServerResponse(new IncomingMessage(new Socket()))
  make(seen.req, seen, () => undefined)
  const headers = Object.entries(seen.getHeaders()) as [string, string][]
  return (_request, response, next) => {
    for (const [name, value] of headers) response.setHeader(name, value)
    next()
  }
}
