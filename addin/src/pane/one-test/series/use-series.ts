import { runDirections } from '@draughtbook/shared-calc'
import type { SeriesSettings } from '@draughtbook/shared-calc/log'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { SeriesShown } from '../../../worker/read-series.js'

import type { SectionProps } from '../section.js'
import { sameFigures, takenOf, withStations } from '../stations.js'
import type { TakenStations } from '../taken-stations.js'

export interface ReadSource {
  source: string
  settings: SeriesSettings
  series: SeriesShown
}

/** Quiet time after an edit before a series that was taken over is read again, ms. */
const SETTLE_MS = 1500

/**
 * The series on show, and what is done with it. Stations taken over are read again when the workbook is opened and when cells of
 * their sheet change: where they no longer come out the same, the run says so.
 * @param width - tells the width of the picture, in CSS pixels
 */
export function useSeries({ store, state }: SectionProps, width: () => number) {
  const [shown, setShown] = useState<ReadSource>()
  const [busy, setBusy] = useState(false)
  const checked = useRef(new WeakSet<TakenStations>()).current
  const { runs } = state.entries
  const [edits, setEdits] = useState(0)

  const readFrom = async (source: string, settings: SeriesSettings): Promise<ReadSource> => {
    const { readSource } = await import('./read-selected.js')
    return { source, settings, series: await readSource(store.host, source, settings, width()) }
  }
  const read = async (settings: SeriesSettings): Promise<void> => {
    setBusy(true)
    const result = await store.attempt(async () => {
      const { selectedSource } = await import('./read-selected.js')
      return readFrom(await selectedSource(store.host), settings)
    })
    setBusy(false)
    if (result) setShown(result)
  }
  const takeOver = (): void => {
    if (!shown) return
    store.change((entries) =>
      shown.series.runs.reduce((before, picked) => {
        const taken = takenOf(picked, shown.source, shown.settings)
        checked.add(taken)
        return withStations(before, picked.run.direction, taken)
      }, entries),
    )
  }

  const sources = runDirections.flatMap((direction) => runs[direction]?.stations?.source ?? [])
  const watched = [...new Set(sources)].join('\n')
  useEffect(() => {
    if (!watched) return undefined
    let timer: ReturnType<typeof setTimeout> | undefined
    const stop = store.host.watch(({ sheet }) => {
      if (!watched.toLowerCase().includes(sheet.toLowerCase().replaceAll("'", "''"))) return
      clearTimeout(timer)
      timer = setTimeout(() => setEdits((count) => count + 1), SETTLE_MS)
    })
    return () => {
      clearTimeout(timer)
      void stop.then((end) => end())
    }
  }, [store, watched])

  const seen = useRef(edits)
  useEffect(() => {
    const edited = seen.current !== edits
    seen.current = edits
    for (const direction of runDirections) {
      const taken = runs[direction]?.stations
      if (!taken || (checked.has(taken) && !edited)) continue
      checked.add(taken)
      void readFrom(taken.source, taken.settings)
        .catch(() => undefined)
        .then((again) => {
          if (store.state.entries.runs[direction]?.stations !== taken) return
          if (again) setShown(again)
          const found = again?.series.runs.find(({ run }) => run.direction === direction)
          const same = sameFigures(taken, found)
          if (same === !taken.changed) return
          const { changed: _, ...rest } = taken
          const now: TakenStations = same ? rest : { ...rest, changed: true }
          checked.add(now)
          store.change((entries) => withStations(entries, direction, now))
        })
    }
  }, [runs, edits])

  return { shown, busy, read, takeOver }
}
