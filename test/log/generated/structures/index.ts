import type { Structure } from '../recipe.js'
import { blocks } from './blocks.js'
import { gaugeText } from './exports.js'
import { readingRows, testRows } from './rows.js'
import { series } from './series.js'
import { sheetPerDirection } from './sheets.js'
import { across, oneTable, pairs } from './single-table.js'
import type { Layer } from './structure.js'

export type { KnownTest } from './structure.js'

export const STRUCTURES: Record<Structure, Layer> = {
  beside: blocks,
  below: blocks,
  sheets: sheetPerDirection,
  'test rows': testRows,
  'reading rows': readingRows,
  across,
  'one table': oneTable,
  pairs,
  'gauge text': gaugeText,
  series,
}
