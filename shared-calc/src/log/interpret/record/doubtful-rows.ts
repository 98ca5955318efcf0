import type { TableRow } from '../tables/rows.js'
import type { FoundRun } from '../tables/runs.js'
import type { Draft } from './draft.js'

const LEAVE_OUT = 'leave out'
const READ = 'read'
const ABOUT = { grey: 'readings.grey', remark: 'readings.remarked' } as const

/** Readings that may not count are asked about, and left out or read as the answer says. */
export function withoutDoubtful(draft: Draft, runs: readonly FoundRun[]): FoundRun[] {
  for (const kind of ['grey', 'remark'] as const) ask(draft, kind, runs)
  return runs.map((run, index) => {
    const left = run.readings.filter((row) => row.doubt && draft.answers[ABOUT[row.doubt.kind]] === LEAVE_OUT)
    for (const row of left)
      draft.caution(
        'log-row-left-out',
        `left out, as answered: ${row.doubt?.why}`,
        row.pressure.cell,
        `runs[${index}].readings`,
      )
    for (const row of run.readings)
      if (row.doubt && !left.includes(row))
        draft.caution(
          'log-row-doubt',
          `read, as answered, though ${row.doubt.why}`,
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
    text: textOf(kind, rows),
    cells,
    choices: [
      { value: LEAVE_OUT, label: rows.length === 1 ? 'no: leave it out' : 'no: leave them out' },
      {
        value: READ,
        label: rows.length === 1 ? 'yes: it counts like the others' : 'yes: they count like the others',
      },
    ],
  })
}

function textOf(kind: 'grey' | 'remark', rows: readonly TableRow[]): string {
  const where = rows.map(({ pressure }) => pressure.cell.split('!').at(-1)).join(', ')
  const one = rows.length === 1
  const look = rows.every(({ doubt }) => doubt?.look === 'shaded') ? 'shaded grey' : 'written in grey'
  if (kind === 'grey')
    return one
      ? `The reading in ${where} is ${look}. Does it count?`
      : `The readings in ${where} are ${look}. Do they count?`
  const why = [...new Set(rows.map(({ doubt }) => doubt?.why))].slice(0, 3).join('; ')
  return one ? `Does the reading in ${where} count? ${why}.` : `Do the readings in ${where} count? ${why}.`
}
