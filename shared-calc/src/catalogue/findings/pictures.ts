import { practiceSource } from '../sources.js'
import type { FindingTexts } from './finding-text.js'

/** Photos and the firm's logo that a workbook could not take in. */
export const pictureTexts = {
  'photo-missing': {
    severity: 'note',
    source: practiceSource,
    message: ({ name }: { name: string }) => `Photo "${name}" was not found among the photos given.`,
    remedy: 'Add the photo, or correct its file name in the list of leaks.',
  },
  'photo-left-out': {
    severity: 'note',
    source: practiceSource,
    message: ({ name, why }: { name: string; why: string }) => `Photo "${name}" was left out: ${why}.`,
    remedy: 'Use fewer or smaller photos, as JPEG or PNG.',
  },
  'photo-left-out/too-many': {
    severity: 'note',
    source: practiceSource,
    message: ({ names, most }: { names: readonly string[]; most: number }) =>
      `A workbook holds at most ${most} photos. ${names.length === 1 ? '1 was' : `${names.length} were`} left out: ${names.slice(0, 10).join(', ')}${names.length > 10 ? ' and others' : ''}.`,
    remedy: 'Keep only the photos you need in the folder.',
  },
  'photo-logo': {
    severity: 'note',
    source: practiceSource,
    message: ({ why }: { why: string }) => `The firm's logo was left out: ${why}.`,
    remedy: 'Use a JPEG or PNG of at most 512 kB.',
  },
} as const satisfies FindingTexts
