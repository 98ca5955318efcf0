import type { Finding, Problem } from '@draughtbook/shared-calc'
import type { Remark } from '@draughtbook/shared-calc/log'

/** Gathers what is noticed while cells are read; the same thing said about several cells becomes one finding. */
export class Told {
  readonly #findings = new Map<string, Finding & { cells: string[] }>()

  add(
    severity: Finding['severity'],
    noticed: string,
    message: string,
    cell: string,
    remedy?: string,
    where?: string,
  ): void {
    const rule = asRead(noticed)
    const key = `${severity}|${rule}|${message}`
    const found = this.#findings.get(key) ?? {
      rule,
      severity,
      message,
      where: [],
      cells: [],
      ...(remedy === undefined ? {} : { remedy }),
    }
    if (cell && !found.cells.includes(cell)) found.cells.push(cell)
    if (where && !found.where.includes(where)) found.where.push(where)
    this.#findings.set(key, found)
  }

  /** A finding made elsewhere, with all its cells and fields. */
  take({ severity, rule, message, where, cells = [], remedy }: Finding): void {
    if (where.length === 0 && cells.length === 0) this.add(severity, rule, message, '', remedy)
    for (const cell of cells) this.add(severity, rule, message, cell, remedy)
    for (const path of where) this.add(severity, rule, message, '', remedy, path)
  }

  tell({ severity, rule, message, remedy }: Remark, cell: string, where?: string): void {
    this.add(severity, rule, message, cell, remedy, where)
  }

  /** A cell or field that cannot be used: the test is not valid until it is corrected. What is wrong becomes a sentence. */
  problem(cell: string, message: string, where?: string, remedy = 'Correct the entry.'): void {
    this.add('invalidates', UNUSABLE, message.replace(/[^.!?…]$/, '$&.'), cell, remedy, where)
  }

  findings(): Finding[] {
    return [...this.#findings.values()]
  }

  get unusable(): boolean {
    return this.findings().some(({ severity }) => severity === 'invalidates')
  }
}

/** Entries that cannot be used keep a test from being issued; all else is marked as noticed while reading. */
const UNUSABLE = 'unusable-entry'

/** A re-run has the record alone: it takes findings that begin with `log-` from what was issued. */
const asRead = (rule: string): string => (rule === UNUSABLE || rule.startsWith('log-') ? rule : `log-${rule}`)

/** A fault without the advice to state something in a layout: picked cells and typed values have none. */
export const withoutLayout = ({ message, fault = message }: Pick<Problem, 'message' | 'fault'>): string =>
  fault
