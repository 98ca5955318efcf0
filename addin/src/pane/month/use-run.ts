import { useEffect, useState } from 'preact/hooks'
import type { ArchiveRun, RunState } from './archive-run.js'

/** The run's state, drawn anew whenever it changes. */
export function useRun<Result, Report>(run: ArchiveRun<Result, Report>): RunState<Report> {
  const [state, setState] = useState(run.state)
  useEffect(() => {
    setState(run.state)
    return run.listen(() => setState(run.state))
  }, [run])
  return state
}
