import type { Direction } from '../contract/record/index.js'
import { dayInWords, listed, plain, quoted } from './words.js'

interface Asked {
  /** One question, after a sentence that says why where that helps. */
  readonly text: string
  /** Likely answers, the most likely first; none where a value has to be typed. */
  readonly choices: readonly { readonly value: string; readonly label: string; readonly reason?: string }[]
  /** Nothing makes the first choice likelier than the others, and a wrong one gives a wrong figure: nobody should take it unread. */
  readonly noneLikelier?: true
  /** An example of a typed answer. */
  readonly example?: string
}

const typed = (text: string, example: string): Asked => ({ text, choices: [], example })
const oneOf = (text: string, values: readonly string[]): Asked => ({
  text,
  choices: values.map((value) => ({ value, label: value.replace(/^m3\b/, 'm³') })),
  noneLikelier: true,
})
const cellName = (cell: string): string => cell.split('!').at(-1) ?? cell

/** Flow units as they are typed, the most likely first, and as they are shown. */
const flowUnits = (american: boolean): readonly string[] =>
  american ? ['cfm', 'l/s', 'm3/h'] : ['m3/h', 'l/s', 'cfm']
const shownUnits = (american: boolean): string =>
  listed(
    flowUnits(american).map((unit) => unit.replace('m3', 'm³')),
    'or',
  )

const runOf = (direction: Direction | undefined): string => (direction ? `the ${direction} run` : 'the run')

