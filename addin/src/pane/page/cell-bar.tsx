import { useLayoutEffect, useState } from 'preact/hooks'
import { type Area, areaAddress, joinReference, LAST_ROW, parseArea } from '../../host/address.js'
import type { CellSheet } from '../../host/cell-sheet.js'
import type { PageHost } from '../../host/page/page-host.js'

interface CellBarProps {
  host: PageHost
  sheet: CellSheet
  area: Area
}

/** The selection's address, to read or to type, and what its first cell holds, to read in full or to correct. */
export function CellBar({ host, sheet, area }: CellBarProps) {
  const cell = sheet.at(area.top - 1, area.left - 1)
  const held = cell ? String(cell.value) : ''
  const address = areaAddress(area)
  const place = `${sheet.name}!${address}`
  const [text, setText] = useState(held)
  const [typed, setTyped] = useState(address)
  // Before the fields can be typed into again: a moment later, what is typed at once would be overwritten.
  useLayoutEffect(() => {
    setText(held)
    setTyped(address)
  }, [held, place])
  // Both take what the field holds now: a key may come before the last letter is drawn.
  const put = (given: string): void => {
    if (given !== held) void host.type(sheet.name, area.top, area.left, given)
  }
  const go = (given: string): void => {
    const wanted = parseArea(given)
    if (wanted && wanted.sheet === undefined) void host.jump(joinReference(sheet.name, given))
    else setTyped(address)
  }
  // As in a spreadsheet: on to the cell below, with the sheet ready for the next value.
  const moveOn = (input: HTMLElement): void => {
    const row = Math.min(area.top + 1, LAST_ROW)
    host.select(sheet.name, { top: row, bottom: row, left: area.left, right: area.left })
    input.closest('.page-grid')?.querySelector<HTMLElement>('.sheet')?.focus({ preventScroll: true })
  }
  return (
    <div class="cell-bar">
      <input
        class="address"
        aria-label="Selected cells"
        spellcheck={false}
        value={typed}
        onInput={(event) => setTyped(event.currentTarget.value)}
        onBlur={() => setTyped(address)}
        onKeyDown={(event) => event.key === 'Enter' && go(event.currentTarget.value)}
      />
      <input
        class="content"
        aria-label={`Content of cell ${areaAddress({ ...area, bottom: area.top, right: area.left })}`}
        value={text}
        onInput={(event) => setText(event.currentTarget.value)}
        onBlur={(event) => put(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') {
            put(event.currentTarget.value)
            moveOn(event.currentTarget)
          }
          if (event.key === 'Escape') setText(held)
        }}
      />
      {cell?.formula === undefined ? null : <span class="hint formula">={cell.formula}</span>}
    </div>
  )
}
