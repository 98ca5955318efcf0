import { capital, quoted } from '../../words.js'
import type { RemarkTexts } from '../finding-text.js'
import { saying } from '../remark.js'

/** What a layout skips, takes from itself or reads another way in a table of readings. */
export const tableTexts = {
  'log-row-skipped': { severity: 'note', message: 'The layout skips this row.' },
  'log-row-skipped/marked': {
    severity: 'note',
    message: ({ mark }: { mark: string }) =>
      `Rows marked ${quoted(mark)} are not readings, so they were left out.`,
  },
  'log-gap': {
    severity: 'caution',
    message: 'There are numbers below the blank row that ends the readings. They were not read.',
    remedy: 'Delete the blank row, or name the range of the readings in the layout.',
  },
  'log-summary-row': {
    severity: 'note',
    message: ({ mark }: { mark: string }) => `The readings end above the row marked ${quoted(mark)}.`,
  },
  'log-heading': {
    severity: 'note',
    message: ({ heading }: { heading: string }) => `${quoted(heading)} was taken as a heading and left out.`,
  },
  'log-error-value': {
    severity: 'caution',
    message: ({ shown, what }: { shown: string; what: 'reading' | 'zero-flow pressure' }) =>
      `The cell shows ${quoted(shown)} instead of a number, so the ${what} was left out.`,
    remedy: 'Correct the formula, then read the log again.',
  },
  'log-placeholder': {
    severity: 'caution',
    message: ({ shown, what }: { shown: string; what: 'reading' | 'zero-flow pressure' }) =>
      `The cell shows ${quoted(shown)} instead of a number, so the ${what} was left out.`,
    remedy: 'If it was measured, enter the number.',
  },
  'log-incomplete': {
    severity: 'caution',
    message: 'The reading has no pressure or no flow, so it was left out.',
    remedy: 'Enter the missing number, or strike the reading through.',
  },
  'log-carried': {
    severity: 'note',
    message: ({ direction }: { direction: string }) =>
      `The cell is blank, so the direction above it was used: ${direction}.`,
  },
  'log-constant': {
    severity: 'note',
    message: ({ field, value }: { field: string; value: string }) =>
      `${capital(field)}: ${quoted(value)} comes from the layout, not from the log.`,
  },
  'log-sign': {
    severity: 'note',
    message: 'The pressures are logged as outside minus inside, so their sign was changed.',
  },
  'log-sign/direction': {
    severity: 'caution',
    message:
      'The pressures of pressurisation are negative. They were read as outside minus inside, so their sign was changed.',
    remedy: 'Check which direction this run was.',
  },
  'log-sign/minus-added': {
    severity: 'note',
    message: 'Depressurisation is logged without a minus sign. The minus sign was added.',
  },
  'log-blank-run': {
    severity: 'note',
    message: ({ direction }: { direction: string | undefined }) =>
      direction === undefined
        ? 'The log has room for a second direction, but nothing was entered for it.'
        : `The log has room for ${direction}, but nothing was entered for it.`,
  },
} as const satisfies RemarkTexts

export const tableText = saying(tableTexts)