/** What the reader of logs asks where a log leaves open what the figures depend on. */
export const questions = {
  direction: ({ heading }: { heading: string }): Asked => ({
    text: `Was the building pressurised or depressurised in the readings below ${heading}? The log does not say.`,
    choices: [
      { value: 'pressurisation', label: 'pressurisation', reason: 'the pressures are positive' },
      {
        value: 'depressurisation',
        label: 'depressurisation',
        reason: 'its pressures are often logged without the minus sign',
      },
    ],
  }),
  column: ({
    about,
    together,
    columns,
  }: {
    about: 'pressure' | 'flow'
    /** The answer that takes all columns, where they may be several fans. */
    together: string | undefined
    columns: Asked['choices']
  }): Asked => ({
    text:
      about === 'pressure'
        ? 'Which column is the pressure across the building?'
        : 'Which column is the air flow, as the instrument showed it?',
    choices: [
      ...(together === undefined
        ? []
        : [
            {
              value: together,
              label: 'all of them together: several fans',
              reason: 'their headings differ only by a number',
            },
          ]),
      ...columns,
    ],
    noneLikelier: true,
  }),
  exchangedColumns: ({ pressures, flows }: { pressures: string; flows: string }): Asked => ({
    text: `The readings follow a leakage curve only if the numbers under ${quoted(pressures)} are the pressures and those under ${quoted(flows)} the flows. Which column holds the pressures?`,
    choices: [
      { value: pressures, label: quoted(pressures), reason: 'the readings then follow a leakage curve' },
      { value: flows, label: quoted(flows), reason: 'its heading says so' },
    ],
    noneLikelier: true,
  }),
  unnamedColumns: ({
    tables,
  }: {
    tables: readonly { pressure: string; flows: readonly string[] }[]
  }): Asked => ({
    text: `Headings of the readings are missing. Are these the columns: ${tables.map(({ pressure, flows }) => `building pressure from ${cellName(pressure)} down, air flow from ${listed(flows.map(cellName))} down`).join('; ')}?`,
    choices: [
      { value: 'yes', label: 'yes', reason: 'with these columns, pressure and flow follow a leakage curve' },
      { value: 'no', label: 'no' },
    ],
  }),
  fans: ({ columns }: { columns: readonly string[] }): Asked => ({
    text: `The tables with the flows in ${listed(columns.map(cellName))} are for different fans and have nearly the same pressures. Did the fans run together?`,
    choices: [
      { value: 'together', label: 'yes: add their flows' },
      { value: 'separate', label: 'no: they are separate tests' },
    ],
    noneLikelier: true,
  }),
  pressureUnit: ({ heading }: { heading: string }): Asked =>
    oneOf(`What is the unit of the building pressures in ${heading}?`, ['Pa', 'inH2O', 'mbar', 'mmH2O']),
  flowUnit: ({ heading, american }: { heading: string; american: boolean }): Asked =>
    oneOf(`What is the unit of the air flows in ${heading}: ${shownUnits(american)}?`, flowUnits(american)),
  flowUnitDoubt: ({
    stated,
    better,
    flows,
    n50,
    result,
  }: {
    /** Units that the headings state, one for each run. */
    stated: readonly string[]
    /** Those that fit better. */
    better: readonly string[]
    /** Flows at 50 Pa by the units stated, m³/h. */
    flows: readonly number[]
    /** Air change rate by the units stated, 1/h. */
    n50: number | undefined
    /** A result of the log that only another unit gives. */
    result?: { label: string; value: number; cell: string }
  }): Asked => {
    const [first = '', second = first] = stated
    const headed =
      first === second
        ? `The flows are headed ${first}`
        : `The flows of one run are headed ${first}, those of the other ${second}`
    const says = result
      ? `, but the result ${quoted(result.label)} (${plain(result.value, 4)} in ${cellName(result.cell)}) fits only if they are in ${listed(better, 'or')}.`
      : first === second
        ? `. Read so, the air change rate at 50 Pa is ${plain(n50 ?? 0, 3)} 1/h.`
        : `. Read so, the flows at 50 Pa are ${listed(flows.map((flow) => `${plain(flow, 3)} m³/h`))}.`
    return {
      text: `${headed}${says} In which unit are the flows?`,
      choices: [
        ...better.map((unit) => ({
          value: unit.replace('m³', 'm3'),
          label: first === second ? unit : `${unit} in both runs`,
        })),
        { value: 'as headed', label: `as headed: ${listed([...new Set(stated)])}` },
      ],
      noneLikelier: true,
    }
  },
  flowStatedAt: ({ cell, text }: { cell: string; text: string }): Asked => ({
    text: `Cell ${cellName(cell)} says ${quoted(text)}. Which air are the flows for?`,
    choices: [
      { value: 'reference air', label: 'air at 20 °C (1.204 kg/m³)' },
      { value: 'normal air', label: 'air at 0 °C (1.293 kg/m³)' },
      { value: 'device air', label: 'the air that passed through the fan' },
    ],
    noneLikelier: true,
  }),
  deviceUnit: (): Asked =>
    oneOf(
      `In which unit do the coefficients of the flow device give the flow: ${shownUnits(false)}?`,
      flowUnits(false),
    ),
  deviceRange: ({ ranges }: { ranges: readonly string[] }): Asked =>
    oneOf('Which range of the flow device was used? The log does not say.', ranges),
  deviceTable: ({ tables }: { tables: readonly { cells: string; title: string }[] }): Asked => ({
    text: 'The log has several tables of coefficients. Which one is of the flow device that was used?',
    choices: tables.map(({ cells, title }) => ({
      value: cells,
      label: title ? `${cells} (${quoted(title)})` : cells,
    })),
    noneLikelier: true,
  }),
  zeroFlowLabels: ({ labels }: { labels: readonly string[] }): Asked => ({
    text: `No zero-flow pressures were found. Are these the zero-flow pressures: ${listed(labels.map(quoted))}?`,
    choices: [
      { value: 'zero flow', label: 'yes: before and after the readings, in this order' },
      { value: 'something else', label: 'no: the log has none' },
    ],
  }),
  zeroFlowMissing: ({
    direction,
    cell,
    label,
  }: {
    direction: Direction | undefined
    cell: string
    label: string
  }): Asked => ({
    text: `Cell ${cellName(cell)} says ${quoted(label)}, but no zero-flow pressures were found for ${runOf(direction)}. What were they, in Pa, before and after the readings?`,
    choices: [{ value: 'none', label: 'none: the pressures were measured or corrected without them' }],
    noneLikelier: true,
    example: '-1.2 before, -0.8 after',
  }),
  zeroFlowUnused: ({
    direction,
    labels,
    others,
    instead,
    both,
    read,
  }: {
    direction: Direction | undefined
    labels: readonly string[]
    /** The values that no run took, with their units. */
    others: readonly string[]
    /** The zero-flow pressures of the run with these in their place. */
    instead: readonly string[]
    /** Those read and these together, where they may be before and after. */
    both: readonly string[] | undefined
    /** Those that were read for the run; undefined where it has none. */
    read: readonly string[] | undefined
  }): Asked => ({
    text: `The log also has ${listed(labels.map(quoted))} (${listed(others)}). Which are the zero-flow pressures of ${runOf(direction)}?`,
    choices: [
      read ? { value: 'as read', label: read.join(', ') } : { value: 'none', label: 'it has none' },
      { value: instead.join(', '), label: instead.join(', ') },
      ...(both ? [{ value: both.join(', '), label: both.join(', ') }] : []),
    ],
    noneLikelier: true,
    example: '-1.2 before, -0.8 after',
  }),
  zeroFlowRival: ({
    direction,
    cells,
    read,
    instead,
  }: {
    direction: Direction | undefined
    cells: readonly string[]
    /** The zero-flow pressures as they were read for the run. */
    read: readonly string[]
    /** Those it would have if both runs exchanged theirs. */
    instead: readonly string[]
  }): Asked => ({
    text: `The log does not say which run its zero-flow pressures in ${listed(cells.map(cellName))} belong to. Which are those of ${runOf(direction)}?`,
    choices: [
      { value: 'as read', label: read.join(', ') },
      { value: instead.join(', '), label: instead.join(', ') },
    ],
    noneLikelier: true,
    example: '-1.2 before, -0.8 after',
  }),
  zeroFlowOneSided: ({
    direction,
    read,
    lacks,
  }: {
    direction: Direction | undefined
    read: readonly string[]
    lacks: 'before' | 'after'
  }): Asked => ({
    text: `No zero-flow pressure ${lacks} the readings was found for ${runOf(direction)}, but the other run has one. What are the zero-flow pressures of ${runOf(direction)}, in Pa?`,
    choices: [{ value: 'as read', label: `only ${read.join(', ')}` }],
    noneLikelier: true,
    example: '-1.2 before, -0.8 after',
  }),
  zeroFlowSign: ({ direction, mean }: { direction: Direction; mean: string }): Asked => ({
    text: `The pressures of ${direction} are logged without a minus sign. Are its zero-flow pressures (mean ${mean} Pa) inside minus outside, or was their sign changed too?`,
    choices: [
      {
        value: 'as readings',
        label: 'sign changed, like the readings',
        reason: 'the zero-flow pressures of the other run have the opposite sign',
      },
      { value: 'inside minus outside', label: 'inside minus outside' },
    ],
  }),
  testOfYear: ({ title, date, tests }: { title: string; date: string; tests: readonly string[] }): Asked => ({
    text: `The log has readings headed ${tests.map(quoted).join(' and ')}, but gives ${dayInWords(date)} as the date of those headed ${quoted(title)} too. Which test should be read?`,
    choices: tests.map((value) => ({ value, label: value })),
    noneLikelier: true,
  }),
  pressureSign: (): Asked => ({
    text: 'The pressures headed pressurisation are negative, and those headed depressurisation are positive. Were the pressures logged as outside minus inside, or are the titles of the two runs exchanged?',
    choices: [
      { value: 'outside minus inside', label: 'the pressures are outside minus inside' },
      {
        value: 'titles exchanged',
        label: 'the titles are exchanged; the pressures are inside minus outside',
      },
    ],
    noneLikelier: true,
  }),
  grey: ({ cells, look }: { cells: readonly string[]; look: 'written' | 'shaded' }): Asked => {
    const how = look === 'shaded' ? 'shaded grey' : 'written in grey'
    const where = listed(cells.map(cellName))
    return {
      text:
        cells.length === 1
          ? `The reading in ${where} is ${how}. Does it count?`
          : `The readings in ${where} are ${how}. Do they count?`,
      choices: counting(cells),
    }
  },
  remarked: ({ cells, whys }: { cells: readonly string[]; whys: string }): Asked => {
    const where = listed(cells.map(cellName))
    return {
      text: `${cells.length === 1 ? `Does the reading in ${where} count?` : `Do the readings in ${where} count?`} ${whys}.`,
      choices: counting(cells),
    }
  },
  volume: ({
    rooms,
  }: {
    rooms: { sum: number; unit: string | undefined; typed: string | undefined; count: number } | undefined
  }): Asked => ({
    text: `What is the internal volume of the building? ${rooms ? `The rooms in the log add up to ${rooms.sum}${rooms.unit ? ` ${rooms.unit}` : ''}.` : 'It is not in the log.'}`,
    choices:
      rooms?.unit && rooms.typed
        ? [
            {
              value: rooms.typed,
              label: `${rooms.sum} ${rooms.unit}`,
              reason: `sum of ${rooms.count} rooms`,
            },
          ]
        : [],
    example: '412.6 m3',
  }),
  volumeOfSides: ({
    cell,
    text,
    amount,
    unit,
  }: {
    cell: string
    text: string
    amount: number
    unit: 'm³' | 'ft³'
  }): Asked => ({
    text: `What is the internal volume of the building? Cell ${cellName(cell)} says ${quoted(text)}, which is ${amount} ${unit}.`,
    choices: [
      {
        value: `${amount} ${unit.replace('³', '3')}`,
        label: `${amount} ${unit}`,
        reason: 'product of the three lengths',
      },
    ],
    example: '412.6 m3',
  }),
  whichVolume: ({ only, choices }: { only: string | undefined; choices: Asked['choices'] }): Asked => ({
    text:
      only === undefined
        ? 'Which of these is the internal volume of the building?'
        : `The only volume in the log is ${quoted(only)}. What is the internal volume?`,
    choices,
    ...(only === undefined && { noneLikelier: true as const }),
  }),
  volumeUnit: ({ value, feetFirst }: { value: number; feetFirst: boolean }): Asked => {
    const choices = [
      { value: 'ft3', label: `${plain(value)} ft³` },
      { value: 'm3', label: `${plain(value)} m³` },
    ]
    return {
      text: `Is the volume ${plain(value)} ft³ or m³?`,
      choices: feetFirst ? choices : choices.reverse(),
    }
  },
  decimal: ({ cell, value, other }: { cell: string; value: number; other: number }): Asked => ({
    text: `Is the number in ${cellName(cell)} ${value} or ${other}? The log does not show whether its decimal sign is a point or a comma.`,
    choices: [
      { value: Number.isInteger(other) ? ',' : '.', label: String(value) },
      { value: Number.isInteger(other) ? '.' : ',', label: String(other) },
    ],
    noneLikelier: true,
  }),
  temperature: ({ side }: { side: 'indoor' | 'outdoor' }): Asked =>
    typed(
      `What was the ${side} temperature during the test? It is not in the log.`,
      side === 'indoor' ? '21 °C' : '8 °C',
    ),
  temperatureUnit: ({ side, value }: { side: 'indoor' | 'outdoor'; value: number }): Asked => ({
    text: `Is the ${side} temperature of ${value} in °C or °F?`,
    choices: ['°F', '°C'].map((unit) => ({ value: unit, label: `${value} ${unit}` })),
  }),
  barometerUnit: ({ value }: { value: number }): Asked => ({
    text: `What is the unit of the barometric pressure, ${value}?`,
    choices: ['hPa', 'kPa', 'inHg', 'mmHg'].map((unit) => ({ value: unit, label: `${value} ${unit}` })),
  }),
  date: (): Asked => typed('On which day was the test? The date is not in the log.', '2026-10-14'),
  whichDate: ({ dates, monthFirst }: { dates: readonly string[]; monthFirst: boolean }): Asked => {
    const choices = dates.map((date) => ({ value: date, label: dayInWords(date) }))
    return {
      text: `Is the date of the test ${listed(
        choices.map(({ label }) => label),
        'or',
      )}?`,
      choices: monthFirst ? choices.reverse() : choices,
    }
  },
} as const

const counting = ({ length }: readonly string[]): Asked['choices'] => [
  { value: 'leave out', label: length === 1 ? 'no: leave it out' : 'no: leave them out' },
  {
    value: 'read',
    label: length === 1 ? 'yes: it counts like the others' : 'yes: they count like the others',
  },
]
