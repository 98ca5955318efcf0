import type { Grid, Sheet } from '../../log/grid/grid.js'

/** What a workbook on a building of several homes shows; as it stands there, for nothing in it can be recalculated. */
export interface BuildingLine {
  readonly name: string
  readonly target: string
  /** How the homes were put together. */
  readonly judged: string
  readonly tests: string
  readonly verdict: string
  /** Absent where each home is judged by itself. */
  readonly value?: number
  readonly margin?: number
  readonly probability?: number
}

const SHEET = 'Building'
/** Columns of the ways to put the homes together: judged value, margin, probability. */
const WAY = { value: 5, margin: 6, probability: 7 } as const
const FACTS = 2
const VERDICT = 7

/** The line of a building's workbook; undefined for any other. */
export function buildingLine(grid: Grid): BuildingLine | undefined {
  const sheet = grid.sheetNames.includes(SHEET) ? grid.sheet(SHEET) : undefined
  if (!sheet || !grid.sheetNames.includes('Homes')) return undefined
  const fact = (i: number) => String(sheet.at(FACTS + i, 1)?.value ?? '')
  const row = judgedRow(sheet)
  const number = (key: keyof typeof WAY) => {
    const value = row === undefined ? undefined : sheet.at(row, WAY[key])?.value
    return typeof value === 'number' ? { [key]: value } : {}
  }
  return {
    name: fact(0),
    target: fact(1),
    judged: fact(2),
    tests: fact(3),
    verdict: String(sheet.at(VERDICT, 0)?.value ?? '').toLowerCase(),
    ...number('value'),
    ...number('margin'),
    ...number('probability'),
  }
}

/** Workbooks written before 1.4.0 mark the way with "(judged)". */
function judgedRow(sheet: Sheet): number | undefined {
  for (let row = 0; row < sheet.rows; row += 1)
    if (/\((?:judged|used for the verdict)\)$/.test(String(sheet.at(row, 0)?.value ?? ''))) return row
  return undefined
}
