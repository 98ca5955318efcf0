import { fieldText } from '../../../catalogue/findings/log/fields.js'
import { remarkFinding } from '../../../catalogue/findings/remark.js'
import type { Finding, TestRecord } from '../../../contract/record/index.js'
import { workOut } from '../../../evaluation/work/work-out.js'
import { methodById } from '../../../methods/index.js'
import type { ResultOfLog } from './result-of-log.js'

/** Results agree within this; logs round, and firms correct for air and zero flow in their own ways. Own choice, no source. */
const AGREES = 0.02

/** Compares what the log itself records as results with what its readings give: confirmed, or a finding naming both. */
export const checkResults = (results: readonly ResultOfLog[], figures: Figures): Finding[] =>
  results.flatMap((result) => compared(result, figures))

export interface Figures {
  /** Mean over the directions first, then each direction. */
  n50: readonly number[]
  q50: readonly number[]
  qE50: readonly number[]
}

/** What the readings give at 50 Pa; undefined where a record cannot be worked out. */
export function figuresOf(record: TestRecord): Figures | undefined {
  try {
    const worked = workOut(record, methodById(record.test.method))
    const at50 = [worked.means.get(50), ...worked.runs.map((run) => run.at.get(50))]
    const flows = at50.flatMap((at) => {
      const block = at?.rate
      return block?.has('q_pr') ? [block.value('q_pr')] : block?.has('q_m') ? [block.value('q_m')] : []
    })
    const rates = (symbol: string) =>
      at50.flatMap((at) => (at?.derived?.has(symbol) ? [at.derived.value(symbol)] : []))
    return { n50: rates('n_pr'), q50: flows, qE50: rates('q_E') }
  } catch {
    return undefined
  }
}

function compared({ name, value, label, cell }: ResultOfLog, figures: Figures): Finding[] {
  const candidates = figures[name]
  const nearest = [...candidates].sort((a, b) => Math.abs(a / value - 1) - Math.abs(b / value - 1))[0]
  if (nearest === undefined) return []
  const off = nearest / value - 1
  const said = { label, logged: round(value) }
  const confirmed = Math.abs(off) <= AGREES
  return [
    remarkFinding(
      confirmed
        ? fieldText('log-result-confirmed', { ...said, read: round(nearest) })
        : fieldText('log-result-differs', { ...said, read: round(candidates[0] ?? nearest), off }),
      [cell],
    ),
  ]
}

const round = (value: number): string => String(Number(value.toPrecision(3)))
