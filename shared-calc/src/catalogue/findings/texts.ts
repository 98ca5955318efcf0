import { practiceSource } from '../sources.js'
import type { FindingTexts } from './finding-text.js'

/** What is odd about the texts of a record. */
export const textTexts = {
  'text-characters': {
    severity: 'note',
    source: practiceSource,
    message:
      'A text holds control characters or other characters that a workbook cannot hold. The workbook shows � for each.',
    remedy: 'Type the text again.',
  },
} as const satisfies FindingTexts
