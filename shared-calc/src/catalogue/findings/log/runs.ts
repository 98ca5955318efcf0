import { LOOKS, type Look } from '../../looks.js'
import { capital, plain, quoted } from '../../words.js'
import type { RemarkTexts } from '../finding-text.js'
import { saying } from '../remark.js'

/** How the readings and zero-flow pressures of a log that no layout describes were understood. */
export const runTexts = {
  'log-direction/reversed': {
    severity: 'caution',
    message: ({ from }: { from: string }) =>
      `${capital(from)} says pressurisation, but all pressures are negative. The run was read as depressurisation.`,
    remedy: 'Check the direction of this run.',
  },
  'log-direction/negative': {
    severity: 'note',
    message: 'All pressures are negative, so the run was read as depressurisation.',
  },
  'log-direction/other': {
    severity: 'note',
    message: ({ other, own }: { other: string; own: string }) =>
      `The log does not state the direction of this run. The other run is ${other}, so this one was read as ${own}.`,
  },
  'log-sign/both': {
    severity: 'note',
    message:
      'The pressures are logged as outside minus inside. Their signs were changed, and so were those of the zero-flow pressures.',
  },
  'log-sign/titles': {
    severity: 'caution',
    message:
      'The titles of the two runs were exchanged, as you answered. The direction follows the sign of the pressures.',
    remedy: 'Correct the titles in the log.',
  },
  'log-air-of-flows': {
    severity: 'note',
    message: ({ text, air }: { text: string; air: 'device air' | 'reference air' }) =>
      `The log says ${quoted(text)}. The flows were taken as flows of ${air === 'device air' ? 'the air that passes the flow device' : 'air at the reference density of the flow device'}.`,
  },
  'log-sign/stated-otherwise': {
    severity: 'caution',
    message:
      'The log says that pressures are outside minus inside, but the signs of its readings are inside minus outside. The readings and the zero-flow pressures were read as they are.',
    remedy: 'Check the signs of the zero-flow pressures.',
  },
  'log-sign/zero-flow-kept': {
    severity: 'note',
    message: 'The zero-flow pressures are read as inside minus outside, with the sign they have in the log.',
  },
  'log-zero-shared': {
    severity: 'note',
    message: 'The log has one set of zero-flow pressures. It is used for every run.',
  },
  'log-zero-which/in-order': {
    severity: 'note',
    message:
      'The log does not say when its two zero-flow pressures were taken. The first is assumed to be from before the readings, the second from after. Their mean is the same either way.',
  },
  'log-zero-unused': {
    severity: 'caution',
    message: ({ label }: { label: string }) => `${quoted(label)} was not used for any run.`,
    remedy: 'Check whether it is a zero-flow pressure of this test.',
  },
  'log-zero-which/by-order': {
    severity: 'caution',
    message:
      'The log has two zero-flow pressures side by side and does not say which run each belongs to. They are used in the order of the runs.',
    remedy: 'Write the direction over each zero-flow pressure.',
  },
  'log-zero-which': {
    severity: 'caution',
    message: ({ taken }: { taken: 'before' | 'after' }) =>
      `The log does not say whether the zero-flow pressures were taken before or after the readings. They are assumed to be from ${taken} the readings.`,
    remedy: 'Write "before" or "after" next to them in the log.',
  },
  'log-zero-answered': {
    severity: 'note',
    message: ({ answer }: { answer: string }) =>
      `The zero-flow pressures of this run are taken from your answer: ${quoted(answer.replace(/-(?=\d)/g, '−'))}.`,
  },
  'log-zero-answered/none': {
    severity: 'caution',
    message:
      'This run has no zero-flow pressures, as you answered. The pressures were not corrected for zero flow.',
    remedy: 'Check that the pressures in the log are already corrected for zero flow.',
  },
  'log-induced': {
    severity: 'note',
    message: ({ heading, added }: { heading: string; added: number | undefined }) =>
      `The log says ${quoted(heading)}, so the zero-flow pressure is already subtracted from these pressures.${added === undefined ? ' The log gives no zero-flow pressure to add back.' : ` The mean of ${plain(added)} Pa was added back, so that it is not subtracted twice.`}`,
  },
  'log-flow-sign': {
    severity: 'note',
    message: 'The flow has a minus sign in the log. It was read without it.',
  },
  'log-pressures-in-headings': {
    severity: 'caution',
    message: 'The log has no measured pressures. Those in the headings of the flows were used.',
    remedy: 'If they are only target pressures, enter the measured ones. Use averages over 20 s or longer.',
  },
  'log-column-left-out': {
    severity: 'note',
    message: ({ heading, why }: { heading: string; why: string }) =>
      `${heading === '' ? 'A column without a heading' : `Column ${quoted(heading)}`} was not used: ${why}.`,
  },
  'log-column-left-out/unpaired': {
    severity: 'caution',
    message: ({ heading, why }: { heading: string; why: string }) =>
      `Column ${quoted(heading)} was not used: ${why}.`,
    remedy: 'Check whether it is part of a reading or a zero-flow pressure.',
  },
  'log-total/mean': {
    severity: 'note',
    message: ({ cell }: { cell: string }) =>
      `The flow is the mean in column ${cell}. The single values it was calculated from were not read.`,
  },
  'log-total/sum': {
    severity: 'note',
    message: ({ cell }: { cell: string }) =>
      `The flow is the total in column ${cell}. The flows of the single fans add up to it and were not added again.`,
  },
  'log-fans': {
    severity: 'note',
    message: 'Several fans ran together. Their flows are added.',
  },
  'log-normal-flow': {
    severity: 'note',
    message: ({ factor }: { factor: number }) =>
      `The flows are for air at 0 °C, as you answered. They were multiplied by ${factor.toFixed(4)}, so that they are for air at 20 °C.`,
  },
  'log-step-means': {
    severity: 'note',
    message: ({ heading, rows, readings }: { heading: string; rows: number; readings: number }) =>
      `Rows with the same entry in column ${quoted(heading)} were averaged: ${rows} rows give ${readings} readings.`,
  },
  'log-row-left-out': {
    severity: 'caution',
    message: ({ why }: { why: string }) => `The reading was left out: ${why}.`,
    remedy: 'If it counts, correct the log and read it again.',
  },
  'log-row-left-out/summary': {
    severity: 'note',
    message: ({ why }: { why: string }) => `The row was left out: ${why}.`,
  },
  'log-remark/between': {
    severity: 'note',
    message: ({ text }: { text: string }) => `There is a remark between the readings: ${quoted(text)}.`,
  },
  'log-row-left-out/answered': {
    severity: 'caution',
    message: ({ why }: { why: string }) => `The reading was left out, as you answered: ${why}.`,
    remedy: 'If it counts, change your answer.',
  },
  'log-row-left-out/beside': {
    severity: 'caution',
    message: ({ value, cell, struck }: { value: number; cell: string; struck: string }) =>
      `${plain(value, 6)} in ${cell} was not read. It is beside ${struck}, which is struck through.`,
    remedy: 'If this number replaces the struck-through one, move it into that cell.',
  },
  'log-row-doubt': {
    severity: 'caution',
    message: ({ why }: { why: string }) => `The reading was used, as you answered, although ${why}.`,
    remedy: 'If it does not count, change your answer.',
  },
  'log-left-out/unnamed': {
    severity: 'caution',
    message: 'The numbers without headings were left out, as you answered.',
    remedy: 'If they count, write a heading above each column.',
  },
  'log-left-out/copied': {
    severity: 'caution',
    message: ({ original }: { original: string }) =>
      `The readings are the same as those below ${original}. They were left out, as you answered.`,
    remedy: 'If they were measured in this house, change your answer.',
  },
  'log-no-heading': {
    severity: 'caution',
    message: 'The column has no heading. It was read as you answered.',
    remedy: 'Write a heading above the column.',
  },
  'log-unit/device': {
    severity: 'note',
    message: ({ unit }: { unit: string }) =>
      `The coefficients of the flow device were converted from ${unit} to m³/h.`,
  },
  'log-unit/device-pressure': {
    severity: 'note',
    message: ({ unit }: { unit: string }) =>
      `The coefficients of the flow device are for pressures in ${unit}. They were converted to Pa.`,
  },
  'log-brackets': {
    severity: 'note',
    message: 'The pressures in brackets were read as negative.',
  },
  'log-measured-pressure': {
    severity: 'note',
    message: ({ measured, induced }: { measured: string; induced: string }) =>
      `The pressures in columns ${measured} and ${induced} differ by the zero-flow pressure in every reading. Those in ${measured} were used as the measured pressures.`,
  },
  'log-unusual-leakage': {
    severity: 'caution',
    message: ({ n50 }: { n50: number }) =>
      `By these flows and the volume, the air change rate at 50 Pa is about ${n50 < 1 ? n50.toPrecision(1) : n50.toFixed(0)} per hour. Buildings seldom leak so ${n50 < 1 ? 'little' : 'much'}.`,
    remedy: 'Check the flows, their unit and decimal point, and the volume.',
  },
  'log-unit-elsewhere': {
    severity: 'note',
    message: ({
      what,
      unit,
      where,
    }: {
      what: 'flows' | 'pressures'
      unit: string
      where: string | undefined
    }) =>
      `The column of ${what} states no unit. ${unit} is used, which is stated ${where === undefined ? 'for the other run' : `in ${where}`}.`,
  },
  'log-unit-likely/pressures': {
    severity: 'note',
    message: ({ highest }: { highest: number }) =>
      `No known unit is stated for the pressures. They are read in Pa, because no other unit makes ${plain(highest)} possible in a building test.`,
  },
  'log-unit-proven/flows': {
    severity: 'note',
    message: ({ unit, result, cell }: { unit: string; result: number; cell: string }) =>
      `No known unit is stated for the flows. They are read in ${unit}, because only then do they give the log's own result (${plain(result, 6)} in ${cell}).`,
  },
} as const satisfies RemarkTexts

