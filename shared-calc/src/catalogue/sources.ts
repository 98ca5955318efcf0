import type { Source } from '../engine/index.js'

/** Source of a rule that the trade follows and no standard states. */
export const practiceSource: Source = { text: 'common practice, no source', seen: 'common practice' }

/** How the building is prepared. */
export const preparationClause: Source = { text: 'ISO 9972:2015, 5.2', seen: 'memory' }

/** Pressure and density of air by altitude. */
export const standardAtmosphere: Source = { text: 'US Standard Atmosphere 1976', seen: 'read' }

/** A flow shown for air of one density is another flow in air of another. */
export const deviceLaw: Source = {
  text: 'square-root law of flow devices, read in an encyclopaedia',
  seen: 'read',
}

/** How often instruments are calibrated. */
export const calibrationInterval: Source = {
  text: 'calibration is usual every year in the UK, every two years in France',
  seen: 'read',
}

const provenances: Readonly<Record<Source['seen'], string>> = {
  read: 'read in the source',
  memory: 'value from memory',
  derived: 'derived',
  'common practice': practiceSource.text,
  definition: 'definition',
}

/**
 * Clause of a finding as people read it, with a mark where nobody has read it in its source; empty where there is none.
 * That a figure is common practice is said only where the finding has one: nothing else in it needs a source.
 */
export function cited({
  clause,
  provenance,
  value,
  limit,
}: {
  clause?: string | undefined
  provenance?: string | undefined
  value?: number | undefined
  limit?: number | undefined
}): string {
  if (clause === practiceSource.text && value === undefined && limit === undefined) return ''
  const mark = provenance === clause || provenance === provenances.read ? undefined : provenance
  return [clause, mark].filter(Boolean).join(', ')
}

/** Clause and provenance of a finding, from the source of the limit it tests. */
export function citing({ text, seen, takenOver }: Source): { clause: string; provenance: string } {
  const clause = takenOver ? `${text} (used because the text of the method was not at hand)` : text
  return { clause, provenance: provenances[seen] }
}
