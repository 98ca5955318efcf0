import { LOOKS, type Look } from '../looks.js'
import { listed, quoted } from '../words.js'
import { type Asked, cellName } from './asked.js'

/** Which columns, rows and tables of a log are its readings. */
export const readingQuestions = {
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
    text: `The readings have no headings. Are these their columns: ${tables.map(({ pressure, flows }) => `building pressure from ${cellName(pressure)} down, air flow from ${listed(flows.map(cellName))} down`).join('; ')}?`,
    choices: [
      { value: 'yes', label: 'yes', reason: 'with these columns, pressure and flow follow a leakage curve' },
      { value: 'no', label: 'no' },
    ],
  }),
  copied: ({
    copies,
    originals,
  }: {
    /** Headings of the pressures, each with the sheet. */
    copies: readonly string[]
    originals: readonly string[]
  }): Asked => ({
    text: `The readings below ${listed(copies)} are the same as those below ${listed(originals)}, on the sheet of another house. Were they measured in this house?`,
    choices: [
      { value: 'leave out', label: 'no: leave them out' },
      { value: 'read', label: 'yes: use them' },
    ],
    noneLikelier: true,
  }),
  fans: ({ columns }: { columns: readonly string[] }): Asked => ({
    text: `The tables with the flows in ${listed(columns.map(cellName))} are for different fans and have nearly the same pressures. Did the fans run together?`,
    choices: [
      { value: 'together', label: 'yes: add their flows' },
      { value: 'separate', label: 'no: they are separate tests' },
    ],
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
  grey: ({ cells, look }: { cells: readonly string[]; look: Look }): Asked => {
    const how = LOOKS[look]
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
} as const

const counting = ({ length }: readonly string[]): Asked['choices'] => [
  { value: 'leave out', label: length === 1 ? 'no: leave it out' : 'no: leave them out' },
  {
    value: 'read',
    label: length === 1 ? 'yes: it counts like the others' : 'yes: they count like the others',
  },
]
