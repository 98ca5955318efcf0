import type { LayoutInput } from '@draughtbook/shared-calc/log'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { UnderstoodLog } from '../../../calc/understand.js'
import { isUntouched } from '../entries.js'
import type { SectionProps } from '../section.js'
import { cellUses } from './uses-list.js'

export interface ProposalState {
  read: UnderstoodLog | undefined
  answers: Readonly<Record<string, string>>
  busy: boolean
  /** Looks through the log with these answers. */
  look: (answers: Readonly<Record<string, string>>) => Promise<void>
  /** Puts the proposal away. */
  close: () => void
  accept: () => Promise<void>
  /** Forgets the answers kept for logs of this make, and looks again. */
  forget: (layout: string) => Promise<void>
}

/** A name for logs of the make of a file. */
const makeOf = (file: string): string => `logs like ${file}`

/** Without a key pressed before an open log is looked through again. */
const PAUSE_MS = 400

/** A log as it is understood: looked through at once where it opens on an empty test, else when asked. */
export function useProposal({ store, state }: SectionProps): ProposalState {
  const [read, setRead] = useState<UnderstoodLog>()
  const [answers, setAnswers] = useState<Readonly<Record<string, string>>>({})
  const [busy, setBusy] = useState(false)
  const look = async (given: Readonly<Record<string, string>>): Promise<void> => {
    setBusy(true)
    const found = await store.attempt(async () => {
      const [{ understandLog }, { keptLayouts }, { firmsLayouts }, grid] = await Promise.all([
        import('../../../calc/understand.js'),
        import('../../../kept/kept-layouts.js'),
        import('../../../service/firms-layouts.js'),
        store.host.grid(),
      ])
      firms.current ??= firmsLayouts(new URL(document.baseURI))
      const own = { kept: keptLayouts(), firms: await firms.current }
      return understandLog(grid, given, store.host.fileDate, own)
    })
    setBusy(false)
    if (!found) return
    setAnswers(given)
    setRead(found)
  }
  const firms = useRef<Promise<LayoutInput[]> | undefined>(undefined)
  const close = (): void => setRead(undefined)
  const accept = async (): Promise<void> => {
    const { test } = read ?? {}
    const { record } = test ?? {}
    if (!test || !record) return
    const [{ acceptedEntries }, { keepLayout }, file] = await Promise.all([
      import('../../../calc/accepted-entries.js'),
      import('../../../kept/kept-layouts.js'),
      store.host.workbookName(),
    ])
    const accepted = { answers: { ...read?.answers }, ...(read?.firms && { layout: read.firms }) }
    store.change((entries) => acceptedEntries(entries, test, record, accepted))
    // Logs of this make are read with the same answers from now on.
    if (read?.keep && Object.keys(answers).length > 0) keepLayout(read.keep(makeOf(file ?? 'log')))
    close()
  }
  const forget = async (layout: string): Promise<void> => {
    const { forgetLayout } = await import('../../../kept/kept-layouts.js')
    forgetLayout(layout)
    await look(answers)
  }
  useEffect(() => {
    if (store.host.kind === 'page' && isUntouched(state.entries)) void look({})
  }, [])
  useEffect(() => {
    if (!read) return
    // Cells typed into the log on show are looked at again, once typing pauses.
    let timer: ReturnType<typeof setTimeout> | undefined
    const watching = store.host.watch(() => {
      clearTimeout(timer)
      timer = setTimeout(() => void look(answers), PAUSE_MS)
    })
    return () => {
      clearTimeout(timer)
      void watching.then((stop) => stop())
    }
  }, [read, answers, store])
  useEffect(() => {
    store.host.outline?.(read ? cellUses(read.uses) : [])
  }, [read, store])
  useEffect(() => () => store.host.outline?.([]), [store])
  return { read, answers, busy, look, close, accept, forget }
}
