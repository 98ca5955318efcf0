import {
  allCautions,
  CAUTIONS_DEFER,
  cautionTexts,
  formulaList,
  methods,
  preparationList,
  targetPresets,
} from '@draughtbook/shared-calc'
import { Router } from 'express'
import { z } from 'zod'
import { queryOf, serve } from '../http/route.js'

const NoQuery = z.strictObject({})

/** GET /v1/methods, /v1/targets, /v1/formulas, /v1/preparation: what the calculation knows. The same for every caller, so made once. */
export function reference(): Router {
  const router = Router()
  const listed = {
    methods: methods.map(({ id, title, volumeBasis, limits, terms, notes }) => ({
      id,
      title,
      volumeBasis,
      limits,
      terms,
      notes,
    })),
    targets: targetPresets,
    formulas: formulaList(),
    preparation: {
      openings: preparationList,
      cautions: allCautions.map((caution) => ({ caution, text: cautionTexts[caution] })),
      decides: CAUTIONS_DEFER,
    },
  }
  for (const [name, list] of Object.entries(listed)) {
    const body = JSON.stringify({ [name]: list })
    serve(router, `/${name}`, {
      get: (request, response) => {
        queryOf(request, NoQuery)
        response.set('cache-control', 'public, max-age=300').type('json').send(body)
      },
    })
  }
  return router
}
