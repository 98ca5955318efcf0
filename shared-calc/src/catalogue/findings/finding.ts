import type { Direction, Finding, Severity } from '../../contract/record/index.js'
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

/** A finding of one direction: which, and what it would say of both. */
export interface OfDirection {
  readonly direction: Direction
  readonly id: FindingId
  /** Put together where it is asked for: most findings have no twin. */
  ofBoth(): string
}

/** Kept beside the findings: the contract's finding has no place for it. */
const ofDirections = new WeakMap<Finding, OfDirection>()

/** The direction a finding speaks of; undefined where it does not begin with one. */
export const directionOf = (one: Finding): OfDirection | undefined => ofDirections.get(one)

/** The contract's finding, from its place in the catalogue and what was found. */
export function finding<Id extends FindingId>(
  id: Id,
  { where, value, limit, source, severity }: FindingFacts,
  ...[params]: unknown extends FindingParams<Id> ? [] : [params: FindingParams<Id>]
): Finding {
  const text: FindingText = findingCatalogue[id]
  const seen = source ?? text.source
  const cut = id.indexOf('/')
  const made: Finding = {
    rule: cut < 0 ? id : id.slice(0, cut),
    severity: seen?.takenOver ? 'note' : (severity ?? text.severity),
    message: said(text.message, params),
    ...(seen && citing(seen)),
    ...(value !== undefined && { value }),
    ...(limit !== undefined && { limit }),
    where: [...where],
    remedy: said(text.remedy, params),
  }
  if (text.ofOneDirection) {
    const { direction } = params as unknown as { direction: Direction }
    const ofBoth = (): string => said(text.message, { ...(params as object), direction: 'both directions' })
    ofDirections.set(made, { direction, id, ofBoth })
  }
  return made
}

/** `finding` has checked the parameters against the entry. */
const said = (text: FindingText['message'], params: unknown): string =>
  typeof text === 'string' ? text : text(params as never)

/** Whether a finding was made while a log or photos were read: it cannot be made again from the record alone. */
export const isMadeOutsideRecord = (rule: string): boolean => /^(log|photo)-/.test(rule)
