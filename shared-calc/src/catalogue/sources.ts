import type { Source } from '../engine/index.js'

/** Source of a rule that the trade follows and no standard states. */
export const practiceSource: Source = { text: 'common practice, no source', seen: 'common practice' }

const provenances: Readonly<Record<Source['seen'], string>> = {
  read: 'read in the source',
  memory: 'value from memory',
  derived: 'derived',
  'common practice': 'common practice, no source',
  definition: 'definition',
}

/** Clause and provenance of a finding, from the source of the limit it tests. */
export function citing(source: Source): { clause: string; provenance: string } {
  return { clause: source.text, provenance: provenances[source.seen] }
}
