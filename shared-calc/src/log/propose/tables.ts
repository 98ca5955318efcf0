import type { Sheet } from '../grid/grid.js'
import type { LayoutInput } from '../layout/schema.js'
import { type ColumnRole, guessColumn, guessDirection, guessZeroFlow } from './dictionary.js'
import type { Guess } from './fields.js'
import { type Line, type LinesByPlace, linesByPlace, matesOf } from './lines.js'
import { cellText, type Label, nameOf, nthOf, numbersBelow, numbersRight } from './survey.js'

export type RunInput = NonNullable<LayoutInput['runs']>[number]
export type SeriesInput = NonNullable<LayoutInput['series']>[number]

/** A table of readings found on a sheet. */
export interface FoundTable {
  run?: RunInput
  series?: SeriesInput
  guesses: Guess[]
  questions: string[]
  /** Where it begins, so that zero-flow blocks can be matched to the nearest. */
  row: number
  column: number
}

/** More rows than anyone reads by hand: a gauge's own log. */
const SERIES_FROM = 200

/** Tables of readings on one sheet, by their headings: down the sheet, or across it. */
export function findTables(sheet: Sheet, labels: readonly Label[]): FoundTable[] {
  const lines = labels.flatMap((label): Line[] => {
    const guess = guessColumn(label.text)
    if (!guess) return []
    const below = numbersBelow(sheet, label)
    const right = numbersRight(sheet, label)
    // Times may be formatted as dates, which count as no numbers.
    const times = guess.what === 'time' && right.length < 3
    const textual = guess.what === 'direction' || guess.what === 'range' || times
    if (textual || below.values.length >= Math.max(3, right.length))
      return [{ label, guess, across: false, ...below }]
    return right.length >= 3 ? [{ label, guess, across: true, skip: 0, values: right }] : []
  })
  const neighbours = linesByPlace(lines)
  return lines
    .filter(({ guess }) => guess.what === 'pressure')
    .flatMap((pressure) => tableAt(sheet, labels, neighbours, pressure) ?? [])
}

function tableAt(
  sheet: Sheet,
  labels: readonly Label[],
  neighbours: LinesByPlace,
  pressure: Line,
): FoundTable | undefined {
  const mates = matesOf(pressure, neighbours)
  const find = (what: ColumnRole) =>
    mates.filter(({ guess }) => guess.what === what).sort(byNearness(pressure))[0]
  const flow = find('flow')
  const device = flow ? undefined : find('devicePressure')
  const time = find('time')
  const range = device && find('range')
  const carrier = flow ?? device
  if (!carrier || pressure.values.length < 3) return undefined
  const column = (line: Line) => ({ at: line.across ? across(labels, line) : down(labels, line) })
  const guesses = [pressure, carrier, ...(range ? [range] : [])].map((line) => guessOf(sheet, line))
  const { direction, sign, guess, question } = directionOf(sheet, labels, find('direction'), pressure)
  guesses.push(guess)
  const base = {
    pressure: column(pressure),
    ...(flow ? { flow: column(flow) } : {}),
    ...(device ? { devicePressure: column(device) } : {}),
  }
  const place = {
    row: pressure.label.row,
    column: pressure.label.column,
    guesses,
    questions: question ? [question] : [],
  }
  if (time && pressure.values.length >= SERIES_FROM) {
    guesses.push(guessOf(sheet, time))
    const seriesDirection = typeof direction === 'string' ? direction : 'by sign'
    return { ...place, series: { direction: seriesDirection, time: column(time), ...base } }
  }
  return {
    ...place,
    run: { direction, ...(sign ? { sign } : {}), ...base, ...(range ? { range: column(range) } : {}) },
  }
}

/** Mates to the right or below come first, then the nearest. */
function byNearness({ label }: Line) {
  const distance = (line: Line) => {
    const away = line.label.column - label.column + (line.label.row - label.row)
    return away > 0 ? away : 1000 - away
  }
  return (one: Line, other: Line) => distance(one) - distance(other)
}

const down = (labels: readonly Label[], { label, skip }: Line) => ({
  header: nameOf(label),
  ...nthOf(labels, label),
  ...(skip ? { skip } : {}),
})
const across = (labels: readonly Label[], { label }: Line) => ({
  label: nameOf(label),
  ...nthOf(labels, label),
})

function guessOf(sheet: Sheet, { label, guess, values }: Line): Guess {
  const numbers = values.filter((value) => !Number.isNaN(value))
  const span =
    numbers.length > 0
      ? `; ${values.length} numbers from ${numbers.reduce((a, b) => Math.min(a, b))} to ${numbers.reduce((a, b) => Math.max(a, b))}`
      : ''
  const unit = guess.unit ? `; unit ${guess.unit.unit}` : ''
  const shape = shapeFit(guess.what, numbers)
  return {
    path: guess.what,
    cells: [cellText(sheet, label)],
    reason: `the heading ${JSON.stringify(label.text)} has the term "${guess.term}"${unit}${span}${shape < 0 ? '; the numbers do not look like it' : ''}`,
    confidence: clamp(guess.fit + (guess.unit ? 0.04 : 0) + shape),
  }
}

