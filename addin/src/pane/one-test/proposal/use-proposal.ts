import { useEffect, useRef, useState } from 'preact/hooks'
import type { UnderstoodLog } from '../../../calc/understand.js'
import { AskedLayouts } from '../../../service/firms-layouts.js'
import { isUntouched } from '../entries.js'
import type { SectionProps } from '../section.js'
import type { Kept } from './kept-answers.js'
import { cellUses } from './uses-list.js'

export interface ProposalState {
  read: UnderstoodLog | undefined
  answers: Readonly<Record<string, string>>
  busy: boolean
  /** The service has not answered, so the log is read without the firm's layouts. */
  late: boolean
  /** What was answered about the log accepted last. */
  kept: Kept | undefined
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
  const [late, setLate] = useState(false)
  const [kept, setKept] = useState<Kept>()
  const { log } = state.entries
  const asked = useRef<AskedLayouts | undefined>(undefined)
  const look = async (given: Readonly<Record<string, string>>): Promise<void> => {
    setBusy(true)
    setKept(undefined)
    asked.current ??= new AskedLayouts(store.base)
    const soon = asked.current.soon()
    const found = await store.attempt(async () => {
      const [{ understandLog }, { keptLayouts }, grid, firms] = await Promise.all([
        import('../../../calc/understand.js'),
        import('../../../kept/kept-layouts.js'),
        store.host.grid(),
        soon,
      ])
      setLate(firms.late)
      const own = { kept: keptLayouts(), firms: firms.layouts }
      return understandLog(grid, given, store.host.fileDate, own)
    })
    setBusy(false)
    if (!found) return
    setAnswers(given)
    setRead(found)
  }
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
    if (read?.keep && Object.keys(answers).length > 0) {
      const layout = read.keep(makeOf(file ?? 'log'))
      const here = keepLayout(layout)
      const holdsAnswers = Object.keys(layout.answers ?? {}).length > 0
      if (holdsAnswers && asked.current)
        setKept({ layout: async () => layout, here, firms: asked.current.answer })
    }
    close()
  }
  /** The answers of the log that was accepted, whenever that was. */
  const acceptedLayout = async () => {
    const [{ understandLog }, grid, file] = await Promise.all([
      import('../../../calc/understand.js'),
      store.host.grid(),
      store.host.workbookName(),
    ])
    return understandLog(grid, log?.answers ?? {}, store.host.fileDate).keep?.(makeOf(file ?? 'log'))
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
    if (!log || read || kept || log.layout) return
    if (Object.keys(log.answers).every((path) => path === 'test')) return
    asked.current ??= new AskedLayouts(store.base)
    setKept({ layout: acceptedLayout, firms: asked.current.answer })
  }, [log, read])
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
    if (!read || !late) return
    let shown = true
    void asked.current?.answer.then((found) => {
      if (!shown || !found) return
      if (found.layouts.length > 0) void look(answers)
      else setLate(false)
    })
    return () => {
      shown = false
    }
  }, [read, late, answers])
  useEffect(() => {
    store.host.outline?.(read ? cellUses(read.uses) : [])
  }, [read, store])
  useEffect(() => () => store.host.outline?.([]), [store])
  return { read, answers, busy, late, kept, look, close, accept, forget }
}
