import type { Severity } from '../../contract/record/index.js'
import type { Source } from '../../engine/index.js'

export type Text<Params> = string | ((params: Params) => string)

/**
 * What a finding says. Its key in the catalogue is the published `rule`, followed by `/` and the case where a rule
 * says different things. Message and remedy are whole sentences.
 */
export interface FindingText<Params = never> {
  readonly severity: Severity
  /** Where the source is always the same; else the rule passes that of the limit it tests. */
  readonly source?: Source
  /** The message begins with its direction, so that two of the same kind can be said as one of both directions. */
  readonly ofOneDirection?: true
  readonly message: Text<Params>
  readonly remedy: Text<Params>
}

export type FindingTexts = Readonly<Record<string, FindingText>>

type ParamsOfText<T> = T extends (params: infer Params) => string ? Params : unknown

/** Parameters of a finding's texts; `unknown` where there are none. */
export type ParamsOf<T extends FindingText> = ParamsOfText<T['message']> & ParamsOfText<T['remedy']>

/** A remark without a source: about a log, or about several homes. */
export interface RemarkText<Params = never> {
  readonly severity: Severity
  readonly message: Text<Params>
  /** Where there is something to do. */
  readonly remedy?: Text<Params>
}

export type RemarkTexts = Readonly<Record<string, RemarkText>>

/** Parameters of an entry's texts; `unknown` where there are none. */
export type RemarkParams<T extends RemarkText> = ParamsOfText<T['message']> &
  (T extends { remedy: infer Remedy } ? ParamsOfText<Remedy> : unknown)
