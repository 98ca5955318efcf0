import { sentences } from '../catalogue/words.js'
import type { Finding } from '../contract/record/index.js'

type Severity = Finding['severity']

function finding(severity: Severity) {
  return (
    rule: string,
    message: string,
    where: readonly string[],
    cells: readonly string[],
    more: Partial<Pick<Finding, 'value' | 'limit' | 'remedy' | 'provenance'>> = {},
  ): Finding => ({
    rule,
    severity,
    message: sentences(message),
    where: [...where],
    cells: [...cells],
    ...more,
  })
}

/** Something done on the way from cell to record that the reader of the result may want to know. */
export const note = finding('note')
/** Something that may have changed the result: to be looked at before the figures are used. */
export const caution = finding('caution')
