import { addressOf } from '../grid/address.js'
import type { Grid, Sheet } from '../grid/grid.js'
import { provenDecimal } from '../grid/text/dialect.js'
import { LAYOUT_FORMAT, type LayoutInput, parseLayout } from '../layout/schema.js'
import { LIMITS } from '../limits.js'
import { refuse } from '../problem.js'
import { type FieldInput, findFields, type Guess, type Proposal } from './fields.js'
import { findShapes } from './shapes.js'
import { cellText, type Label, labelsOf } from './survey.js'
import { type FoundTable, findTables, findZeroFlow, type RunInput, type SeriesInput } from './tables.js'

export type { Guess, Proposal } from './fields.js'

/** What a record cannot do without, and what an evaluation misses most. */
const WANTED: Record<string, string> = {
  'building.name': 'name of the building',
  'building.volume_m3': 'internal volume',
  'test.date': 'test date',
  'conditions.indoorTemperature_C': 'indoor temperature',
  'conditions.outdoorTemperature_C': 'outdoor temperature',
  'conditions.barometricPressure_Pa': 'barometric pressure',
}

interface SheetFinds {
  sheet: Sheet
  labels: Label[]
  runs: RunInput[]
  series: SeriesInput[]
  fields: FieldInput[]
  guesses: Guess[]
  questions: string[]
}

/**
 * Proposes a layout for a log no known layout fits, from its headings, labels, units and the shape of its numbers.
 * Each guess says why and how sure; what was not found is named. Nothing is read by it until someone confirms it.
 */
export function propose(grid: Grid): Proposal {
  let labelCount = 0
  const sheets = grid.sheetNames.slice(0, 60).flatMap((name) => {
    const sheet = grid.sheet(name)
    if (!sheet || sheet.rows === 0) return []
    const labels = labelsOf(sheet)
    labelCount += labels.length
    if (labelCount > LIMITS.labels)
      refuse(
        'too-many-cells',
        `the log holds more than ${LIMITS.labels} texts that may be labels (reached on sheet ${name}), so no layout is proposed: state the layout, or keep the log without other data`,
      )
    return [survey(grid, sheet, labels)]
  })
  const withRuns = sheets.filter(({ runs, series }) => runs.length + series.length > 0)
  const alike =
    withRuns.length > 1 && withRuns.every((one) => signature(one) === signature(withRuns[0] as SheetFinds))
      ? prefixGlob(withRuns, sheets)
      : undefined
  const used = alike ? withRuns.slice(0, 1) : sheets
  const own = used.flatMap((one) => one.guesses)
  const method = own.some(({ path }) => path === 'test.method') ? undefined : methodOf(sheets)
  const guesses = [...own, ...(method ? [method.guess] : [])]
  const questions = used.flatMap((one) => one.questions)
  const fields = bestFields(used, alike === undefined, guesses)
  const found = new Set(fields.map(({ path }) => path))
  const notFound = Object.entries(WANTED).flatMap(([path, term]) => (found.has(path) ? [] : [term]))
  if (
    !guesses.some(({ path }) => path.endsWith('zeroFlowBefore')) &&
    !used.some(({ series }) => series.length)
  )
    notFound.push('zero-flow values before the readings')
  if (
    !guesses.some(({ path }) => path.endsWith('zeroFlowAfter')) &&
    !used.some(({ series }) => series.length)
  )
    notFound.push('zero-flow values after the readings')
  const runs = used.flatMap(({ sheet, runs: own }) =>
    own.map((run) => (alike ? run : onSheet(run, sheet.name))),
  )
  const series = used.flatMap(({ sheet, series: own }) =>
    own.map((one) => (alike ? one : onSheet(one, sheet.name))),
  )
  if (runs.length + series.length === 0)
    return {
      guesses: guesses.filter(({ path }) => path !== 'test.method'),
      notFound: ['table of pressures and flows', ...notFound],
      questions,
      confidence: 0,
    }
  const decimal = grid.decimal ?? decimalOf(withRuns.map(({ sheet }) => sheet))
  const input: LayoutInput = {
    format: LAYOUT_FORMAT,
    name: `proposed for ${grid.fileName.replace(/^.*[\\/]/, '')}`.slice(0, 200),
    fingerprint: fingerprintOf(grid, used, alike),
    ...(decimal ? { decimal } : {}),
    ...(alike ? { tests: { each: 'sheet', sheets: alike } } : {}),
    ...(method ? { constants: { 'test.method': method.id } } : {}),
    fields,
    runs: runs.slice(0, 4),
    series: series.slice(0, 4),
  }
  return {
    layout: parseLayout(input),
    guesses,
    notFound,
    questions,
    confidence: Math.min(...guesses.map((one) => one.confidence)),
  }
}

