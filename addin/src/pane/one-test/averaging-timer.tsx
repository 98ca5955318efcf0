import { useEffect, useState } from 'preact/hooks'
import type { TestEntries } from './entries.js'

/** Taken while no averaging time is set; the button says so. */
const USUAL_S = 30

/** Counts the averaging time down in figures that can be read from the fan, then says that it is time to read. */
export function AveragingTimer({ entries }: { entries: TestEntries }) {
  const [endsAt, setEndsAt] = useState<number>()
  const [left, setLeft] = useState(0)
  const set = setTime(entries)
  const seconds = set ?? USUAL_S
  // By the page's own clock: the device's may be set meanwhile.
  useEffect(() => {
    if (endsAt === undefined) return
    const look = (): void => setLeft(Math.max(0, Math.ceil((endsAt - performance.now()) / 1000)))
    look()
    const ticking = setInterval(look, 200)
    return () => clearInterval(ticking)
  }, [endsAt])
  const start = (): void => {
    setLeft(seconds)
    setEndsAt(performance.now() + seconds * 1000)
  }
  if (endsAt === undefined)
    return (
      <button type="button" class="timer" onClick={start}>
        <span class="timer-figure">{seconds} s</span>
        <span>Start averaging{set === undefined ? ' (no time set)' : ''}</span>
      </button>
    )
  return (
    <button
      type="button"
      class={`timer ${left === 0 ? 'over' : 'runs'}`}
      onClick={() => setEndsAt(undefined)}
    >
      <span class="timer-figure" role="timer">
        {left} s
      </span>
      <span>{left === 0 ? 'Read now' : 'Averaging: keep still'}</span>
    </button>
  )
}

function setTime({ fields }: TestEntries): number | undefined {
  const entry = fields.averagingTime_s
  const seconds = entry && 'text' in entry ? Number(entry.text.replace(',', '.')) : Number.NaN
  return seconds > 0 && seconds <= 3600 ? Math.round(seconds) : undefined
}
