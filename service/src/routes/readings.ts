import { builtInLayouts, type Layout, parseLayout, readRanges } from '@draughtbook/shared-calc/log'
import { Router } from 'express'
import { serve } from '../http/methods.js'
import { bytesOf, jsonBytes, jsonOf } from '../http/read-body.js'
import { within } from '../http/within.js'
import type { Jobs } from '../jobs/jobs.js'
import type { Library } from '../library/library.js'

/** Largest body: a raw series of 100,000 rows in four columns takes about 4 MB. */
export const RANGES_BYTES = 8 * 1024 * 1024

/** Bodies above this go to a worker: reading them may take longer than another request should wait. */
const LARGE = 32 * 1024

/** POST /v1/readings: ranges of cells with a layout in; records with findings and cells out. */
export function readings(jobs: Jobs, timeout_s: number, library?: Library): Router {
  const router = Router()
  serve(router, '/readings', {
    post: [
      ...jsonBytes(RANGES_BYTES),
      async (request, response) => {
        const body = bytesOf(request)
        const layouts = await layoutsOf(library)
        if (body.length <= LARGE) {
          response.json(readRanges(jsonOf(body), layouts))
          return
        }
        const { json } = await within(response, timeout_s, (signal) =>
          jobs.run('readings', { body, layouts }, signal),
        )
        response.type('json').send(json)
      },
    ],
  })
  return router
}

/** The firm's layouts and those that come with the tool, to choose from by fingerprint. */
async function layoutsOf(library: Library | undefined): Promise<Layout[]> {
  const own = library ? (await library.list('layouts')).entries.map(({ value }) => parseLayout(value)) : []
  return [...own, ...builtInLayouts]
}
