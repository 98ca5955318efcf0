import type { Layout } from '../layout/schema.js'

/** One thing found: which field, where, why, and how sure. */
export interface Guess {
  /** Path of the field, as in `building.volume_m3` or `runs[0].pressure`. */
  path: string
  cells: string[]
  reason: string
  /** 0 to 1; own scale, no source: below 0.6 look twice. */
  confidence: number
}

/** A layout found by looking at the log itself. Nothing of it is used before someone confirms it. */
export interface Proposal {
  layout?: Layout
  guesses: Guess[]
  /** Fields that a record needs, or that an evaluation misses, and that were not found. */
  notFound: string[]
  /** What to decide before use. */
  questions: string[]
  /** The least of the guesses. */
  confidence: number
}
