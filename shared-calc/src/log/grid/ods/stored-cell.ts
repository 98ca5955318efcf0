import type { Attributes } from '../../container/xml.js'
import { refuse } from '../../problem.js'
import type { Cell } from '../grid.js'
import type { CellText } from './cell-text.js'
import { formulaText } from './formula-text.js'
import { serialDay, shareOfDay } from './moments.js'
import type { CellStyle } from './styles.js'

/** Formats of days and times whose cell shows none that says so. */
const DAY_FORMAT = 'yyyy-mm-dd'
const TIME_FORMAT = '[h]:mm:ss'
const PERCENT_FORMAT = '0%'

/** The cell an element makes (OpenDocument 1.3 part 3, 9.1.4 and 19.385); undefined when it holds nothing. */
export function cellOf(
  attributes: Attributes,
  { text, pieces }: ReturnType<CellText['take']>,
  style: CellStyle,
  address: () => string,
): Cell | undefined {
  const type = attributes['office:value-type']
  const written = attributes['table:formula']
  const formula = written === undefined ? {} : { formula: formulaText(written) }
  const struck = style.struck ? { struck: 'whole' as const } : {}
  const faint = style.faint ? { faint: style.faint } : {}
  const fill = style.fill === undefined ? {} : { fill: style.fill }
  const format = style.format === undefined ? {} : { format: style.format }
  const number = (value: number | undefined, said: string | undefined, fallback?: string): Cell => {
    if (value === undefined || !Number.isFinite(value))
      return refuse(
        'damaged-file',
        `the stored value ${JSON.stringify((said ?? '').slice(0, 30))} cannot be read`,
        {
          cell: address(),
        },
      )
    const shown = fallback === undefined ? format : { format: style.format ?? fallback }
    return { kind: 'number', value, ...shown, ...formula, ...struck, ...faint, ...fill }
  }
  // Other writers mark an error by nothing but its text; an empty or zero value beside it is not a result.
  if (attributes['calcext:value-type'] === 'error' || (written !== undefined && ERROR.test(text)))
    return { kind: 'error', value: text, ...formula, ...struck, ...fill }
  if (type === 'float' || type === 'currency') {
    const said = attributes['office:value']
    return number(plainNumber(said), said)
  }
  if (type === 'percentage') {
    const said = attributes['office:value']
    return number(plainNumber(said), said, PERCENT_FORMAT)
  }
  if (type === 'date')
    return number(serialDay(attributes['office:date-value']), attributes['office:date-value'], DAY_FORMAT)
  if (type === 'time')
    return number(shareOfDay(attributes['office:time-value']), attributes['office:time-value'], TIME_FORMAT)
  if (type === 'boolean')
    return {
      kind: 'boolean',
      value: attributes['office:boolean-value'] === 'true',
      ...formula,
      ...struck,
      ...fill,
    }
  const value = text === '' ? (attributes['office:string-value'] ?? '') : text
  if (type === undefined && written !== undefined && value === '')
    return { kind: 'unstored', value: '', ...formula, ...struck, ...fill }
  if (value === '' && written === undefined) return undefined
  return { kind: 'text', value, ...format, ...formula, ...faint, ...fill, ...struckText(pieces, style) }
}

const ERROR = /^(#[A-Z/0-9]+[!?]?|Err:\d+)$/

function plainNumber(said: string | undefined): number | undefined {
  return said === undefined || said.trim() === '' ? undefined : Number(said)
}

function struckText(
  pieces: ReturnType<CellText['take']>['pieces'],
  style: CellStyle,
): Pick<Cell, 'struck' | 'unstruck'> {
  const left = pieces.filter(({ struck }) => !(struck ?? style.struck))
  if (left.length === pieces.length) return pieces.length === 0 && style.struck ? { struck: 'whole' } : {}
  const unstruck = left.map(({ text }) => text).join('')
  return unstruck.trim() === '' ? { struck: 'whole' } : { struck: 'part', unstruck }
}
