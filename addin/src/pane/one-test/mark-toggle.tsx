import { useEffect, useState } from 'preact/hooks'
import type { CellMark } from '../../host/host.js'
import type { SectionProps } from './section.js'

/** Points out the cells of findings in the sheet. On the page at once; in Excel, where it touches the workbook, on request. */
export function MarkToggle({ store, state }: SectionProps) {
  const [on, setOn] = useState(store.host.kind === 'page')
  const findings = state.result?.findings ?? []
  // As text, so that the same marks again, which every keystroke brings, are no change.
  const wanted = JSON.stringify(
    findings.flatMap(({ cells = [], severity }) =>
      severity === 'note' ? [] : cells.map((reference): CellMark => ({ reference, severity })),
    ),
  )
  useEffect(() => {
    if (on) void store.attempt(() => store.host.mark(JSON.parse(wanted) as CellMark[]))
  }, [on, wanted, store])
  const toggle = (checked: boolean): void => {
    setOn(checked)
    if (!checked) void store.attempt(() => store.host.mark([]))
  }
  return (
    <label class="mark-toggle">
      <input type="checkbox" checked={on} onChange={(event) => toggle(event.currentTarget.checked)} /> mark
      the cells in the sheet
    </label>
  )
}
