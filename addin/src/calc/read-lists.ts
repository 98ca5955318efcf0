import {
  check,
  LeakLog,
  Plan,
  Preparation,
  type Problem,
  problemsFromZod,
  TakeOff,
} from '@draughtbook/shared-calc'
import { type FieldKind, fieldKind, interpret, pageText, setPath } from '@draughtbook/shared-calc/log'
import {
  type ListColumn,
  type ListName,
  type ListRow,
  type Lists,
  listColumns,
} from '../pane/one-test/lists.js'
import { type Told, withoutLayout } from './told.js'

const parts = { takeOff: TakeOff, plan: Plan, preparation: Preparation, leaks: LeakLog } as const

/**
 * Puts the lists into the draft. A part that is unfinished is left out, and a finding names what it still lacks.
 * @returns what each unfinished part lacks, by path in the record
 */
export function readLists(draft: Record<string, unknown>, lists: Lists, told: Told): Problem[] {
  for (const [name, rows] of Object.entries(lists) as [ListName, readonly ListRow[]][])
    if (!name.startsWith('site.'))
      for (const [i, row] of withoutBlankEnd(name, rows).entries()) readRow(draft, name, row, i, told)
  const faults: Problem[] = []
  for (const [part, schema] of Object.entries(parts)) {
    if (draft[part] === undefined) continue
    const checked = check(schema, draft[part])
    if (checked.success) continue
    delete draft[part]
    const own = problemsFromZod(checked.error.issues).map(({ path, message }) => ({
      path: path ? `${part}${path.startsWith('[') ? '' : '.'}${path}` : part,
      message,
    }))
    faults.push(...own)
    told.tell(
      pageText('part-unfinished', {
        part: words[part as keyof typeof parts],
        problem: own[0]?.message ?? '',
        more: own.length - 1,
      }),
      '',
      own[0]?.path,
    )
  }
  return faults
}

const words = {
  takeOff: 'the take-off',
  plan: 'the plan',
  preparation: 'the list of cautions',
  leaks: 'the leak log',
} as const

/** Rows just added and not yet filled in; a blank row among others stays, so that its fault shows where it stands. */
function withoutBlankEnd(list: ListName, rows: readonly ListRow[]): readonly ListRow[] {
  const last = rows.findLastIndex((row) => !isBlank(list, row))
  return rows.slice(0, last + 1)
}

/** A row that holds nothing but what it started with. */
function isBlank(list: ListName, row: ListRow): boolean {
  return (listColumns[list] as readonly ListColumn[]).every(
    ({ path, start }) => (row[path] ?? '') === '' || row[path] === start,
  )
}

function readRow(draft: Record<string, unknown>, list: ListName, row: ListRow, i: number, told: Told): void {
  for (const { path, kind, when } of listColumns[list] as readonly ListColumn[]) {
    const text = row[path]?.trim() ?? ''
    if (text === '' || (when && !when(row))) continue
    const at = `${list}[${i}].${path}`
    if (kind === 'flag') setPath(draft, at, text === 'yes')
    else if (kind === 'number' || kind === 'whole') {
      const value = numberOf(text, kind, at, told)
      if (value !== undefined) setPath(draft, at, value)
    } else setPath(draft, at, text)
  }
}

const plainUnits = /_(mm|cm2)$/

/** A number as typed, with comma or point, and with its unit where it names one. */
function numberOf(text: string, kind: 'number' | 'whole', at: string, told: Told): number | undefined {
  const known: FieldKind =
    kind === 'whole' ? { kind } : plainUnits.test(at) ? { kind: 'number' } : fieldKind(at)
  const read = interpret(
    { kind: 'text', value: text },
    known.kind === 'text' ? { kind: 'number' } : known,
    {},
  )
  if ('refused' in read) {
    told.problem('', withoutLayout(read), at)
    return undefined
  }
  for (const { severity, rule, message } of read.remarks)
    if (rule !== 'log-text-number') told.add(severity, rule, message, '', undefined, at)
  return typeof read.value === 'number' ? read.value : undefined
}
