import type { Finding } from '@draughtbook/shared-calc'
import { useEffect } from 'preact/hooks'
import type { CellMark } from '../../host/host.js'
import type { SectionProps } from './section.js'

/** What is said of a whole run is no fault of each of its cells. */
const ofWholeRun = ({ where }: Finding): boolean =>
  where.length > 0 && where.every((path) => /^runs(\[\d\](\.readings)?)?$/.test(path))

const marksOf = (findings: readonly Finding[]): CellMark[] =>
  findings.flatMap((finding) =>
    finding.severity === 'note' || ofWholeRun(finding)
      ? []
      : (finding.cells ?? []).map((reference) => ({ reference, severity: finding.severity })),
  )

/** Points out the cells of findings in the sheet, while that is wanted. */
export function useMarks({ store, state: { marking, result } }: SectionProps): void {
  // As text, so that the same marks again, which every keystroke brings, are no change.
  const wanted = JSON.stringify(marksOf(result?.findings ?? []))
  useEffect(() => {
    if (marking) void store.attempt(() => store.host.mark(JSON.parse(wanted) as CellMark[]))
  }, [marking, wanted, store])
}

/** On the page cells are marked at once; in Excel, where it touches the workbook, on request. */
export function MarkToggle({ store, state: { marking } }: SectionProps) {
  if (!store.host.hasWorkbook) return null
  return (
    <label class="mark-toggle">
      <input
        type="checkbox"
        checked={marking}
        onChange={(event) => store.mark(event.currentTarget.checked)}
      />{' '}
      mark the cells in the sheet
    </label>
  )
}
