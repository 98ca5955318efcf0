import type { Problem } from '../../contract/problem.js'
import type { Direction, Finding, TestRecord } from '../../contract/record/index.js'
import type { SeriesReading } from '../series/read-series.js'

/** One answer a question may have: what to give as its value, and why it is likely. */
export interface Choice {
  readonly value: string
  readonly label: string
  readonly reason?: string
}

/** Something the log leaves open and the figures depend on. Nothing is calculated while one is open. */
export interface Question {
  /** Where the answer goes: what `--set` takes before the equals sign. */
  readonly path: string
  /** In plain words, one sentence. */
  readonly text: string
  /** Cells it is about; none where something is missing. */
  readonly cells: readonly string[]
  /** Likely answers, the likeliest first; none where a value has to be typed. */
  readonly choices: readonly Choice[]
  /** Nothing makes the first choice likelier than the others. */
  readonly noneLikelier?: true
  /** An example of a typed answer. */
  readonly example?: string
}

/** A column, block or cell of the log, and what became of it. */
export interface Use {
  readonly cells: string
  /** Its heading or label. */
  readonly heading: string
  /** Role it was used in: "building pressure, depressurisation"; absent: it was left out. */
  readonly usedAs?: string
  /** Why it was left out. */
  readonly ignoredBecause?: string
  /** Field path of the record, where it went into one. */
  readonly path?: string
  /** Why it was taken for this, in words. */
  readonly reason?: string
}

/** One test of the log. */
export interface InterpretedTest {
  /** What `--set test=` takes: the log's own name of the test, or its number. */
  readonly key: string
  /** Name of the building or test as the log has it. */
  readonly name: string
  /** Whole, unless a question is open or a problem stands in the way. */
  readonly record?: TestRecord
  /** As far as it could be read, in the shape of a record. */
  readonly draft: Readonly<Record<string, unknown>>
  /** Field path → cell address. */
  readonly cells: Readonly<Record<string, string>>
  readonly findings: readonly Finding[]
  readonly questions: readonly Question[]
  readonly problems: readonly Problem[]
  readonly directions: readonly Direction[]
  /** Raw series the readings were taken from, with their stations, for drawing. */
  readonly series: readonly SeriesReading[]
}

/** A log as it was understood. */
export interface Interpretation {
  readonly tests: readonly InterpretedTest[]
  /** Open points of all tests, each once. */
  readonly questions: readonly Question[]
  /** Every column and block of the log: used as … or left out because … */
  readonly uses: readonly Use[]
  /** What concerns the whole file: hidden sheets left out, other tests in it. */
  readonly findings: readonly Finding[]
  /** Faults that no answer can help: nothing to read, an answer that cannot be used. */
  readonly problems: readonly Problem[]
}

/** Answers to questions, by path, as typed. */
export type Answers = Readonly<Record<string, string>>
