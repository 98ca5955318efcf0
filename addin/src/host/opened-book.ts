import type { Block, Cell, DefinedName, Finding } from '@draughtbook/shared-calc/log'

/** A sheet as plain data, as the worker hands it over, places counted from 0. */
export interface OpenedSheet {
  name: string
  hidden: boolean
  cells: [row: number, column: number, cell: Cell][]
  hiddenRows: number[]
  hiddenColumns: number[]
  merges: Block[]
}

/** A workbook as the worker hands it over. */
export interface OpenedBook {
  fileName: string
  /** Day the file was last changed, YYYY-MM-DD. */
  fileDate?: string
  kind: 'workbook' | 'text' | 'ranges'
  sheets: OpenedSheet[]
  names: DefinedName[]
  date1904: boolean
  decimal?: '.' | ','
  findings: Finding[]
}
