// biome-ignore-all lint/a11y/useSemanticElements: an ARIA grid of which only the visible part is drawn cannot be a table
// biome-ignore-all lint/a11y/useFocusableInteractive: the grid itself has the focus and names its active cell
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { type Area, areaAddress, columnLetters, LAST_ROW } from '../../host/address.js'
import type { CellSheet } from '../../host/cell-sheet.js'
import type { PageHost } from '../../host/page/page-host.js'
import { GridCell } from './grid-cell.js'
import { areaOf, type Cursor, moved } from './grid-keys.js'
import {
  HEAD_WIDTH_PX,
  type Measures,
  measure,
  ROW_HEIGHT_PX,
  usesOn,
  visible,
  widthOf,
} from './grid-measures.js'

interface SheetGridProps {
  host: PageHost
  sheet: CellSheet
  area: Area
}

/** A sheet, of which only the rows and columns in view are drawn: 5,000 rows cost no more than 50. */
export function SheetGrid({ host, sheet, area }: SheetGridProps) {
  const room = useRef<HTMLDivElement>(null)
  const dragging = useRef(false)
  const [view, setView] = useState({ top: 0, left: 0, height: 400, width: 600 })
  // Not drawing state: keys may follow each other faster than drawings.
  const cursor = useRef<Cursor>(cursorOn(area))
  const measures = useMemo(
    () => measure(sheet, (row, column) => host.textAt(sheet, row, column)),
    [sheet, sheet.rows, sheet.columns, host],
  )
  const { rows, columns, starts } = measures

  useEffect(() => {
    // Only a selection made elsewhere moves the cursor; the host's own is newer than what was drawn.
    const now = host.selected?.area
    if (now && areaAddress(now) !== areaAddress(areaOf(cursor.current))) cursor.current = cursorOn(now)
    scrollTo(room.current, area, measures)
  }, [area])
  useEffect(() => {
    const element = room.current
    if (!element) return
    const look = (): void =>
      setView({
        top: element.scrollTop,
        left: element.scrollLeft,
        height: element.clientHeight,
        width: element.clientWidth,
      })
    const observer = new ResizeObserver(look)
    observer.observe(element)
    return () => observer.disconnect()
  }, [])

  const go = (next: Cursor): void => {
    cursor.current = next
    host.select(sheet.name, areaOf(next))
  }
  const content = (): HTMLInputElement | null | undefined =>
    room.current?.closest('.page-grid')?.querySelector<HTMLInputElement>('.cell-bar .content')
  const onKeyDown = (event: KeyboardEvent): void => {
    const next = moved(cursor.current, event.key, event.shiftKey, { rows, columns })
    if (next) go(next)
    else if (event.key === 'Delete')
      void host.type(sheet.name, cursor.current.anchor.row, cursor.current.anchor.column, '')
    else if (event.key === 'Enter' || event.key === 'F2') content()?.select()
    else if (event.key.length === 1 && !event.ctrlKey && !event.metaKey && !event.altKey) {
      // The letter itself is typed into what has the focus by then, in place of what the cell held.
      content()?.select()
      return
    } else return
    event.preventDefault()
  }
  const placeOf = (event: Event): { row: number; column: number } | undefined => {
    const cell = event.target instanceof Element ? event.target.closest<HTMLElement>('[data-row]') : null
    if (!cell) return undefined
    return { row: Number(cell.dataset.row), column: Number(cell.dataset.column) }
  }
  const onPointerDown = (event: PointerEvent): void => {
    const place = placeOf(event)
    if (!place) return
    if (place.row === 0) go(wholeColumn(place.column))
    else if (place.column === 0)
      go({ anchor: { row: place.row, column: 1 }, head: { row: place.row, column: columns } })
    else {
      dragging.current = true
      go(event.shiftKey ? { anchor: cursor.current.anchor, head: place } : { anchor: place, head: place })
    }
  }
  const onPointerOver = (event: PointerEvent): void => {
    const place = dragging.current ? placeOf(event) : undefined
    if (place && place.row > 0 && place.column > 0) go({ anchor: cursor.current.anchor, head: place })
  }

  const rowEdges = useMemo(() => Array.from({ length: rows + 1 }, (_, row) => row * ROW_HEIGHT_PX), [rows])
  const [firstRow, lastRow] = visible(rowEdges, view.top, view.top + view.height)
  const [firstColumn, lastColumn] = visible(starts, view.left, view.left + view.width)
  const shown = range(firstColumn, lastColumn)
  const { row: activeRow, column: activeColumn } = cursor.current.head
  const isDrawn =
    activeRow > firstRow &&
    activeRow <= lastRow + 1 &&
    activeColumn > firstColumn &&
    activeColumn <= lastColumn + 1
  const uses = useMemo(() => usesOn(host.uses, sheet.name), [host.uses, sheet])
  return (
    <div
      class="sheet"
      ref={room}
      role="grid"
      tabIndex={0}
      aria-label={`Sheet ${sheet.name}`}
      aria-rowcount={rows}
      aria-colcount={columns}
      aria-multiselectable="true"
      // Scrolled out of view, the active cell is not there to be named.
      aria-activedescendant={isDrawn ? `cell-${activeRow}-${activeColumn}` : undefined}
      onScroll={(event) => {
        const { scrollTop, scrollLeft, clientHeight, clientWidth } = event.currentTarget
        setView({ top: scrollTop, left: scrollLeft, height: clientHeight, width: clientWidth })
      }}
      onKeyDown={onKeyDown}
      onPointerDown={onPointerDown}
      onDblClick={() => content()?.focus()}
      onPointerOver={onPointerOver}
      onPointerUp={() => {
        dragging.current = false
      }}
      onPointerLeave={() => {
        dragging.current = false
      }}
    >
      <div
        class="sheet-room"
        role="presentation"
        style={{
          height: `${(rows + 1) * ROW_HEIGHT_PX}px`,
          width: `${HEAD_WIDTH_PX + (starts.at(-1) ?? 0)}px`,
        }}
      >
        <div
          class="row heads"
          role="row"
          aria-rowindex={1}
          style={{ paddingLeft: `${starts[firstColumn] ?? 0}px` }}
        >
          <span class="head corner" role="columnheader">
            <span class="unseen">row</span>
          </span>
          {shown.map((column) => (
            <span
              class="head"
              role="columnheader"
              key={column}
              data-row="0"
              data-column={column + 1}
              style={{ width: `${widthOf(starts, column)}px` }}
            >
              {columnLetters(column + 1)}
            </span>
          ))}
        </div>
        {range(firstRow, lastRow).map((row) => (
          <div
            class={`row${sheet.isRowHidden(row) ? ' hidden-row' : ''}`}
            role="row"
            key={row}
            aria-rowindex={row + 2}
            style={{ top: `${(row + 1) * ROW_HEIGHT_PX}px`, paddingLeft: `${starts[firstColumn] ?? 0}px` }}
          >
            <span class="head" role="rowheader" data-row={row + 1} data-column="0">
              {row + 1}
            </span>
            {shown.map((column) => (
              <GridCell
                key={column}
                host={host}
                sheet={sheet}
                row={row}
                column={column}
                starts={starts}
                area={area}
                uses={uses}
              />
            ))}
          </div>
        ))}
      </div>
    </div>
  )
}

const wholeColumn = (column: number): Cursor => ({
  anchor: { row: 1, column },
  head: { row: LAST_ROW, column },
})
const cursorOn = (area: Area): Cursor => ({
  anchor: { row: area.top, column: area.left },
  head: { row: area.bottom, column: area.right },
})
const range = (first: number, last: number): number[] =>
  Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => first + index)

function scrollTo(room: HTMLElement | null, area: Area, { starts }: Measures): void {
  if (!room) return
  const top = (area.top - 1) * ROW_HEIGHT_PX
  const left = starts[area.left - 1] ?? 0
  if (top < room.scrollTop || top > room.scrollTop + room.clientHeight - 3 * ROW_HEIGHT_PX)
    room.scrollTop = Math.max(0, top - 3 * ROW_HEIGHT_PX)
  if (left < room.scrollLeft || left > room.scrollLeft + room.clientWidth - 2 * HEAD_WIDTH_PX)
    room.scrollLeft = left
}
