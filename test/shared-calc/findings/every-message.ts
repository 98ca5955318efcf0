import { finding } from '../../../shared-calc/src/catalogue/findings/finding.js'
import type { RemarkTexts } from '../../../shared-calc/src/catalogue/findings/finding-text.js'
import { type FindingId, findingCatalogue } from '../../../shared-calc/src/catalogue/findings/index.js'
import { pageTexts } from '../../../shared-calc/src/catalogue/findings/page.js'
import { saying } from '../../../shared-calc/src/catalogue/findings/remark.js'
import { homesTexts } from '../../../shared-calc/src/catalogue/findings/several-homes.js'
import { homesSamples, type LogFindingId, logCatalogue, logSamples, pageSamples } from './log-samples'
import { samples } from './samples'

export const ids = Object.keys(findingCatalogue) as FindingId[]

export const logIds = Object.keys(logCatalogue) as LogFindingId[]
const sayLog = saying(logCatalogue as RemarkTexts) as (
  id: string,
  params: unknown,
) => ReturnType<ReturnType<typeof saying>>

/** Every finding of a rule, said with its samples. */
export const ofRules = ids.flatMap((id) => {
  const given: readonly unknown[] = samples[id].length === 0 ? [undefined] : samples[id]
  return given.map((params) => ({
    id,
    ...(
      finding as (id: FindingId, facts: { where: string[] }, params: unknown) => ReturnType<typeof finding>
    )(id, { where: ['runs'] }, params),
  }))
})

const said = (table: RemarkTexts, given: Readonly<Record<string, readonly unknown[]>>) =>
  Object.entries(given).flatMap(([id, each]) =>
    (each.length === 0 ? [undefined] : each).map((params) => ({
      id,
      ...(saying(table) as typeof sayLog)(id, params),
    })),
  )

/** Findings that neither a rule nor the log reader makes. */
export const elsewhere = { ...homesTexts, ...pageTexts }
const ofHomes = [...said(homesTexts, homesSamples), ...said(pageTexts, pageSamples)]

const ofLogs = logIds.flatMap((id) => {
  const given: readonly unknown[] = logSamples[id].length === 0 ? [undefined] : logSamples[id]
  return given.map((params) => ({ id, ...sayLog(id, params) }))
})

/** Every message with the parameters of its samples: what a person reads. */
export const made: readonly {
  id: string
  rule: string
  severity: string
  message: string
  remedy?: string | undefined
}[] = [...ofRules, ...ofLogs, ...ofHomes]
