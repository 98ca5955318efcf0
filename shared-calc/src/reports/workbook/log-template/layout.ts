import { LAYOUT_FORMAT, type LayoutInput } from '../../../log/index.js'
import { columnLetters } from '../address.js'
import { HALVES, type Half, type Places, placesFor, ZERO_FLOW_ROWS } from './places.js'

/** Name of the sheet that is filled in. */
export const TEMPLATE_SHEET = 'Test'

/** The layout of an empty log with so many readings in each direction; the log carries it along. */
export function templateLayout(readings: number): LayoutInput {
  const places = placesFor(readings)
  return {
    format: LAYOUT_FORMAT,
    name: 'log template',
    note: `Comes with the log that "draughtbook template" writes, for ${readings} readings in each direction.`,
    fields: [
      ...places.entries.map(({ path, half, row, unit, check }) => ({
        path,
        at: { cell: `${columnLetters(HALVES[half] + 2)}${row}`, sheet: TEMPLATE_SHEET },
        ...(unit && { unit }),
        ...(check.kind === 'words' && { words: { ...check.words } }),
      })),
      // One averaging time is written down for both directions.
      ...places.entries
        .filter(({ path }) => path === 'runs[0].averagingTime_s')
        .map(({ half, row }) => ({
          path: 'runs[1].averagingTime_s',
          at: { cell: `${columnLetters(HALVES[half] + 2)}${row}`, sheet: TEMPLATE_SHEET },
          unit: 's',
        })),
    ],
    runs: [
      run('depressurisation', 'left', places, readings),
      run('pressurisation', 'right', places, readings),
    ],
  }
}

function run(
  direction: 'depressurisation' | 'pressurisation',
  half: Half,
  { zeroFlow, readings: at }: Places,
  readings: number,
): NonNullable<LayoutInput['runs']>[number] {
  const list = (column: number, first: number, count: number, unit: string) => {
    const letters = columnLetters(HALVES[half] + column)
    return { at: { range: `${letters}${first}:${letters}${first + count - 1}`, sheet: TEMPLATE_SHEET }, unit }
  }
  return {
    direction,
    zeroFlowBefore: list(1, zeroFlow + 2, ZERO_FLOW_ROWS, 'Pa'),
    zeroFlowAfter: list(2, zeroFlow + 2, ZERO_FLOW_ROWS, 'Pa'),
    pressure: list(1, at + 1, readings, 'Pa'),
    flow: list(2, at + 1, readings, 'm³/h'),
  }
}