/** Whether numbers look like what their heading says: pressures of 10 to 100 Pa either way, flows above zero in a table of readings. */
function shapeFit(what: ColumnRole, values: readonly number[]): number {
  if (values.length === 0) return 0
  if (what === 'pressure') return values.every((value) => Math.abs(value) <= 120) ? 0 : -0.3
  // A gauge's own log holds the blocks without flow too.
  if (what === 'flow' && values.length < SERIES_FROM) return values.every((value) => value > 0) ? 0 : -0.3
  return 0
}

interface FoundDirection {
  direction: RunInput['direction']
  sign?: NonNullable<RunInput['sign']>
  guess: Guess
  question?: string
}

function directionOf(
  sheet: Sheet,
  labels: readonly Label[],
  column: Line | undefined,
  pressure: Line,
): FoundDirection {
  const guess = (reason: string, confidence: number, cells: string[]): Guess => ({
    path: 'direction',
    cells,
    reason,
    confidence,
  })
  if (column && !column.across)
    return {
      direction: { column: down(labels, column) },
      guess: guess(
        `the column ${JSON.stringify(column.label.text)} names the direction of each row`,
        column.guess.fit,
        [cellText(sheet, column.label)],
      ),
    }
  const values = pressure.values.filter((value) => !Number.isNaN(value))
  const signs = new Set(values.map(Math.sign))
  const title = titleOf(labels, pressure.label) ?? { text: sheet.name, row: 0, column: 0, isSheet: true }
  const named = guessDirection(title.text)
  const where = [cellText(sheet, 'isSheet' in title ? pressure.label : title)]
  if (named) {
    const expected = named === 'depressurisation' ? -1 : 1
    const agrees = !signs.has(-expected)
    return {
      direction: named,
      ...(agrees ? {} : { sign: { readings: 'without sign', zeroFlow: 'inside minus outside' } as const }),
      guess: guess(
        `${JSON.stringify(title.text)} names ${named}${agrees ? ', and the sign of the pressures agrees' : ', but the pressures have the other sign: logged without sign?'}`,
        agrees ? 0.9 : 0.5,
        where,
      ),
      ...(agrees
        ? {}
        : {
            question: `the pressures of ${named} below ${where[0]} are positive: are they logged without sign, or as outside minus inside? What is the sign of the zero-flow values?`,
          }),
    }
  }
  if (signs.has(-1) && signs.has(1))
    return {
      direction: 'by sign' as const,
      guess: guess('pressures of both signs: negative is depressurisation', 0.8, where),
    }
  const direction = signs.has(-1) ? ('depressurisation' as const) : ('pressurisation' as const)
  const sure = signs.has(-1)
  return {
    direction,
    guess: guess(
      `all pressures are ${sure ? 'negative' : 'positive'}, and nothing names the direction`,
      sure ? 0.8 : 0.4,
      where,
    ),
    ...(sure
      ? {}
      : {
          question: `nothing says the direction of the readings below ${where[0]}: pressurisation is proposed`,
        }),
  }
}

/** The nearest text above a heading, in its columns or a little to the left, that names a direction. */
function titleOf(labels: readonly Label[], { row, column }: Label): Label | undefined {
  return labels
    .filter(
      (one) =>
        one.row <= row &&
        one.row >= row - 16 &&
        one.column <= column + 1 &&
        one.column >= column - 6 &&
        guessDirection(one.text),
    )
    .sort((a, b) => b.row - a.row || Math.abs(a.column - column) - Math.abs(b.column - column))[0]
}

/** Zero-flow values of a sheet, before and after, by their labels. */
export function findZeroFlow(sheet: Sheet, labels: readonly Label[]) {
  return labels.flatMap((label) => {
    const which = guessZeroFlow(label.text)
    if (!which) return []
    const below = numbersBelow(sheet, label)
    const right = numbersRight(sheet, label)
    const isAcross = right.length > below.values.length || (right.length === 1 && below.values.length <= 1)
    const values = isAcross ? right : below.values
    if (values.length === 0) return []
    const line: Line = {
      label,
      guess: { what: 'pressure', fit: 0.9, term: '' },
      across: isAcross,
      skip: below.skip,
      values,
    }
    const guess: Guess = {
      path: which,
      cells: [cellText(sheet, label)],
      reason: `${JSON.stringify(label.text)} names the zero-flow values ${which === 'zeroFlowBefore' ? 'before' : 'after'}; ${values.length} numbers follow`,
      confidence: values.every((value) => Math.abs(value) < 30) ? 0.9 : 0.5,
    }
    return [{ which, label, at: isAcross ? across(labels, line) : down(labels, line), guess }]
  })
}

function clamp(value: number): number {
  return Math.round(100 * Math.min(0.99, Math.max(0.05, value))) / 100
}
