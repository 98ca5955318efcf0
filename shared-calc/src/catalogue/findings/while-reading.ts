import { practiceSource } from '../sources.js'
import { plain } from '../words.js'
import type { FindingTexts } from './finding-text.js'

/** While the building is still prepared, a reading is best repeated at once. */
export const repeatNow =
  'Repeat this reading now, while the building is still prepared. Look for the cause (gust, door, wrong range).'

/** What a run shows while its readings come in. */
export const whileReadingTexts = {
  'zero-flow-drift': {
    severity: 'note',
    source: practiceSource,
    message: ({ moved_Pa, share, limit }: { moved_Pa: number; share: number; limit: number }) =>
      `The zero-flow pressure has changed by ${plain(moved_Pa, 1)} Pa, which is ${plain(share * 100, 1)} % of the flow at the lowest reading (limit ${plain(limit * 100, 1)} %).`,
    remedy: 'Wait for steadier weather, then repeat the zero-flow pressure and the lowest readings.',
  },
} as const satisfies FindingTexts
