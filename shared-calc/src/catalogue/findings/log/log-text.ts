import type { Finding, Severity } from '../../../contract/record/index.js'
import type { Text } from '../finding-text.js'

/** What reading a log has to say: a note of what was done, or a caution where that may have changed the result. */
export interface LogText<Params = never> {
  readonly severity: Extract<Severity, 'caution' | 'note'>
  readonly message: Text<Params>
  /** Where there is something to do. */
  readonly remedy?: Text<Params>
}

export type LogTexts = Readonly<Record<string, LogText>>

/** A finding of the log reader before it is known of which cells and fields. */
export interface LogRemark {
  readonly rule: string
  readonly severity: LogText['severity']
  readonly message: string
  readonly remedy?: string
}

type ParamsOfText<T> = T extends (params: infer Params) => string ? Params : unknown

/** What the texts of an entry need to be told; `unknown` where nothing. */
export type LogParams<T extends LogText> = ParamsOfText<T['message']> &
  (T extends { remedy: infer Remedy } ? ParamsOfText<Remedy> : unknown)

/** Says the entries of one table: its id with the parameters its texts take. The part of the id before `/` is the published rule. */
export const saying =
  <Table extends LogTexts>(table: Table) =>
  <Id extends keyof Table & string>(
    id: Id,
    ...[params]: unknown extends LogParams<Table[Id]> ? [] : [params: LogParams<Table[Id]>]
  ): LogRemark => {
    const { severity, message, remedy }: LogText = table[id] as LogText
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
export const logFinding = (
  remark: LogRemark,
  cells: readonly string[] = [],
  where: readonly string[] = [],
): Finding => ({ ...remark, where: [...where], cells: [...cells] })
