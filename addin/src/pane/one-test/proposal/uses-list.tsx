import type { Use } from '@draughtbook/shared-calc/log'
import type { CellUse } from '../../../host/host.js'

interface UsesListProps {
  uses: readonly Use[]
  onCell: (reference: string) => void
}

/** Every block, column and cell of the log: what it is used as, or why it is left out. */
export function UsesList({ uses, onCell }: UsesListProps) {
  return (
    <ul class="uses">
      {uses.map((use) => (
        <li key={`${use.cells} ${use.usedAs ?? ''}`} class={`use ${kindOf(use).kind}`}>
          {use.heading ? <b>{use.heading} </b> : null}
          <button
            type="button"
            class="link"
            title="Go to the cells"
            onClick={() => onCell(use.cells.split(/,\s*/)[0] ?? use.cells)}
          >
            {use.cells}
          </button>{' '}
          {wordsOf(use)}
          {use.reason ? <span class="hint"> {use.reason}</span> : null}
        </li>
      ))}
    </ul>
  )
}

/** What stands over the cells in the sheet for each use. */
export const cellUses = (uses: readonly Use[]): CellUse[] =>
  uses.flatMap((use) =>
    use.cells.split(/,\s*/).map((reference) => ({ reference, ...kindOf(use), words: wordsOf(use) })),
  )

export const wordsOf = ({ usedAs, ignoredBecause }: Use): string =>
  usedAs === undefined ? `left out: ${ignoredBecause ?? 'not needed'}` : `used as ${usedAs}`

/** Colour and short name of a use. */
export function kindOf({ usedAs, path = '' }: Use): Pick<CellUse, 'kind' | 'label'> {
  if (usedAs === undefined) return { kind: 'left-out', label: 'left out' }
  const role = usedAs.replace(/^raw series: /, '')
  if (/^zero-flow/.test(role)) return { kind: 'zero-flow', label: 'zero flow' }
  if (/^pressure across/.test(role)) return { kind: 'pressure', label: 'pressure' }
  const label = role.split(',')[0] ?? role
  return { kind: /^runs\[/.test(path) || role === 'air flow' ? 'flow' : 'detail', label }
}
