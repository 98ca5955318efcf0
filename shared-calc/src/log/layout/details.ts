import type { Collector } from '../collector.js'
import { LogError } from '../problem.js'
import { findList } from './lists.js'
import { locate } from './locate.js'
import { look, settle } from './look.js'
import type { Layout } from './schema.js'
import type { Scope } from './scope.js'
import { setPath } from './set-path.js'

type Draft = Record<string, unknown>

/** Reads the single values of a test into the draft of its record. What cannot be read is a problem of its own. */
export function readDetails(scope: Scope, layout: Layout, draft: Draft, collector: Collector): void {
  for (const [path, value] of Object.entries(layout.constants)) {
    setPath(draft, path, value)
    collector.tell(
      'note',
      'log-constant',
      `${path} = ${String(value)} stands in the layout, not in the log`,
      '',
      path,
    )
  }
  for (const { path, at, unit, words } of layout.fields)
    gathering(collector, () => {
      const found = locate(scope, at, path)
      const value = settle(
        look(scope, layout, found, path, { unit, words, neighbour: true }),
        collector,
        path,
      )
      if (value === undefined) return
      setPath(draft, path, value)
      agree(scope, layout, found, path, value, { unit, words }, collector)
    })
  if (layout.openings) gathering(collector, () => readOpenings(scope, layout, draft, collector))
}

/** In a test of several rows, a value that stands in each of them must be the same in all. */
function agree(
  scope: Scope,
  layout: Layout,
  found: ReturnType<typeof locate>,
  path: string,
  value: number | string,
  options: { unit: string | undefined; words: Record<string, string> | undefined },
  collector: Collector,
): void {
  for (const row of scope.headerRow === undefined || found.sheet !== scope.sheet
    ? []
    : (scope.rows ?? []).slice(1)) {
    const other = look(scope, layout, { ...found, row }, path, options)
    if (other.state === 'value' && other.value !== value)
      collector.refuse(
        'ambiguous',
        `${String(other.value)} here, but ${String(value)} in the first row of the test`,
        other.address,
        path,
      )
    if (other.state === 'refused') collector.refuse(other.code, other.message, other.address, path)
  }
}

function readOpenings(scope: Scope, layout: Layout, draft: Draft, collector: Collector): void {
  const given = layout.openings
  if (!given) return
  const path = 'test.openings'
  const names = findList(scope, given.opening, path)
  const states = findList(scope, given.state, path)
  const notes = given.note && findList(scope, given.note, path)
  const openings: Draft[] = []
  for (let index = 0; ; index++) {
    const place = names.place(index)
    if (!place) break
    const name = look(scope, layout, { sheet: names.sheet, ...place }, `${path}[].opening`)
    if (name.state === 'blank' && names.open) break
    if (name.state === 'blank') continue
    const at = `${path}[${openings.length}]`
    const opening: Draft = {}
    const put = (key: string, list: typeof names | undefined, words?: Record<string, string>) => {
      const where = list?.place(index)
      if (!list || !where) return
      const looked = look(scope, layout, { sheet: list.sheet, ...where }, `${at}.${key}`, { words })
      if (looked.state === 'blank' && key === 'note') return
      const value = settle(looked, collector, `${at}.${key}`)
      if (value !== undefined) opening[key] = value
    }
    put('opening', names)
    put('state', states, given.words)
    put('note', notes)
    openings.push(opening)
  }
  setPath(draft, path, openings)
}

/** Runs a step; a LogError it throws is kept as problems of the test, so that one pass names every fault. */
export function gathering(collector: Collector, step: () => void): void {
  try {
    step()
  } catch (error) {
    if (!(error instanceof LogError)) throw error
    for (const { code, message, cell, path } of error.problems) collector.refuse(code, message, cell, path)
  }
}