function survey(grid: Grid, sheet: Sheet, labels: Label[]): SheetFinds {
  const byHeading = findTables(sheet, labels)
  const tables: FoundTable[] = byHeading.length > 0 ? byHeading : findShapes(sheet)
  const zeros = tables.length > 0 ? findZeroFlow(sheet, labels) : []
  const taken = new Set([
    ...tables.flatMap(({ guesses }) => guesses.flatMap(({ cells }) => cells)),
    ...zeros.flatMap(({ guess }) => guess.cells),
  ])
  const guesses: Guess[] = []
  const runs: RunInput[] = []
  const series: SeriesInput[] = []
  for (const [index, table] of tables.entries()) {
    if (table.series) series.push(table.series)
    guesses.push(...table.guesses.map((guess) => ({ ...guess, path: `runs[${index}].${guess.path}` })))
    if (!table.run) continue
    const run: RunInput = { ...table.run }
    for (const which of ['zeroFlowBefore', 'zeroFlowAfter'] as const) {
      const own = zeros.filter((zero) => zero.which === which)
      // As many zero-flow blocks as tables: one each, in order. Otherwise one serves all.
      const zero = own.length === tables.length ? own[index] : own[0]
      if (!zero) continue
      run[which] = { at: zero.at }
      guesses.push({ ...zero.guess, path: `runs[${index}].${which}` })
    }
    runs.push(run)
  }
  const fields = findFields(grid, sheet, labels, taken)
  guesses.push(...fields.map(({ guess }) => guess))
  return {
    sheet,
    labels,
    runs,
    series,
    fields: fields.map(({ field }) => field),
    guesses,
    questions: tables.flatMap((table) => table.questions),
  }
}

/** One place per field over all sheets: the surest guess. Sheets are named unless every test has a sheet of its own. */
function bestFields(used: readonly SheetFinds[], named: boolean, guesses: readonly Guess[]): FieldInput[] {
  const best = new Map<string, { field: FieldInput; confidence: number }>()
  for (const { sheet, fields } of used)
    for (const field of fields) {
      const prefix = `${cellText(sheet, { row: 0, column: 0 }).slice(0, -2)}`
      const confidence =
        guesses.find((guess) => guess.path === field.path && guess.cells[0]?.startsWith(prefix))
          ?.confidence ?? 0
      if (confidence > (best.get(field.path)?.confidence ?? 0))
        best.set(field.path, {
          field: named ? (onSheet(field, sheet.name) as FieldInput) : field,
          confidence,
        })
    }
  return [...best.values()].map(({ field }) => field)
}

/** Adds the sheet's name to every locator inside. */
function onSheet<T>(value: T, sheet: string): T {
  if (Array.isArray(value)) return value.map((one) => onSheet(one, sheet)) as T
  if (typeof value !== 'object' || value === null) return value
  const isLocator =
    'header' in value ||
    'label' in value ||
    ('range' in value && typeof value.range === 'string') ||
    'cell' in value
  const copy = Object.fromEntries(Object.entries(value).map(([key, one]) => [key, onSheet(one, sheet)]))
  return (isLocator ? { ...copy, sheet } : copy) as T
}

function signature({ runs, series, fields }: SheetFinds): string {
  return JSON.stringify([runs, series, fields])
}

/** "Test 1", "Test 2" → "Test *"; undefined where such a pattern would take in a sheet that holds no test. */
function prefixGlob(withRuns: readonly SheetFinds[], all: readonly SheetFinds[]): string | undefined {
  const names = withRuns.map(({ sheet }) => sheet.name)
  let prefix = names[0] ?? ''
  while (!names.every((name) => name.startsWith(prefix))) prefix = prefix.slice(0, -1)
  const covers = all.filter(({ sheet }) => sheet.name.startsWith(prefix)).length
  return covers === names.length ? `${prefix}*` : undefined
}

function methodOf(sheets: readonly SheetFinds[]): { id: string; guess: Guess } {
  for (const { sheet, labels } of sheets)
    for (const label of labels) {
      const number = /\b(9972|13829)\b/.exec(label.text)?.[1]
      if (!number) continue
      const id = number === '9972' ? 'iso-9972:2015' : 'en-13829:2001'
      return {
        id,
        guess: {
          path: 'test.method',
          cells: [cellText(sheet, label)],
          reason: `${JSON.stringify(label.text)} names the standard`,
          confidence: 0.9,
        },
      }
    }
  return {
    id: 'iso-9972:2015',
    guess: {
      path: 'test.method',
      cells: [],
      reason: 'the log names no standard; ISO 9972:2015 is proposed',
      confidence: 0.5,
    },
  }
}

function decimalOf(sheets: readonly Sheet[]): '.' | ',' | undefined {
  for (const sheet of sheets) {
    const rows = Array.from({ length: Math.min(sheet.rows, 300) }, (_, row) =>
      Array.from({ length: Math.min(sheet.columns, 60) }, (_, column) => {
        const cell = sheet.at(row, column)
        return cell?.kind === 'text' ? String(cell.value) : ''
      }),
    )
    const proof = provenDecimal(rows, sheet.name)
    if (proof) return proof.sign
  }
  return undefined
}

/** The sheets with tests, and the labels the layout stands on: a log that has them all is of the same make. */
function fingerprintOf(
  grid: Grid,
  used: readonly SheetFinds[],
  alike: string | undefined,
): NonNullable<LayoutInput['fingerprint']> {
  const first = used.find(({ runs, series }) => runs.length + series.length > 0) ?? used[0]
  const onFirst = first?.guesses.flatMap(({ cells }) => cells.slice(0, 1)) ?? []
  const wanted = new Set(onFirst)
  const cells = (first?.labels ?? [])
    .filter((label) => first && wanted.has(cellText(first.sheet, label)))
    .slice(0, 12)
    .map(({ row, column, text }) => ({
      ...(grid.kind === 'text' ? {} : { sheet: alike ?? first?.sheet.name ?? '' }),
      cell: addressOf(row, column),
      text: text.slice(0, 200),
    }))
  return { ...(grid.kind === 'text' ? {} : { sheets: [alike ?? first?.sheet.name ?? ''] }), cells }
}
