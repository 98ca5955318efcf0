import { builtInLayouts, type Layout, parseLayout } from '@draughtbook/shared-calc/log'
import { Router } from 'express'
import { bytesOf, jsonBytes } from '../http/read-body.js'
import { serve } from '../http/route.js'
import { within } from '../http/within.js'
import type { Jobs } from '../jobs/jobs.js'
import type { Library } from '../library/library.js'
import { mayUse } from '../security/caller.js'

/** Largest body: a raw series of 100,000 rows in four columns takes about 4 MB. */
export const RANGES_BYTES = 8 * 1024 * 1024

/** Bodies above this are long series and the like: they go where nothing quick waits behind them. */
const LONG = 256 * 1024

export interface ReadingsDeps {
  readonly jobs: Jobs
  readonly longJobs: Jobs
  readonly timeout_s: number
  readonly library: Library | undefined
}

/** POST /v1/readings: ranges of cells with a layout in; records with findings and cells out. */
export function readings({ jobs, longJobs, timeout_s, library }: ReadingsDeps): Router {
  const router = Router()
  serve(router, '/readings', {
    post: [
      mayUse('evaluate'),
      ...jsonBytes(RANGES_BYTES),
      async (request, response) => {
        const body = bytesOf(request)
        const layouts = await layoutsOf(library)
        // However small: a few cells at the far ends of many sheets make a body of 3 kB that takes a second to search.
        const { json } = await within(response, timeout_s, (signal) =>
          (body.length > LONG ? longJobs : jobs).run('readings', { body, layouts }, signal),
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
