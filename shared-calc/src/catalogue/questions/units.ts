import { listed, plain, quoted } from '../words.js'
import { type Asked, cellName, oneOf } from './asked.js'

/** Flow units as they are typed, the most likely first, and as they are shown. */
const flowUnits = (american: boolean): readonly string[] =>
  american ? ['cfm', 'l/s', 'm3/h'] : ['m3/h', 'l/s', 'cfm']
const shownUnits = (american: boolean): string =>
  listed(
    flowUnits(american).map((unit) => unit.replace('m3', 'm³')),
    'or',
  )

/** In which unit, and for which air, a number of a log is. */
export const unitQuestions = {
  pressureUnit: ({ heading }: { heading: string }): Asked =>
    oneOf(`What is the unit of the building pressures in ${heading}?`, ['Pa', 'inH2O', 'mbar', 'mmH2O']),
  pressureUnitDoubt: ({
    heading,
    stated,
    highest,
    better,
  }: {
    heading: string
    stated: string
    /** The highest pressure by the unit stated, Pa. */
    highest: number
    /** Units that fit, the likeliest first. */
    better: readonly string[]
  }): Asked => ({
    text: `The building pressures in ${cellName(heading)} are headed ${stated}. In that unit, the highest is ${plain(highest, 3)} Pa, which is not possible in a test. In which unit are they?`,
    choices: [
      ...better.map((unit) => ({ value: unit, label: unit })),
      { value: 'as headed', label: `as headed: ${stated}` },
    ],
    noneLikelier: true,
  }),
  flowUnit: ({ heading, american }: { heading: string; american: boolean }): Asked =>
    oneOf(`What is the unit of the air flows in ${heading}: ${shownUnits(american)}?`, flowUnits(american)),
  flowUnitDoubt: ({
    stated,
    better,
    flows,
    n50,
    result,
    range,
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
    /** What the log says that its flow device measures. */
    range?: { text: string; cell: string }
  }): Asked => {
    const [first = '', second = first] = stated
    const headed =
      first === second
        ? `The flows are headed ${first}`
        : `The flows of one run are headed ${first}, those of the other ${second}`
    const says = result
      ? `, but the result ${quoted(result.label)} (${plain(result.value, 4)} in ${cellName(result.cell)}) fits only if they are in ${listed(better, 'or')}.`
      : range
        ? `, but ${cellName(range.cell)} says ${quoted(range.text)}, and not all flows are within that range.`
        : first === second
          ? `. In that unit, the air change rate at 50 Pa is ${plain(n50 ?? 0, 3)} per hour.`
          : `. In these units, the flows at 50 Pa are ${listed(flows.map((flow) => `${plain(flow, 3)} m³/h`))}.`
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
  flowUnitTwice: ({
    cell,
    units,
  }: {
    /** Heading of the flows. */
    cell: string
    /** As they are shown: that of the row of units, and that in the words of the heading. */
    units: readonly string[]
  }): Asked => ({
    text: `The heading of the flows in ${cellName(cell)} names two units, ${listed(units)}. Which one are they in?`,
    choices: units.map((unit) => ({ value: unit.replace('m³', 'm3'), label: unit })),
    noneLikelier: true,
  }),
  flowUnitsExchanged: ({
    cells,
    own,
    other,
  }: {
    /** Headings of the two flows. */
    cells: readonly string[]
    /** Units of the first and the second by their headings. */
    own: string
    other: string
  }): Asked => ({
    text: `The flows below ${listed(cells.map(cellName))} are the same only if the units of these headings are exchanged. In which unit are those below ${cellName(cells[0] ?? '')}?`,
    choices: [
      { value: other.replace('m³', 'm3'), label: other, reason: 'the two columns then agree' },
      { value: 'as headed', label: `as headed: ${own}` },
    ],
    noneLikelier: true,
  }),
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
  temperatureUnit: ({ side, value }: { side: 'indoor' | 'outdoor'; value: number }): Asked => ({
    text: `Is the ${side} temperature of ${value} in °C or °F?`,
    choices: ['°F', '°C'].map((unit) => ({ value: unit, label: `${value} ${unit}` })),
  }),
  barometerUnit: ({ value }: { value: number }): Asked => ({
    text: `The barometric pressure is logged as ${value}. What is its unit?`,
    choices: ['hPa', 'kPa', 'inHg', 'mmHg'].map((unit) => ({ value: unit, label: `${value} ${unit}` })),
  }),
  decimal: ({ cell, value, other }: { cell: string; value: number; other: number }): Asked => ({
    text: `Is the number in ${cellName(cell)} ${value} or ${other}? The log does not show whether its decimal sign is a point or a comma.`,
    choices: [
      { value: Number.isInteger(other) ? ',' : '.', label: String(value) },
      { value: Number.isInteger(other) ? '.' : ',', label: String(other) },
    ],
    noneLikelier: true,
  }),
} as const
