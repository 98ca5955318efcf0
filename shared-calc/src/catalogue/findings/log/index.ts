import { cellTexts } from './cells.js'
import { fieldTexts } from './fields.js'
import { fileTexts } from './file.js'
import { runTexts } from './runs.js'
import { seriesTexts } from './series.js'
import { tableTexts } from './tables.js'

/** Every finding of the log reader, once. Readers take the one table they speak from. */
export const logCatalogue = {
  ...cellTexts,
  ...fieldTexts,
  ...fileTexts,
  ...runTexts,
  ...seriesTexts,
  ...tableTexts,
} as const

export type LogFindingId = keyof typeof logCatalogue
