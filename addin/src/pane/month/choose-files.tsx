import type { ArchiveRun, RunState } from './archive-run.js'

interface ChooseFilesProps<Result, Report> {
  run: ArchiveRun<Result, Report>
  state: RunState<Report>
  /** What is done with the files, as in `register`. */
  what: string
}

/** Chooses workbooks or a folder, and shows how far the work is. Nothing leaves the machine. */
export function ChooseFiles<Result, Report>({ run, state, what }: ChooseFilesProps<Result, Report>) {
  const working = state.phase === 'working'
  const chosen = (event: Event): void => {
    const input = event.currentTarget as HTMLInputElement
    const files = [...(input.files ?? [])]
    // The same folder can be chosen again.
    input.value = ''
    if (files.length > 0) void run.start(files)
  }
  return (
    <div class="choose">
      <label class="file-choice">
        Workbooks
        <input
          type="file"
          multiple
          disabled={working}
          onChange={chosen}
          accept=".xlsx,.xlsm,.ods,.csv,.tsv,.json,.pub"
        />
      </label>
      <label class="file-choice">
        Folder
        <input type="file" multiple disabled={working} onChange={chosen} {...{ webkitdirectory: true }} />
      </label>
      {working ? (
        <div class="working">
          <label>
            {state.done} of {state.of} files
            <progress value={state.done} max={Math.max(1, state.of)} />
          </label>
          <button type="button" onClick={() => run.cancel()}>
            Stop
          </button>
        </div>
      ) : null}
      <p role="status">
        {state.fault ? `The ${what} could not be made: ${state.fault}` : working ? 'Reading the files …' : ''}
      </p>
    </div>
  )
}
