import { useState } from 'preact/hooks'
import type { PageTests } from './page-tests.js'

/** For whoever leaves a shared computer: removes everything that this page keeps in the browser, once it is confirmed. */
export function RemoveAll({ tests }: { tests: PageTests }) {
  const [asking, setAsking] = useState(false)
  return (
    <>
      <p class="hint">
        On a shared computer, save your tests as files and remove everything here when you have finished.
      </p>
      {asking ? (
        <div class="asking" role="alertdialog" aria-label="Remove everything">
          <span>
            All tests with their logs and photos, your answers about logs and the access token are removed
            from this browser. This cannot be undone.
          </span>
          <button
            type="button"
            class="grave"
            onClick={() => void tests.removeAll().then(() => setAsking(false))}
          >
            Remove everything
          </button>
          <button type="button" onClick={() => setAsking(false)}>
            Cancel
          </button>
        </div>
      ) : (
        <button type="button" class="grave" onClick={() => setAsking(true)}>
          Remove everything from this device
        </button>
      )}
    </>
  )
}
