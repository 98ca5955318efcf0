import type { LayoutInput } from '@draughtbook/shared-calc/log'
import { useEffect, useState } from 'preact/hooks'
import type { FirmsLayouts } from '../../../service/firms-layouts.js'
import type { KeptInLibrary } from '../../../service/keep-in-library.js'
import { wordsOf } from '../fault-words.js'

/** Answers about a log as they were accepted. */
export interface Kept {
  /** As a layout for other logs of this make; undefined where a layout describes the log already. */
  layout: () => Promise<LayoutInput | undefined>
  /** Whether this browser keeps them, right after they were accepted. */
  here?: boolean
  /** What the service said of the firm's library. */
  firms: Promise<FirmsLayouts | undefined>
}

/** Where the answers are kept, and one click that keeps them in the firm's library too. */
export function KeptAnswers({ kept: { layout, here, firms }, base }: { kept: Kept; base: URL }) {
  const [offered, setOffered] = useState(false)
  const [busy, setBusy] = useState(false)
  const [done, setDone] = useState<KeptInLibrary>()
  const [fault, setFault] = useState<string>()
  useEffect(() => {
    let shown = true
    void firms.then((found) => shown && setOffered(found?.mayChange === true))
    return () => {
      shown = false
    }
  }, [firms])
  const keep = async (): Promise<void> => {
    setBusy(true)
    setFault(undefined)
    try {
      const { keepInLibrary } = await import('../../../service/keep-in-library.js')
      const answers = await layout()
      if (answers) setDone(await keepInLibrary(base, answers))
      else setFault('A layout already describes this log, so there is nothing to keep.')
    } catch (error) {
      setFault(wordsOf(error))
    }
    setBusy(false)
  }
  return (
    <>
      {done || here !== undefined ? (
        <p class="hint" role="status">
          {done ? inLibrary(done) : here ? HERE : NOWHERE}
        </p>
      ) : null}
      {offered && !done ? (
        <p class="keep-answers">
          <button type="button" disabled={busy} onClick={() => void keep()}>
            {busy ? 'Keeping …' : 'Keep the answers in the firm’s library'}
          </button>
        </p>
      ) : null}
      {fault === undefined ? null : (
        <p class="fault" role="alert">
          {fault}
        </p>
      )}
    </>
  )
}

const HERE = 'Your answers are kept in this browser, for other logs of this kind.'
const NOWHERE = 'This browser cannot store answers, so they apply to this log only.'

const inLibrary = ({ id, replaced }: KeptInLibrary): string =>
  `Your answers are kept in the firm’s library as layouts/${id}. Everybody who uses the library reads logs of this kind with them.${
    replaced ? ' They replace earlier answers, which stay in its history.' : ''
  }`
