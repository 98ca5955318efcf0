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
import { queryOf, sendJson, serve } from '../http/route.js'

const NoQuery = z.strictObject({})

const lists = {
  methods: () =>
    methods.map(({ id, title, volumeBasis, limits, terms, notes }) => ({
      id,
      title,
      volumeBasis,
      limits,
      terms,
      notes,
    })),
  targets: () => targetPresets,
  formulas: formulaList,
  preparation: () => ({
    openings: preparationList,
    cautions: allCautions.map((caution) => ({ caution, text: cautionTexts[caution] })),
    decides: CAUTIONS_DEFER,
  }),
}
type ListName = keyof typeof lists
const names = Object.keys(lists) as ListName[]
const made = new Map<ListName, Buffer>()

/** A list as its answer. The same for every caller, so made once. */
function answerOf(name: ListName): Buffer {
  const answer = made.get(name) ?? Buffer.from(JSON.stringify({ [name]: lists[name]() }))
  made.set(name, answer)
  return answer
}

/** Makes all lists, so that no request waits for them: the formulas' maths takes a while. */
export function makeLists(): void {
  for (const name of names) answerOf(name)
}

/** GET /v1/methods, /v1/targets, /v1/formulas, /v1/preparation: what the calculation knows. */
export function reference(): Router {
  const router = Router()
  for (const name of names) {
    serve(router, `/${name}`, {
      get: (request, response) => {
        queryOf(request, NoQuery)
        response.setHeader('cache-control', 'public, max-age=300')
        sendJson(response, answerOf(name))
      },
    })
  }
  return router
}