export const runText = saying(runTexts)

/** Why a row among the readings is none, as it follows a colon. */
export const rowReasons = {
  struck: 'it is struck through',
  summary: (mark: string) => `it is the row marked ${quoted(mark)}, not a reading`,
  mean: 'it is the mean of the rows above, not a reading',
  sum: 'it is the sum of the rows above, not a reading',
  sampleOf: (cell: string) => `it is one of the values averaged in ${cell}`,
  empty: 'its pressure and its flow are 0, and nothing says that it is zero flow',
  noteBelow: (text: string, cell: string) => `the remark below it in ${cell} says ${quoted(text)}`,
  ofOneSign: (whole: string | undefined) =>
    `it is the mean of the zero-flow values of one sign; ${whole === undefined ? 'the log has no mean of all values' : `the mean of all values in ${whole} was used`}`,
  sign: 'its sign differs from that of the readings before and after it',
  tenfold: (what: 'pressure' | 'flow', times: 'ten times' | 'a tenth of') =>
    what === 'pressure'
      ? `the pressure is about ${times} what fits the air flow`
      : `the air flow is about ${times} what fits the pressure`,
  error: 'a cell in the row shows an error',
  unstored:
    'a cell in the row holds a formula without a stored result; open the log in a spreadsheet program and save it',
  noDirection: (text: string) =>
    `${quoted(text)} in the column of directions is neither of the two directions`,
  noPressure: 'it has no pressure',
  noFlow: 'it has no flow',
  cellSays: (what: 'pressure' | 'flow', text: string) => `the ${what} cell says ${quoted(text)}`,
  rowSays: (text: string) => `the row says ${quoted(text)}`,
  columnSays: (heading: string, word: string, cell: string) =>
    `column ${quoted(heading)} says ${quoted(word)} in ${cell}`,
  columnEmpty: (heading: string, cell: string) =>
    `${cell} in column ${quoted(heading)} is empty, unlike most others`,
  commentSays: (cell: string, comment: string) => `the comment in ${cell} says ${quoted(comment)}`,
  bracketed: 'it is in brackets',
  grey: (look: Look) => `it is ${LOOKS[look]}`,
} as const

