import { dayInWords, quoted } from '../../words.js'
import type { RemarkTexts } from '../finding-text.js'
import { saying } from '../remark.js'

type Hidden = 'sheet' | 'row' | 'column' | 'row or column'

/** What a single cell of a log needed before its value could be used. */
export const cellTexts = {
  'log-formula': { severity: 'note', message: 'The cell holds a formula. Its stored result was read.' },
  'log-formula/reference': {
    severity: 'note',
    message: ({ cell }: { cell: string }) =>
      `The cell only refers to ${cell}, and the file does not hold its result. The value in ${cell} was read.`,
  },
  'log-struck-through/part': {
    severity: 'caution',
    message: ({ rest }: { rest: string }) =>
      `Part of the cell is struck through. Only ${quoted(rest)} was read.`,
    remedy: 'Check that this is the value that counts.',
  },
  'log-struck-through/replaced': {
    severity: 'caution',
    message: ({ struck, value }: { struck: string; value: number }) =>
      `Cell ${struck} is struck through. The number ${value} beside it was read instead.`,
    remedy: 'Check that this number replaces it.',
  },
  'log-struck-through': {
    severity: 'caution',
    message: ({ what }: { what: 'cell' | 'reading' | 'zero-flow pressure' | 'sample' }) =>
      what === 'sample'
        ? 'The cell is struck through, so its sample was left out.'
        : `The ${what} is struck through, so it was left out.`,
    remedy: 'If it counts, remove the strike-through.',
  },
  'log-blank': {
    severity: 'note',
    message: ({ what }: { what: 'cell' | 'row' }) => `The ${what} is blank, so nothing was read.`,
  },
  'log-blank/sample': {
    severity: 'caution',
    message: 'The cell is blank, so its sample was left out.',
    remedy: 'If the sample was taken, enter its value.',
  },
  'log-left-out/sample': {
    severity: 'caution',
    message: ({ why }: { why: string }) =>
      `The sample was left out, because the cell cannot be read: ${why}.`,
    remedy: 'If the sample counts, correct the cell.',
  },
  'log-hidden': {
    severity: 'caution',
    message: ({ what, hidden }: { what: 'cell' | 'reading'; hidden: Hidden }) =>
      `The ${what} is ${hidden === 'sheet' ? 'on' : 'in'} a hidden ${hidden}, but it was read.`,
    remedy: 'Unhide it and check it. If it does not count, strike it through.',
  },
  'log-hidden/by-layout': {
    severity: 'caution',
    message: 'The row is hidden. Its reading was left out, because the layout says so.',
    remedy: 'If it counts, unhide it.',
  },
  'log-hidden/left-out': {
    severity: 'caution',
    message: 'Hidden or filtered rows were left out.',
    remedy: 'If they count, unhide them.',
  },
  'log-merged': {
    severity: 'note',
    message: 'The cell is part of a merged cell. The value of the merged cell was read.',
  },
  'log-remark': {
    severity: 'caution',
    message: ({ remark }: { remark: string }) =>
      `The remark ${quoted(remark)} next to the number was left out. The number was read.`,
    remedy: 'Check that the number counts.',
  },
  'log-remark/beside': {
    severity: 'note',
    message: ({ remark }: { remark: string }) => `There is a remark next to the value: ${quoted(remark)}.`,
  },
  'log-remark/approximate': {
    severity: 'caution',
    message: 'The number is marked as approximate. It was read.',
    remedy: 'Check the number.',
  },
  'log-unit': {
    severity: 'note',
    message: ({ unit, conversion }: { unit: string; conversion: string }) =>
      `The value in ${unit} was converted (${conversion}).`,
  },
  'log-unit/clock': {
    severity: 'note',
    message: 'The cell is formatted as a time. It was converted to seconds.',
  },
  'log-unit-in-cell': {
    severity: 'note',
    message: ({ unit }: { unit: string }) =>
      `The value states its own unit, ${unit}, and this unit was used.`,
  },
  'log-unit-in-format': {
    severity: 'caution',
    message: ({ unit, expected }: { unit: string; expected: string }) =>
      `The cell's number format shows ${unit}, but ${expected} is expected. The number was read in ${unit}.`,
    remedy: 'Check the unit.',
  },
  'log-unit-assumed/time': { severity: 'note', message: 'No unit of time is stated. Seconds are assumed.' },
  'log-unit-differs': {
    severity: 'caution',
    message: ({ heading, stated }: { heading: string; stated: string }) =>
      `The heading says ${heading}, but ${stated} is stated for these cells. They were read in ${stated}.`,
    remedy: 'Check the unit.',
  },
  'log-unit-elsewhere/building': {
    severity: 'note',
    message: ({ unit }: { unit: string }) =>
      `No unit is stated for these pressures. They were read in ${unit}, like the pressures across the building.`,
  },
  'log-text-number': {
    severity: 'note',
    message: ({ comma, grouped }: { comma: boolean; grouped: boolean }) => {
      const how = [comma ? 'a decimal comma' : '', grouped ? 'grouped digits' : ''].filter(Boolean)
      return `The number is stored as text${how.length > 0 ? ` with ${how.join(' and ')}` : ''}. It was read as a number.`
    },
  },
  'log-number-as-text': {
    severity: 'note',
    message: ({ kind, format, read }: { kind: string; format: string | undefined; read: string }) =>
      `Text is expected, but the cell holds ${kind === 'boolean' ? 'TRUE or FALSE' : 'a number'}${format ? ` with the number format ${format}` : ''}. It was read as ${quoted(read)}.`,
  },
  'log-serial-date': {
    severity: 'caution',
    message: ({ date }: { date: string }) =>
      `The cell is not formatted as a date. Its number was read as ${dayInWords(date)}.`,
    remedy: 'Check the date.',
  },
  'log-date-1904': {
    severity: 'note',
    message: 'The workbook counts days from 1904, and its dates were read that way.',
  },
  'log-text-date': {
    severity: 'note',
    message: ({ date }: { date: string }) =>
      `The date is stored as text. It was read as ${dayInWords(date)}.`,
  },
  'log-day-first': {
    severity: 'caution',
    message: ({ date }: { date: string }) =>
      `The date was read with the day first, as usual in the language of the log: ${dayInWords(date)}.`,
    remedy: 'Check the date.',
  },
  'log-short-year': {
    severity: 'caution',
    message: ({ year }: { year: string }) => `The year has two digits. It was read as ${year}.`,
    remedy: 'Check the year.',
  },
  'log-word': {
    severity: 'note',
    message: ({ word, read }: { word: string; read: string }) =>
      `${quoted(word)} was read as ${quoted(read)}.`,
  },
} as const satisfies RemarkTexts

export const cellText = saying(cellTexts)
