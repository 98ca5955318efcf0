import { useState } from 'preact/hooks'
import type { FoundEntries } from '../../calc/find-entries.js'
import type { SectionProps } from './section.js'

/** Looks for the readings and fields in the workbook; what it found is shown with its reason, and can be changed. */
export function FindButton({ store }: SectionProps) {
  const [found, setFound] = useState<FoundEntries>()
  const [busy, setBusy] = useState(false)
  const find = async (): Promise<void> => {
    setBusy(true)
    const result = await store.attempt(async () => {
      const [{ findEntries }, grid] = await Promise.all([
        import('../../calc/find-entries.js'),
        store.host.grid(),
      ])
      return findEntries(grid)
    })
    setBusy(false)
    setFound(result)
    if (result)
      store.change((entries) => ({
        ...entries,
        fields: { ...entries.fields, ...result.fields },
        runs: { ...entries.runs, ...result.runs },
      }))
  }
  return (
    <div class="find">
      <button type="button" class="main-action" disabled={busy} onClick={() => void find()}>
        Find the readings
      </button>
      {found ? (
        <details class="sub" open={found.missing.length > 0}>
          <summary>
            {found.layout === undefined ? '' : `Read by the layout “${found.layout}”: `}
            {found.guesses.length} found
            {found.missing.length > 0 ? `, ${found.missing.length} not found` : ''}: check them
          </summary>
          <ul class="guesses">
            {found.guesses.map(({ what, reference, reason, sure }) => (
              <li key={`${what}${reference}`}>
                {what}: {reference}{' '}
                <span class="hint">
                  {reason}
                  {sure ? '' : ' (not sure)'}
                </span>
              </li>
            ))}
            {found.missing.map((what) => (
              <li key={what} class="missing">
                not found: {what}
              </li>
            ))}
          </ul>
        </details>
      ) : null}
    </div>
  )
}
