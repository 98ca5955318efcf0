import type { Use } from '@draughtbook/shared-calc/log'
import { kindOf, wordsOf } from './cell-uses.js'

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
