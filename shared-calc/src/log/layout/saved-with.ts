import type { Grid } from '../grid/grid.js'
import { LogError, problem, refuse } from '../problem.js'
import { type Layout, type LayoutInput, parseLayout } from './schema.js'

/** Name of the sheet on which a workbook carries its own layout, as JSON in pieces down column A. */
export const LAYOUT_SHEET = 'Draughtbook layout'

/** A cell holds 32,767 characters; pieces stay below. */
const PIECE = 30_000

/** The layout saved with a workbook; undefined where there is none. @throws LogError `layout-invalid` naming the sheet */
export function savedLayout(grid: Grid): Layout | undefined {
  if (!grid.sheetNames.some((name) => name.toLowerCase() === LAYOUT_SHEET.toLowerCase())) return undefined
  const sheet = grid.sheet(LAYOUT_SHEET)
  const pieces = Array.from({ length: sheet?.rows ?? 0 }, (_, row) => String(sheet?.at(row, 0)?.value ?? ''))
  const place = { cell: `'${LAYOUT_SHEET}'!A1` }
  let input: unknown
  try {
    input = JSON.parse(pieces.join(''))
  } catch {
    return refuse('layout-invalid', 'the layout saved with the workbook is not JSON: save it again', place)
  }
  try {
    return parseLayout(input)
  } catch (error) {
    if (!(error instanceof LogError)) throw error
    throw new LogError(
      error.problems.map(({ code, message, path }) => problem(code, message, { path, ...place })),
    )
  }
}

/** A layout as the texts of column A of its sheet, for whoever writes it into a workbook. */
export function layoutPieces(layout: LayoutInput): string[] {
  const text = JSON.stringify(layout)
  return Array.from({ length: Math.ceil(text.length / PIECE) }, (_, index) =>
    text.slice(index * PIECE, (index + 1) * PIECE),
  )
}
