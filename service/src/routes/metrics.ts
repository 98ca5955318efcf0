import { Router } from 'express'
import { serve } from '../http/methods.js'
import type { Metrics } from '../seen/metrics.js'

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
