import type { Finding } from '../../contract/record/index.js'
import type { RemarkParams, RemarkText, RemarkTexts, Text } from './finding-text.js'

/** Such a finding before its cells, fields or files are known. */
export interface Remark {
  readonly rule: string
  readonly severity: RemarkText['severity']
  readonly message: string
  readonly remedy?: string
}

/**
 * Gives the texts of one table's entries: takes an id with its parameters. The part of the id before `/` is the
 * published rule.
 */
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

/** The contract's finding, from what is said and the fields and cells it is said about. */
export const remarkFinding = (
  remark: Remark,
  cells: readonly string[] = [],
  where: readonly string[] = [],
): Finding => ({ ...remark, where: [...where], cells: [...cells] })
