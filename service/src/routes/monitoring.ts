import { CALCULATION_VERSION } from '@draughtbook/shared-calc'
import { Router } from 'express'
import { serve } from '../http/route.js'
import type { RunningState } from '../running/state.js'
import type { Metrics } from '../seen/metrics.js'

/**
 * GET /healthz: the process is alive; restarting it is of no use. GET /readyz: it takes work; 503 while it starts or
 * stops, so that a balancer sends work elsewhere.
 */
export function health(state: RunningState): Router {
  const router = Router()
  serve(router, '/healthz', {
    get: (_request, response) => {
      response.json({ status: 'alive', calculationVersion: CALCULATION_VERSION })
    },
  })
  serve(router, '/readyz', {
    get: (_request, response) => {
      const waitingFor = [...state.startingUp]
      const status = state.stopping ? 'stopping' : waitingFor.length > 0 ? 'starting' : 'ready'
      response
        .status(status === 'ready' ? 200 : 503)
        .json({ status, ...(status === 'starting' && { waitingFor }) })
    },
  })
  return router
}

/** GET /metrics in the Prometheus text format. */
export function metricsRoute({ registry }: Metrics): Router {
  const router = Router()
  serve(router, '/metrics', {
    get: async (_request, response) => {
      response.set('content-type', registry.contentType).send(await registry.metrics())
    },
  })
  return router
}
