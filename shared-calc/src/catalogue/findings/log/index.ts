import { cellTexts } from './cells.js'
import { fileTexts } from './file.js'
import { seriesTexts } from './series.js'
import { tableTexts } from './tables.js'

/** Every finding of the log reader, once. Readers take the one table they speak from. */
export const logCatalogue = { ...cellTexts, ...fileTexts, ...seriesTexts, ...tableTexts } as const

export type LogFindingId = keyof typeof logCatalogue
