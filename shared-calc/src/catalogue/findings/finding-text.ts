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
  readonly message: Text<Params>
  readonly remedy: Text<Params>
}

export type FindingTexts = Readonly<Record<string, FindingText>>

type ParamsOfText<T> = T extends (params: infer Params) => string ? Params : unknown

/** What a finding's texts need to be told; `unknown` where nothing. */
export type ParamsOf<T extends FindingText> = ParamsOfText<T['message']> & ParamsOfText<T['remedy']>

/** What is said without a source: of a log that is read, or of several homes. */
export interface RemarkText<Params = never> {
  readonly severity: Severity
  readonly message: Text<Params>
  /** Where there is something to do. */
  readonly remedy?: Text<Params>
}

export type RemarkTexts = Readonly<Record<string, RemarkText>>

/** What the texts of an entry need to be told; `unknown` where nothing. */
export type RemarkParams<T extends RemarkText> = ParamsOfText<T['message']> &
  (T extends { remedy: infer Remedy } ? ParamsOfText<Remedy> : unknown)
