import { useEffect, useState } from 'preact/hooks'
import { type Area, areaAddress } from '../../host/address.js'
import type { CellSheet } from '../../host/cell-sheet.js'
import type { PageHost } from '../../host/page/page-host.js'

interface CellBarProps {
  host: PageHost
  sheet: CellSheet
  area: Area
}

/** Address of the selection and what its first cell holds, to read in full and to correct. */
export function CellBar({ host, sheet, area }: CellBarProps) {
  const cell = sheet.at(area.top - 1, area.left - 1)
  const held = cell ? String(cell.value) : ''
  const place = `${sheet.name}!${areaAddress(area)}`
  const [text, setText] = useState(held)
  useEffect(() => setText(held), [held, place])
  const put = (): void => {
    if (text !== held) void host.type(sheet.name, area.top, area.left, text)
  }
  return (
    <div class="cell-bar">
      <span class="address">{areaAddress(area)}</span>
      <input
        aria-label={`Content of cell ${areaAddress({ ...area, bottom: area.top, right: area.left })}`}
        value={text}
        onInput={(event) => setText(event.currentTarget.value)}
        onBlur={put}
        onKeyDown={(event) => {
          if (event.key === 'Enter') put()
          if (event.key === 'Escape') setText(held)
        }}
      />
      {cell?.formula === undefined ? null : <span class="hint formula">={cell.formula}</span>}
    </div>
  )
}
