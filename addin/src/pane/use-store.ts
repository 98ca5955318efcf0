import { useEffect, useState } from 'preact/hooks'
import type { TestStore } from './one-test/store.js'
import type { TestState } from './one-test/test-state.js'

/** The store's state, drawn anew whenever it changes. */
export function useTestState(store: TestStore): TestState {
  const [state, setState] = useState(store.state)
  useEffect(() => {
    setState(store.state)
    return store.listen(() => setState(store.state))
  }, [store])
  return state
}
