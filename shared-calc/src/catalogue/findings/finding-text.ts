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
