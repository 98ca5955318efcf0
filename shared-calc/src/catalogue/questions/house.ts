import { dayInWords, listed, plain, quoted } from '../words.js'
import { type Asked, cellName, typed } from './asked.js'

/** Why a value could not be read: it is missing, or a formula whose result the file does not hold. */
const whyMissing = (unstored: string | undefined): string =>
  unstored === undefined
    ? 'It was not found in the log.'
    : `Cell ${cellName(unstored)} holds a formula without a result. Open the log in a spreadsheet program and save it, or answer here.`

/** What the log says of the house and the day of the test. */
export const houseQuestions = {
  volume: ({
    rooms,
    unread,
    unstored,
  }: {
    rooms: { sum: number; unit: string | undefined; typed: string | undefined; count: number } | undefined
    /** What stands where the volume is expected, and why it cannot be used. */
    unread?: { text: string; cell: string; why: string } | undefined
    /** Cell of the volume, where it is a formula whose result the file does not hold. */
    unstored?: string | undefined
  }): Asked => ({
    text: `What is the internal volume of the building? ${
      rooms
        ? `The rooms in the log add up to ${rooms.sum}${rooms.unit ? ` ${rooms.unit}` : ''}.`
        : unread
          ? `Cell ${cellName(unread.cell)} says ${quoted(unread.text)}, ${unread.why}.`
          : whyMissing(unstored)
    }`,
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
  remarkedValue: ({
    field,
    cell,
    remark,
    value,
  }: {
    field: string
    cell: string
    remark: string
    value: number
  }): Asked => ({
    text: `Next to the ${field} in ${cellName(cell)} is the remark ${quoted(remark)}. Which value is right?`,
    choices: [{ value: String(value), label: `${value}, as it is in the log` }],
    noneLikelier: true,
  }),
  whichVolume: ({ only, choices }: { only: string | undefined; choices: Asked['choices'] }): Asked => ({
    text:
      only === undefined
        ? 'Which of these is the internal volume of the building?'
        : `The only volume in the log is ${quoted(only)}. What is the internal volume?`,
    choices,
    ...(only === undefined && { noneLikelier: true as const }),
  }),
  whichArea: ({
    name,
    areas,
  }: {
    name: 'envelopeArea' | 'floorArea'
    /** Each as written with its unit, its label and its cell. */
    areas: readonly { area_m2: number; text: string; label: string; cell: string }[]
  }): Asked => ({
    text: `The log has different values for the ${name === 'envelopeArea' ? 'envelope area' : 'floor area'}: ${listed(areas.map(({ text, cell }) => `${text} in ${cellName(cell)}`))}. Which is right?`,
    choices: areas.map(({ area_m2, text, label, cell }) => ({
      value: `${area_m2} m2`,
      label: text,
      reason: `${quoted(label)} in ${cellName(cell)}`,
    })),
    noneLikelier: true,
    example: '180 m2',
  }),
  contradictedSize: ({
    name,
    label,
    value,
    cell,
    read,
    size,
    fitting,
  }: {
    name: 'volume' | 'envelopeArea'
    /** The result that the log records, and where. */
    label: string
    value: number
    cell: string
    /** What the readings give with the size of the log, and the size that would give the log's result. */
    read: number
    size: number
    fitting: number
  }): Asked => {
    const [what, unit, answered] =
      name === 'volume' ? ['internal volume', 'm³', 'm3'] : ['envelope area', 'm²', 'm2']
    return {
      text: `With the ${what} of ${size} ${unit}, the readings give a result of ${plain(read, 3)}, but the log says ${plain(value, 3)} (${quoted(label)} in ${cellName(cell)}). What is the ${what}?`,
      choices: [
        { value: `${size} ${answered}`, label: `${size} ${unit}`, reason: 'as it is in the log' },
        {
          value: `${fitting} ${answered}`,
          label: `about ${fitting} ${unit}`,
          reason: `the readings then give ${plain(value, 3)}`,
        },
      ],
      noneLikelier: true,
    }
  },
  temperature: ({
    side,
    unstored,
    unread,
  }: {
    side: 'indoor' | 'outdoor'
    unstored: string | undefined
    /** What stands where the temperature is expected. */
    unread?: { text: string; cell: string } | undefined
  }): Asked =>
    typed(
      `What was the ${side} temperature during the test? ${
        unread && unstored === undefined
          ? `Cell ${cellName(unread.cell)} says ${quoted(unread.text)}, which is not one number.`
          : whyMissing(unstored)
      }`,
      side === 'indoor' ? '21 °C' : '8 °C',
    ),
  whichTemperature: ({
    side,
    values,
    mean,
  }: {
    side: 'indoor' | 'outdoor'
    /** Each with its unit, its label and its cell. */
    values: readonly { text: string; label: string; cell: string }[]
    mean: string
  }): Asked => ({
    text: `The log has different values for the ${side} temperature: ${listed(values.map(({ text, cell }) => `${text} in ${cellName(cell)}`))}. Which was it during the test?`,
    choices: [
      ...values.map(({ text, label, cell }) => ({
        value: text,
        label: text,
        reason: `${quoted(label)} in ${cellName(cell)}`,
      })),
      { value: mean, label: mean, reason: values.length === 2 ? 'the mean of both' : 'the mean of all' },
    ],
    noneLikelier: true,
    example: side === 'indoor' ? '21 °C' : '8 °C',
  }),
  date: (): Asked => typed('On which day was the test? No date was found in the log.', '2026-10-14'),
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
  testOfYear: ({ title, date, tests }: { title: string; date: string; tests: readonly string[] }): Asked => ({
    text: `The log has readings headed ${tests.map(quoted).join(' and ')}, but gives ${dayInWords(date)} as the date of those headed ${quoted(title)} too. Which test should be read?`,
    choices: tests.map((value) => ({ value, label: value })),
    noneLikelier: true,
  }),
} as const
