import type { Finding, Severity } from '../../contract/record/index.js'
import type { Source } from '../../engine/index.js'
import { citing } from '../sources.js'
import type { FindingText, ParamsOf } from './finding-text.js'
import { type FindingId, findingCatalogue } from './index.js'

/** Where a finding was made, and the figures it rests on. */
export interface FindingFacts {
  /** Field paths in the record. */
  readonly where: readonly string[]
  readonly value?: number | undefined
  readonly limit?: number | undefined
  /** Source of the limit; the catalogue's own where it is always the same. */
  readonly source?: Source
  /** Where the method decides how much a finding weighs. */
  readonly severity?: Severity
}

export type FindingParams<Id extends FindingId> = ParamsOf<(typeof findingCatalogue)[Id]>

/** The contract's finding, from its place in the catalogue and what was found. */
export function finding<Id extends FindingId>(
  id: Id,
  { where, value, limit, source, severity }: FindingFacts,
  ...[params]: unknown extends FindingParams<Id> ? [] : [params: FindingParams<Id>]
): Finding {
  const text: FindingText = findingCatalogue[id]
  const seen = source ?? text.source
  const cut = id.indexOf('/')
  return {
    rule: cut < 0 ? id : id.slice(0, cut),
    severity: seen?.takenOver ? 'note' : (severity ?? text.severity),
    message: said(text.message, params),
    ...(seen && citing(seen)),
    ...(value !== undefined && { value }),
    ...(limit !== undefined && { limit }),
    where: [...where],
    remedy: said(text.remedy, params),
  }
}

/** `finding` has checked the parameters against the entry. */
const said = (text: FindingText['message'], params: unknown): string =>
  typeof text === 'string' ? text : text(params as never)

/** Whether a finding was made while a log or photos were read: it cannot be made again from the record alone. */
export const isMadeOutsideRecord = (rule: string): boolean => /^(log|photo)-/.test(rule)
