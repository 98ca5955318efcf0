interface WaitingProps {
  /** Why Excel is not there; nothing while it may still answer. */
  why?: string
  onGoOn: () => void
}

/** What stands in the pane until Excel answers: never a blank, never a dead end. */
export function Waiting({ why, onGoOn }: WaitingProps) {
  return (
    <main class="waiting">
      <h1>Draughtbook</h1>
      <p role="status">{why === undefined ? 'Waiting for Excel …' : `${why}.`}</p>
      <p>
        Without Excel the pane works as a plain page: open a test log from disk, and download the summary.
      </p>
      <button type="button" onClick={onGoOn}>
        Go on without Excel
      </button>
    </main>
  )
}
