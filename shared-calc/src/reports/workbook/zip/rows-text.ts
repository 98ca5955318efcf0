import ExcelJS from 'exceljs'

/** A cell whose style and text exceljs has numbered. */
export interface PreparedCell {
  readonly address: string
  readonly type: number
  readonly styleId?: number
  /** Number of a text among the shared ones. */
  readonly ssId?: number
  readonly value?: unknown
  readonly formula?: string
  /** A formula of several values, and the cells it fills. */
  readonly shareType?: string
  readonly ref?: string
  readonly result?: unknown
}

export interface PreparedRow {
  readonly number: number
  /** First and last column that holds something. */
  readonly min?: number
  readonly max?: number
  readonly height?: number
  readonly hidden?: boolean
  readonly styleId?: number
  readonly outlineLevel?: number
  readonly collapsed?: boolean
  readonly cells: readonly PreparedCell[]
}

const { ValueType } = ExcelJS

/**
 * Element sheetData with its rows, byte for byte as exceljs writes it. Throws RangeError for contents that no sheet of ours has:
 * shared formulas and texts that are not shared.
 */
export function rowsText(rows: readonly PreparedRow[]): string {
  if (rows.length === 0) return '<sheetData/>'
  let text = '<sheetData>'
  for (const row of rows) {
    text += rowHead(row)
    let cells = ''
    for (const cell of row.cells) cells += cellText(cell)
    text += cells === '' ? '/>' : `>${cells}</row>`
  }
  return `${text}</sheetData>`
}

function rowHead({
  number,
  height,
  hidden,
  min,
  max,
  styleId,
  outlineLevel,
  collapsed,
}: PreparedRow): string {
  return `<row r="${number}"${height ? ` ht="${height}" customHeight="1"` : ''}${hidden ? ' hidden="1"' : ''}${
    min && max && min > 0 && min <= max ? ` spans="${min}:${max}"` : ''
  }${styleId ? ` s="${styleId}" customFormat="1"` : ''} x14ac:dyDescent="0.25"${
    outlineLevel ? ` outlineLevel="${outlineLevel}"` : ''
  }${collapsed ? ' collapsed="1"' : ''}`
}

function cellText(cell: PreparedCell): string {
  const { type, styleId, ssId, value } = cell
  if (type === ValueType.Null && !styleId) return ''
  const head = `<c r="${cell.address}"${styleId ? ` s="${styleId}"` : ''}`
  if (type === ValueType.Null || type === ValueType.Merge) return `${head}/>`
  if (type === ValueType.Number) return `${head}><v>${value}</v></c>`
  if (value instanceof Date) return `${head}><v>${serial(value)}</v></c>`
  if (type === ValueType.Boolean) return `${head} t="b"><v>${value ? 1 : 0}</v></c>`
  if (type === ValueType.Formula && cell.formula !== undefined) return formulaText(head, cell)
  if (isError(value)) return `${head} t="e"><v>${escaped(value.error)}</v></c>`
  if (ssId !== undefined) return `${head} t="s"><v>${ssId}</v></c>`
  throw new RangeError(`no sheet has a cell of type ${type}: ${cell.address}`)
}

function formulaText(head: string, { address, formula = '', shareType, ref, result }: PreparedCell): string {
  if (shareType !== undefined && shareType !== 'array')
    throw new RangeError(`no sheet has a formula of the kind ${shareType}: ${address}`)
  const text = `<f${shareType === 'array' ? ` t="array" ref="${ref}"` : ''}>${escaped(formula)}</f>`
  if (result === undefined || result === null) return `${head}>${text}</c>`
  if (typeof result === 'string') return `${head} t="str">${text}<v>${escaped(result)}</v></c>`
  if (typeof result === 'number') return `${head}>${text}<v>${result}</v></c>`
  if (result instanceof Date) return `${head}>${text}<v>${serial(result)}</v></c>`
  if (typeof result === 'boolean') return `${head} t="b">${text}<v>${result ? 1 : 0}</v></c>`
  if (isError(result)) return `${head} t="e">${text}<v>${escaped(result.error)}</v></c>`
  throw new RangeError(`no formula gives such a result: ${address}`)
}

const isError = (content: unknown): content is { readonly error: string } =>
  typeof content === 'object' && content !== null && 'error' in content

/** Days since the beginning of 1900 as spreadsheets count them: 1 January 1970 is day 25569. */
export const serial = (date: Date): number => 25569 + date.getTime() / (24 * 3600 * 1000)

const SPECIAL = /["&'<>]/
const ESCAPES: Readonly<Record<string, string>> = {
  '"': '&quot;',
  '&': '&amp;',
  "'": '&apos;',
  '<': '&lt;',
  '>': '&gt;',
}

/** As exceljs escapes; characters that XML cannot hold are gone by now (`holdTexts`). */
const escaped = (text: string): string =>
  SPECIAL.test(text) ? text.replace(/["&'<>]/g, (character) => ESCAPES[character] ?? character) : text
