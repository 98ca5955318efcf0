import { reasonsOf, runText } from '../../../catalogue/findings/log/runs.js'
import type { Look } from '../../../catalogue/looks.js'
import { questions } from '../../../catalogue/questions.js'
import type { FoundRun } from '../tables/runs.js'
import type { TableRow } from '../tables/table-row.js'
import type { Draft } from './draft.js'
import { withTenfold } from './tenfold.js'

const LEAVE_OUT = 'leave out'
const READ = 'read'
const ABOUT = { grey: 'readings.grey', remark: 'readings.remarked' } as const

/** Readings that may not count are asked about, and left out or read as the answer says. */
export function withoutDoubtful(draft: Draft, given: readonly FoundRun[]): FoundRun[] {
  const runs = given.map(withTenfold)
  for (const kind of ['grey', 'remark'] as const) ask(draft, kind, runs)
  return runs.map((run, index) => {
    const answered = (answer: string) =>
      run.readings.filter(({ doubt }) => doubt && draft.answers[ABOUT[doubt.kind]] === answer)
    const left = answered(LEAVE_OUT)
    for (const row of left)
      draft.tell(
        runText('log-row-left-out/answered', { why: row.doubt?.why ?? '' }),
        row.pressure.cell,
        `runs[${index}].readings`,
      )
    // Before an answer there is only the question.
    for (const row of answered(READ))
      draft.tell(
        runText('log-row-doubt', { why: row.doubt?.why ?? '' }),
        row.pressure.cell,
        `runs[${index}].readings`,
      )
    return left.length === 0 ? run : { ...run, readings: run.readings.filter((row) => !left.includes(row)) }
  })
}

function ask(draft: Draft, kind: 'grey' | 'remark', runs: readonly FoundRun[]): void {
  const path = ABOUT[kind]
  const answer = draft.answers[path]
  const rows = runs.flatMap(({ readings }) => readings.filter(({ doubt }) => doubt?.kind === kind))
  if (rows.length === 0 || answer === LEAVE_OUT || answer === READ) return
  const cells = rows.map(({ pressure }) => pressure.cell)
  draft.ask({
    path,
    cells,
    ...(kind === 'grey'
      ? questions.grey({ cells, look: lookOf(rows) })
      : questions.remarked({ cells, whys: whysOf(rows) })),
  })
}

function lookOf(rows: readonly TableRow[]): Look {
  const [look, ...others] = new Set(rows.map(({ doubt }) => doubt?.look))
  return look && others.length === 0 ? look : 'mixed'
}

const whysOf = (rows: readonly TableRow[]): string =>
  reasonsOf([...new Set(rows.flatMap(({ doubt }) => doubt?.why ?? []))].slice(0, 3))
