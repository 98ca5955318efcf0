import { useEffect, useState } from 'preact/hooks'
import type { PageHost } from '../host/page/page-host.js'
import type { ArchiveRun, RunState } from './month/archive-run.js'
import type { TestStore } from './one-test/store.js'
import type { TestState } from './one-test/test-state.js'

/** Redraws whenever the page's workbook, its selection or its marks change. */
export function usePageHost(host: PageHost): number {
  const [drawn, setDrawn] = useState(0)
  useEffect(() => host.onView(() => setDrawn((count) => count + 1)), [host])
  return drawn
}

/** Whether a log is open on the page; redraws only when that changes. */
export function useOpenLog(host: PageHost | undefined): boolean {
  const [open, setOpen] = useState(host?.hasWorkbook ?? false)
  useEffect(() => host?.onView(() => setOpen(host.hasWorkbook)), [host])
  return open
}

/** The store's state, redrawn whenever it changes. */
export function useTestState(store: TestStore): TestState {
  const [state, setState] = useState(store.state)
  useEffect(() => {
    setState(store.state)
    return store.listen(() => setState(store.state))
  }, [store])
  return state
}

/** The run's state, redrawn whenever it changes. */
export function useRun<Result, Report>(run: ArchiveRun<Result, Report>): RunState<Report> {
  const [state, setState] = useState(run.state)
  useEffect(() => {
    setState(run.state)
    return run.listen(() => setState(run.state))
  }, [run])
  return state
}
