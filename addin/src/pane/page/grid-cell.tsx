// biome-ignore-all lint/a11y/useSemanticElements: an ARIA grid of which only the visible part is drawn cannot be a table
// biome-ignore-all lint/a11y/useFocusableInteractive: the grid itself has the focus and names its active cell
import { type Area, intersection, parseArea, splitReference } from '../../host/address.js'
import type { CellSheet } from '../../host/cell-sheet.js'
import type { CellMark } from '../../host/host.js'
import type { PageHost } from '../../host/page/page-host.js'
import { type PlacedUse, ROW_HEIGHT_PX, useOn, widthOf } from './grid-measures.js'

interface GridCellProps {
  host: PageHost
  sheet: CellSheet
  /** From 0. */
  row: number
  column: number
  /** Left edges of the columns. */
  starts: readonly number[]
  area: Area
  uses: readonly PlacedUse[]
}

/** One cell as the sheet shows it: over its whole block where it is merged, and over empty cells where its text is long. */
export function GridCell({ host, sheet, row, column, starts, area, uses }: GridCellProps) {
  const cell = sheet.at(row, column)
  const merge = sheet.mergeAt(row, column)
  const covered = merge !== undefined && (merge.top !== row || merge.left !== column)
  const block = covered ? undefined : merge
  const here = { top: row + 1, left: column + 1, bottom: row + 1, right: column + 1 }
  const selected = intersection(area, here) !== undefined
  const mark = markOn(host.marks, sheet.name, here)
  const use = useOn(uses, here)
  const first = use && use.area.top === here.top && use.area.left === here.left
  // A name over each of many cells, one below the other, would cover what they hold; the log names them beside.
  const alone = use && use.kind === 'detail' && use.area.top === use.area.bottom
  const tagged = first && (!alone || !cell || selected)
  const text = covered ? '' : host.textAt(sheet, row, column)
  const width = widthOf(starts, column)
  // Written for its own ground, a text could not be read beside it.
  const runsOn = cell?.kind === 'text' && !merge && !use && cell.fill === undefined
  const spill = runsOn ? spillWidth(sheet, row, column, starts, text) : 0
  const classes = [
    'cell',
    use ? `used ${use.kind}` : '',
    tagged ? 'tagged' : '',
    cell?.kind,
    selected ? 'selected' : '',
    mark ? `marked ${mark}` : '',
    cell?.struck ? 'struck' : '',
    cell?.faint ? `faint-${cell.faint}` : '',
    cell?.fill ? 'filled' : '',
    covered ? 'covered' : '',
    block ? 'merged' : '',
    spill > 0 ? 'spills' : '',
  ]
    .filter(Boolean)
    .join(' ')
  return (
    <span
      class={classes}
      role="gridcell"
      id={`cell-${row + 1}-${column + 1}`}
      aria-selected={selected}
      data-row={row + 1}
      data-column={column + 1}
      style={{
        ...(block ? overBlock(block, starts) : { width: `${width}px` }),
        ...(cell?.fill === undefined ? {} : fillStyle(cell.fill)),
      }}
      title={use?.words ?? (cell?.fill === undefined ? undefined : text)}
    >
      {tagged ? <span class="role-tag">{use.label}</span> : null}
      {spill > 0 ? (
        <span class="spill" style={{ width: `${width + spill - 10}px` }}>
          {text}
        </span>
      ) : (
        text
      )}
    </span>
  )
}

/** The cells beside and below stay where they are, under the block. */
function overBlock(
  { left, right, top, bottom }: { left: number; right: number; top: number; bottom: number },
  starts: readonly number[],
) {
  const whole = widthOf(starts, left, right)
  return {
    width: `${whole}px`,
    marginRight: `${widthOf(starts, left) - whole}px`,
    height: `${(bottom - top + 1) * ROW_HEIGHT_PX}px`,
  }
}

/** Wider than most letters are: a text that fits may run on, one that does not fit must not be cut. */
const LETTER_PX = 8
/** Empty cells that a text may run over. */
const MOST_COLUMNS = 8

/** Room beside the cell that its text takes, px; 0 where it fits, or where the cell beside it holds something. */
function spillWidth(
  sheet: CellSheet,
  row: number,
  column: number,
  starts: readonly number[],
  text: string,
): number {
  const lacking = text.length * LETTER_PX + 12 - widthOf(starts, column)
  let room = 0
  for (let next = column + 1; room < lacking && next <= column + MOST_COLUMNS; next += 1) {
    if (next >= starts.length - 1 || sheet.at(row, next) || sheet.mergeAt(row, next)) break
    room += widthOf(starts, next)
  }
  return room
}

function markOn(marks: readonly CellMark[], sheet: string, here: Area): CellMark['severity'] | undefined {
  for (const { reference, severity } of marks) {
    const { sheet: marked, address } = splitReference(reference)
    const area = marked === undefined || marked === sheet ? parseArea(address) : undefined
    if (area && intersection(area, here)) return severity
  }
  return undefined
}

/**
 * The ground of a cell in the log's own colour, and black or white upon it, whichever reads better. One of the two reaches a contrast
 * of 4.5 on any colour (WCAG 2.2, 1.4.3).
 * @param colour as `#rrggbb`
 */
function fillStyle(colour: string): Record<'--fill' | '--on-fill', string> {
  return { '--fill': colour, '--on-fill': luminance(colour) > EVEN ? '#000000' : '#ffffff' }
}

/** Where black and white contrast alike: (L + 0.05)² = 0.05 × 1.05. */
const EVEN = Math.sqrt(0.05 * 1.05) - 0.05

/** Relative luminance of a colour, 0 to 1. Source: WCAG 2.2, relative luminance. */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}
