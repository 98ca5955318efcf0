import { tableText } from '../../catalogue/findings/log/tables.js'
import { placeWords } from '../../contract/record/index.js'
import type { Collector } from '../collector.js'
import { LogError } from '../problem.js'
import { likelyOfField } from './field-unit.js'
import { findList } from './lists.js'
import { locate } from './locate.js'
import { type LookOptions, look, refuseLooked, settle } from './look.js'
import type { Layout } from './schema.js'
import type { Scope } from './scope.js'
import { setPath } from './set-path.js'

type Draft = Record<string, unknown>

/** Reads the single values of a test into the draft of its record. What cannot be read is a problem of its own. */
export function readDetails(scope: Scope, layout: Layout, draft: Draft, collector: Collector): void {
  for (const [path, value] of Object.entries(layout.constants)) {
    setPath(draft, path, value)
    collector.tell(tableText('log-constant', { field: placeWords(path, {}), value: String(value) }), '', path)
  }
  for (const { path, at, unit, words } of layout.fields)
    gathering(collector, () => {
      const found = locate(scope, at, path)
      const options = { unit, words, neighbour: true, otherwise: likelyOfField(scope, layout, path) }
      const value = settle(look(scope, layout, found, path, options), collector, path)
      if (value === undefined) return
      setPath(draft, path, value)
      agree(scope, layout, found, path, value, options, collector)
    })
  for (const table of layout.lists)
    gathering(collector, () => readTableOf(scope, layout, table, draft, collector))
}

/** In a test of several rows, a value that is in each of them must be the same in all. */
function agree(
  scope: Scope,
  layout: Layout,
  found: ReturnType<typeof locate>,
  path: string,
  value: number | string,
  options: LookOptions,
  collector: Collector,
): void {
  for (const row of scope.headerRow === undefined || found.sheet !== scope.sheet
    ? []
    : (scope.rows ?? []).slice(1)) {
    const other = look(scope, layout, { ...found, row }, path, options)
    if (other.state === 'value' && other.value !== value)
      collector.refuse(
        'ambiguous',
        `${String(other.value)} here, but ${String(value)} in the first row of the test: all rows of a test must have the same value`,
        other.address,
        path,
      )
    if (other.state === 'refused') refuseLooked(other, collector, path)
  }
}

type TableLayout = Layout['lists'][number]

/** Reads a table of openings or of the device's ranges: its first column says where it ends. */
function readTableOf(
  scope: Scope,
  layout: Layout,
  table: TableLayout,
  draft: Draft,
  collector: Collector,
): void {
  const columns = Object.entries(table.columns).map(([name, { at, unit, words }]) => ({
    name,
    list: findList(scope, at, `${table.path}[].${name}`),
    options: { unit, words },
  }))
  const [key] = columns
  if (!key) return
  const entries: Draft[] = []
  for (let index = 0; key.list.place(index); index++) {
    const cells = columns.flatMap(({ name, list, options }) => {
      const place = list.place(index)
      const found = {
        sheet: list.sheet,
        ...place,
        ...(list.heading === undefined ? {} : { heading: list.heading }),
      }
      return place ? [{ name, looked: look(scope, layout, { ...found, ...place }, name, options) }] : []
    })
    if (cells[0]?.looked.state === 'blank') {
      if (key.list.open) break
      continue
    }
    const at = `${table.path}[${entries.length}]`
    const entry: Draft = {}
    for (const { name, looked } of cells) {
      if (looked.state === 'blank') continue
      const value = settle(looked, collector, `${at}.${name}`)
      if (value !== undefined) entry[name] = value
    }
    entries.push(entry)
  }
  setPath(draft, table.path, entries)
}

/** Runs a step; a LogError it throws is kept as problems of the test, so that one pass names every fault. */
export function gathering(collector: Collector, step: () => void): void {
  try {
    step()
  } catch (error) {
    if (!(error instanceof LogError)) throw error
    for (const { code, message, cell, path, ...more } of error.problems)
      collector.refuse(code, message, cell, path, more)
  }
}
