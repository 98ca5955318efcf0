import type { Finding, Severity } from '../../contract/record/index.js'
import type { Text } from './finding-text.js'

/** What is said without a source: of a log that is read, or of several homes. */
export interface RemarkText<Params = never> {
  readonly severity: Severity
  readonly message: Text<Params>
  /** Where there is something to do. */
  readonly remedy?: Text<Params>
}

export type RemarkTexts = Readonly<Record<string, RemarkText>>

/** Such a finding before its cells, fields or files are known. */
export interface Remark {
  readonly rule: string
  readonly severity: RemarkText['severity']
  readonly message: string
  readonly remedy?: string
}

type ParamsOfText<T> = T extends (params: infer Params) => string ? Params : unknown

/** What the texts of an entry need to be told; `unknown` where nothing. */
export type RemarkParams<T extends RemarkText> = ParamsOfText<T['message']> &
  (T extends { remedy: infer Remedy } ? ParamsOfText<Remedy> : unknown)

/** Says the entries of one table: its id with the parameters its texts take. The part of the id before `/` is the published rule. */
export const saying =
  <Table extends RemarkTexts>(table: Table) =>
  <Id extends keyof Table & string>(
    id: Id,
    ...[params]: unknown extends RemarkParams<Table[Id]> ? [] : [params: RemarkParams<Table[Id]>]
  ): Remark => {
    const { severity, message, remedy }: RemarkText = table[id] as RemarkText
    const cut = id.indexOf('/')
    return {
      rule: cut < 0 ? id : id.slice(0, cut),
      severity,
      message: said(message, params),
      ...(remedy !== undefined && { remedy: said(remedy, params) }),
    }
  }

/** `saying` has checked the parameters against the entry. */
const said = (text: Text<never>, params: unknown): string =>
  typeof text === 'string' ? text : text(params as never)

/** The contract's finding, from what is said and the fields and cells it is said of. */
export const remarkFinding = (
  remark: Remark,
  cells: readonly string[] = [],
  where: readonly string[] = [],
): Finding => ({ ...remark, where: [...where], cells: [...cells] })
