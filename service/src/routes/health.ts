import { CALCULATION_VERSION } from '@draughtbook/shared-calc'
import { Router } from 'express'
import { serve } from '../http/methods.js'

/** GET /healthz: the process is alive. Says nothing about whether it takes work; that is /readyz. */
export function health(): Router {
  const router = Router()
  serve(router, '/healthz', {
    get: (_request, response) => {
      response.json({ status: 'alive', calculationVersion: CALCULATION_VERSION })
    },
  })
  return router
}
