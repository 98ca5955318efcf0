import { useState } from 'preact/hooks'
import type { PageHost } from '../../host/page/page-host.js'
import { isUntouched } from '../one-test/entries.js'
import type { TestState, TestStore } from '../one-test/store.js'
import { testFile } from '../one-test/test-file.js'

interface NewTestProps {
  host: PageHost
  store: TestStore
  state: TestState
}

/** Closes an open log, or removes the test typed here from this browser; it asks first, and offers a file of it. */
export function NewTest({ host, store, state }: NewTestProps) {
  const [asking, setAsking] = useState(false)
  if (host.hasWorkbook)
    return (
      <button
        type="button"
        onClick={() => {
          void store.save().then(() => {
            host.close()
            return store.restore()
          })
        }}
      >
        Close the log
      </button>
    )
  if (isUntouched(state.entries)) return null
  if (!asking)
    return (
      <button type="button" onClick={() => setAsking(true)}>
        New test
      </button>
    )
  const remove = (): void => {
    setAsking(false)
    store.startAnew()
  }
  return (
    <div class="asking" role="alertdialog" aria-label="New test">
      <span>This test is removed from this browser.</span>
      <button
        type="button"
        onClick={() => void store.attempt(() => host.download(testFile(store.state.entries), 'test.json'))}
      >
        Save it as a file first
      </button>
      <button type="button" onClick={remove}>
        Remove it and start again
      </button>
      <button type="button" onClick={() => setAsking(false)}>
        Cancel
      </button>
    </div>
  )
}
