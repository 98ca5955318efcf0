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
const made = new Map<ListName, string>()

/** A list as the text of its answer. The same for every caller, so made once. */
function textOf(name: ListName): string {
  const text = made.get(name) ?? JSON.stringify({ [name]: lists[name]() })
  made.set(name, text)
  return text
}

/** Makes all lists, so that no request waits for them: the formulas' maths takes a while. */
export function makeLists(): void {
  for (const name of names) textOf(name)
}

/** GET /v1/methods, /v1/targets, /v1/formulas, /v1/preparation: what the calculation knows. */
export function reference(): Router {
  const router = Router()
  for (const name of names) {
    serve(router, `/${name}`, {
      get: (request, response) => {
        queryOf(request, NoQuery)
        response.set('cache-control', 'public, max-age=300').type('json').send(textOf(name))
      },
    })
  }
  return router
}