/** The same of several rows, as a sentence of its own begins. */
export const reasonsOf = (whys: readonly string[]): string => capital(whys.join('; '))

/** Why a column of a table was not used. */
export const columnReasons = {
  noZero: 'the log gives no zero-flow pressure for it, and the column without zero flow was used',
  zeroOfEach: 'each reading has its own zero-flow pressure, and the column without it was used',
  target: 'it is the intended pressure, not the measured one',
  otherDevicePressure: 'another device pressure was used',
  flowIsLogged: 'the air flow itself is logged',
  fanPressure: 'it is the pressure at the fan, and the air flow itself is logged',
  induced: 'the zero-flow pressure is already subtracted; the measured pressure was used',
  corrected: 'it is a corrected air flow; the flow as displayed was used',
  sampleOfMean: (cell: string) => `it is one of the samples averaged in ${cell}`,
  partOfTotal: (cell: string) => `it is part of the total in ${cell}`,
  sameFlow: 'it is the same air flow in another unit',
  samePressure: 'it is the same pressure in another unit',
  betterFlow: (cell: string) => `${cell} fits better as the air flow`,
  betterPressure: (cell: string) => `${cell} fits better as the building pressure`,
  derived: 'it is calculated from other columns',
  fanSpeed: 'it is a fan speed or a percentage',
  time: 'it is the time of the reading',
  number: 'it only numbers the readings',
  notNeeded: 'no result needs it',
  unpaired: 'the log does not show which reading it belongs to',
  unstored:
    'the file holds its formulas without results; if it is needed, open the log in a spreadsheet program and save it',
} as const

/** Why a single value of a log was not used. */
export const valueReasons = {
  noUnit: 'it has no unit, and no result needs it',
  seaLevel: 'it is for sea level, and the altitude is known',
  partOfArea: 'it is the area of a part of the building',
  notInternal: 'it is not the internal volume',
  otherVolume: (label: string) => `${quoted(label)} is more clearly the internal volume`,
  otherArea: (label: string, field: string) => `${quoted(label)} is more clearly the ${field}`,
} as const
