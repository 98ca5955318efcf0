import { counted, listed, quoted } from '../../words.js'
import type { RemarkTexts } from '../finding-text.js'
import { saying } from '../remark.js'

const byCommand = (test: string): string => `On the command line: --set test=${JSON.stringify(test)}.`
const atTheStart = 'Move the data of the test to the start of the sheet, or to a file of its own.'

/** What was found out about a log as a whole: its text, its sheets, its layout. */
export const fileTexts = {
  'log-macros': { severity: 'note', message: 'The file contains macros. They were not read or run.' },
  'log-encoding': {
    severity: 'note',
    message: 'The file is not UTF-8. It was read as Windows-1252.',
    remedy: 'Check the accented letters.',
  },
  'log-decimal': {
    severity: 'note',
    message: ({ sign, cell }: { sign: 'point' | 'comma'; cell: string }) =>
      `Numbers are read with a decimal ${sign}, because cell ${cell} can only be read that way.`,
  },
  'log-decimal/mixed': {
    severity: 'caution',
    message: ({ point, comma }: { point: string; comma: string }) =>
      `The log has numbers with a decimal point, as in ${point}, and numbers with a decimal comma, as in ${comma}. Each was read with its own decimal sign.`,
    remedy: 'Check that no number is ten or a thousand times too large.',
  },
  'log-date-system': {
    severity: 'note',
    message: 'No date in the workbook shows a four-digit year, so days are counted from 1900.',
    remedy: 'Check the date of the test, or format it with a four-digit year.',
  },
  'log-merged-unread': {
    severity: 'note',
    message: ({ sheets }: { sheets: readonly string[] }) =>
      sheets.length === 0
        ? 'This version of Excel does not report which cells are merged.'
        : `Excel did not report the merged cells of ${listed(sheets.map(quoted))}: it reports at most 512 on a sheet.`,
    remedy: 'Where a value is in merged cells, pick their top-left cell.',
  },
  'log-layout': {
    severity: 'note',
    message: ({
      name,
      why,
      sheets,
    }: {
      name: string
      why: 'given' | 'saved' | 'fits' | 'answers'
      sheets: readonly string[]
    }) => {
      const how = {
        given: `The log was read with the layout "${name}".`,
        saved: `The log was read with the layout "${name}", which is saved in the workbook.`,
        fits: `The log was read with the layout "${name}", because its headings match.`,
        answers: `The log was read with the answers saved in the layout "${name}".`,
      }[why]
      return sheets.length === 0
        ? how
        : `${how} Values were read from ${sheets.length === 1 ? 'sheet' : 'the sheets'} ${listed(sheets.map(quoted))}.`
    },
  },
  'record-altered': {
    severity: 'caution',
    message:
      'The record on sheet Record was changed after the workbook was written: it does not match its digest.',
    remedy: 'Find out what was changed, or use the workbook as issued.',
  },
  'log-samples-of-mean': {
    severity: 'note',
    message: ({ heading }: { heading: string }) =>
      `The readings are those below ${quoted(heading)}. The single samples beside them, which they are the mean of, were not read.`,
  },
  'log-mean-of-runs': {
    severity: 'note',
    message: 'These readings were left out: their flows are the mean of two other runs.',
  },
  'log-former-values': {
    severity: 'note',
    message: ({ heading }: { heading: string }) =>
      `The values below ${quoted(heading)} were left out: they are not of this test.`,
  },
  'log-unread-values': {
    severity: 'note',
    message: ({ labels, more }: { labels: readonly string[]; more: number }) =>
      `These values were not used: ${listed(labels.map(quoted))}${more > 0 ? `, and ${counted(more, 'other')}` : ''}.`,
    remedy: 'Check that none of them belongs to the test.',
  },
  'log-unread-values/hidden': {
    severity: 'note',
    message: 'Numbers in hidden rows or columns were not used.',
    remedy: 'If they belong to the test, unhide them.',
  },
  'log-unstored': {
    severity: 'caution',
    message: ({ cells }: { cells: readonly string[] }) =>
      `Formulas without stored results could not be read: ${listed(cells)}.`,
    remedy: 'Open the log in a spreadsheet program, save it, and read it again.',
  },
  'log-proposal': {
    severity: 'caution',
    message: 'No layout fits this log. It was read from its own headings and has not been checked yet.',
    remedy: 'Check what each cell was used as, then save the layout.',
  },
  'log-hidden-test': {
    severity: 'caution',
    message: ({ names }: { names: readonly string[] }) =>
      `Hidden or filtered tests were left out: ${listed(names.map(quoted))}.`,
    remedy: ({ names }: { names: readonly string[] }) =>
      `To read ${names.length === 1 ? 'it' : 'one of them'}, name the test. ${byCommand(names[0] ?? '')}`,
  },
  'log-refused-test': {
    severity: 'caution',
    message: ({ name, title }: { name: string; title: string }) =>
      `Test ${quoted(name)} was left out, because ${quoted(title)} is written above its readings.`,
    remedy: ({ name }: { name: string; title: string }) => `To read it, name the test. ${byCommand(name)}`,
  },
  'log-refused-test/read': {
    severity: 'caution',
    message: ({ title }: { title: string }) =>
      `${quoted(title)} is written above the readings. They were read anyway.`,
    remedy: 'Check whether this test counts.',
  },
  'log-copy': {
    severity: 'note',
    message: ({ copy, original }: { copy: string; original: string }) =>
      `Columns ${original} and ${copy} hold the same readings. They were read once.`,
  },
  'log-copy/corrected': {
    severity: 'note',
    message: ({ copy, original }: { copy: string; original: string }) =>
      `The readings in column ${copy} are those in column ${original} after correction. The readings as measured, in column ${original}, were used.`,
  },
  'log-other-tests': {
    severity: 'note',
    message: ({ names }: { names: readonly string[] }) =>
      `The log also holds ${names.length === 1 ? 'this test' : 'these tests'}: ${listed(names.map(quoted))}.`,
  },
  'log-direction-again': {
    severity: 'caution',
    message: ({ direction }: { direction: string }) =>
      `The log has two ${direction} runs. They were read as the runs of two tests.`,
    remedy: 'If one run repeats the other, choose the test that counts.',
  },
  'log-one-of-several': {
    severity: 'note',
    message: ({ tests, own }: { tests: readonly string[]; own: string }) =>
      `The log holds ${counted(tests.length, 'test')}: ${listed(tests)}. This is ${own}.`,
    remedy: ({ own }: { own: string }) => `To read this test alone, name it. ${byCommand(own)}`,
  },
  'log-not-searched/end': {
    severity: 'caution',
    message: ({ sheet, what, last }: { sheet: string; what: string; last: string }) =>
      `Sheet ${quoted(sheet)} is too long to search completely. It was searched for ${what} only as far as ${last}.`,
    remedy: atTheStart,
  },
  'log-not-searched/beyond': {
    severity: 'caution',
    message: ({
      sheet,
      count,
      most,
      what,
    }: {
      sheet: string
      count: number
      most: number
      what: 'rows' | 'columns'
    }) => `Sheet ${quoted(sheet)} has ${count} ${what}. Only the first ${most} were searched.`,
    remedy: atTheStart,
  },
  'log-not-searched/sheets': {
    severity: 'caution',
    message: ({ first, count }: { first: string; count: number }) =>
      count === 1
        ? `The log has too many sheets. Sheet ${quoted(first)} was not searched.`
        : `The log has too many sheets. Sheet ${quoted(first)} and the ${count - 1} after it were not searched.`,
    remedy: atTheStart,
  },
} as const satisfies RemarkTexts

export const fileText = saying(fileTexts)
