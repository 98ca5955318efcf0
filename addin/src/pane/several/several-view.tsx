import '../month/archive.css'
import './several.css'
import type { LeftOut, ReadRecords } from '@draughtbook/shared-calc/register'
import type { ComponentChildren } from 'preact'
import { Fold } from '../fold.js'
import type { ArchiveHelper } from '../month/archive-helper.js'
import { ArchiveRun } from '../month/archive-run.js'
import { ChooseFiles } from '../month/choose-files.js'
import type { PageTests } from '../page/page-tests.js'
import { useRun } from '../use-changes.js'
import { KeptHere } from './kept-here.js'

type SeveralRun<Made> = ArchiveRun<ReadRecords, Made>

/** Reads records from whatever holds some; lives as long as the page, so that a look at another view loses nothing. */
export const severalRun = <Made,>(
  report: (helper: ArchiveHelper, read: readonly ReadRecords[], leftOut: readonly LeftOut[]) => Promise<Made>,
): SeveralRun<Made> =>
  new ArchiveRun<ReadRecords, Made>({
    records: true,
    each: (helper, file) => helper.ask<'records'>({ kind: 'records', ...file }),
    setAside: (file, why) => ({ records: [], leftOut: [{ file, why }] }),
    report: (helper, read, others) =>
      report(helper, read, [...others, ...read.flatMap(({ leftOut }) => leftOut)]),
  })

interface SeveralViewProps<Made> {
  run: SeveralRun<Made>
  tests: PageTests | undefined
  id: string
  title: string
  /** What to choose. */
  intro: string
  /** What is made of it. */
  what: string
  /** What can be chosen about it once files are read. */
  wishes: { title: string; body: ComponentChildren }
  /** The outcome. */
  head: (made: Made) => ComponentChildren
  /** What it rests on. */
  tables: (made: Made) => ComponentChildren
}

/** A view of several tests: files chosen or tests kept here, the outcome, what can be chosen about it, what it rests on. */
export function SeveralView<Made>(props: SeveralViewProps<Made>) {
  const { run, tests, id, title, intro, what, wishes, head, tables } = props
  const state = useRun(run)
  return (
    <section class="archive" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>{title}</h2>
      <p class="hint">
        {intro} Records (.json) and tests saved as a file (.zip) can be among them. They stay on this machine.
      </p>
      <ChooseFiles run={run} state={state} what={what} also=".zip" />
      <KeptHere
        tests={tests}
        working={state.phase === 'working'}
        onFiles={(files) => void run.start(files)}
      />
      {state.report ? head(state.report) : null}
      {state.phase === 'done' ? <Wishes {...wishes} isFaulty={state.fault !== undefined} /> : null}
      {state.report ? tables(state.report) : null}
    </section>
  )
}

/** Unfolds where something in it cannot be used. */
function Wishes({ title, body, isFaulty }: { title: string; body: ComponentChildren; isFaulty: boolean }) {
  return (
    <Fold class="section" open={isFaulty} summary={<h3>{title}</h3>}>
      <div class="wishes">{body}</div>
    </Fold>
  )
}
