import { counted, visible } from '@draughtbook/shared-calc'
import type { LeftOut } from '@draughtbook/shared-calc/register'
import { Fold } from '../fold.js'
import { Said } from '../said.js'
import type { ArchiveRun, RunState } from './archive-run.js'

/** Names shown of the files chosen. */
const MOST_NAMES = 3

interface ChooseFilesProps<Result, Report> {
  run: ArchiveRun<Result, Report>
  state: RunState<Report>
  /** What is done with the files, as in `register`. */
  what: string
  /** Endings of further files that can be chosen, as in `.json`. */
  also?: string
}

/** Chooses workbooks or a folder, and shows how far the work is. Nothing leaves the machine. */
export function ChooseFiles<Result, Report>({
  run,
  state,
  what,
  also = '',
}: ChooseFilesProps<Result, Report>) {
  const working = state.phase === 'working'
  const chosen = (event: Event): void => {
    const input = event.currentTarget as HTMLInputElement
    const files = [...(input.files ?? [])]
    // The same folder can be chosen again.
    input.value = ''
    if (files.length > 0) void run.start(files)
  }
  return (
    <div class={`choose${state.names.length > 0 ? ' chose' : ''}`}>
      <label class="file-choice">
        Workbooks
        <input
          type="file"
          multiple
          disabled={working}
          onChange={chosen}
          accept={`.xlsx,.xlsm,.ods,.csv,.tsv,.json,.pub${also}`}
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
      {state.names.length > 0 ? <p class="hint chosen">{namesText(state.names)}</p> : null}
      <p role="status" class={state.fault ? 'altered' : undefined}>
        {state.fault
          ? `The ${what} could not be made: ${visible(state.fault)}`
          : working
            ? 'Reading the files …'
            : ''}
      </p>
    </div>
  )
}

function namesText(names: readonly string[]): string {
  const shown = visible(names.slice(0, MOST_NAMES).join(', '))
  return `${counted(names.length, 'file')} chosen: ${shown}${names.length > MOST_NAMES ? ', …' : ''}`
}

/** Every file that is not in the result, with the reason. */
export function LeftOutList({ leftOut }: { leftOut: readonly LeftOut[] }) {
  if (leftOut.length === 0) return null
  return (
    <Fold
      class="section"
      open={leftOut.some(({ expected }) => !expected)}
      summary={`Left out: ${leftOut.length}`}
    >
      <ul class="left-out">
        {leftOut.map(({ file, part, why }) => (
          <li key={`${file} ${part ?? ''}`}>
            <b>
              {visible(file)}
              {part ? ` (${part})` : ''}
            </b>
            : <Said text={why} />
          </li>
        ))}
      </ul>
    </Fold>
  )
}
