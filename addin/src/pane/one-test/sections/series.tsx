import { counted } from '@draughtbook/shared-calc'
import type { SeriesSettings } from '@draughtbook/shared-calc/log'
import { useRef, useState } from 'preact/hooks'
import type { SeriesShown } from '../../../worker/read-series.js'
import { wordsOf } from '../proposal/uses-list.js'
import type { Section, SectionProps } from '../section.js'
import { SeriesForm } from '../series/series-form.js'
import { StationsTable } from '../series/stations-table.js'
import { useSeries } from '../series/use-series.js'

/** The picture is never narrower: below it its letters would meet. */
const NARROWEST = 280

/** What is shown of one workbook goes when another is opened. */
function SeriesBody(props: SectionProps) {
  return <Series key={props.state.opened} {...props} />
}

/** A gauge's time log: what it shows, which stretches hold steady, and the readings they make. */
function Series(props: SectionProps) {
  const { store } = props
  const room = useRef<HTMLDivElement>(null)
  const { shown, busy, read, takeOver } = useSeries(props, () =>
    Math.max(NARROWEST, room.current?.clientWidth ?? 0),
  )
  const [settings, setSettings] = useState<SeriesSettings>({ averagingTime_s: 20 })
  const go = (cells: string): void => void store.attempt(() => store.host.jump(cells))
  return (
    <div class="series" ref={room}>
      <p class="hint">
        A gauge’s time log (time, pressure, flow or device pressure; 200 rows or more): go to its sheet, or
        select its cells.
      </p>
      <SeriesForm
        settings={settings}
        device={shown?.series.flow === 'Pa' || settings.columns?.devicePressure !== undefined}
        onChange={setSettings}
      />
      <button type="button" class="main-action" disabled={busy} onClick={() => void read(settings)}>
        {busy ? 'Reading …' : shown ? 'Read again' : 'Read the series'}
      </button>
      {shown ? <Shown source={shown.source} series={shown.series} onGo={go} onTake={takeOver} /> : null}
    </div>
  )
}

interface ShownProps {
  source: string
  series: SeriesShown
  onGo: (cells: string) => void
  onTake: () => void
}

function Shown({ source, series, onGo, onTake }: ShownProps) {
  const { svg, samples, flow, stations, runs, averagingTime_s, uses, problems, cautions } = series
  const count = runs.reduce((sum, { run }) => sum + run.readings.length, 0)
  const usable = problems.length === 0 && count > 0
  return (
    <>
      <p role="status">
        {samples} samples of {source}, averaged over {averagingTime_s} s: {told(stations)}
      </p>
      {problems.map(({ path, cell, message }) => (
        <p role="alert" class="fault" key={`${path}${cell}${message}`}>
          {cell ? `${cell}: ` : ''}
          {message}
        </p>
      ))}
      {/* The picture is our own text: numbers and fixed words only. */}
      {svg ? <div dangerouslySetInnerHTML={{ __html: svg }} /> : null}
      {stations.length > 0 ? <StationsTable stations={stations} flow={flow} onGo={onGo} /> : null}
      {cautions
        .map(({ message, cells = [] }) => `${message} (${cells.join(', ')})`)
        .map((words) => (
          <p class="hint" key={words}>
            ▲ {words}
          </p>
        ))}
      {uses.length > 0 ? (
        <details class="sub">
          <summary>How the columns were found</summary>
          <ul class="guesses">
            {uses.map((use) => (
              <li key={use.cells}>
                {use.heading ? <b>{use.heading} </b> : null}
                {use.cells} <span class="hint">{wordsOf(use)}</span>
              </li>
            ))}
          </ul>
        </details>
      ) : null}
      <button type="button" class="main-action" disabled={!usable} onClick={onTake}>
        Use as readings:{' '}
        {runs.map(({ run }) => `${run.readings.length} of ${run.direction}`).join(', ') || 'none'}
      </button>
      {usable ? <p class="hint">The earlier readings of these runs are replaced.</p> : null}
    </>
  )
}

function told(stations: SeriesShown['stations']): string {
  const rejected = stations.filter((station) => station.rejected).length
  const zero = stations.filter(({ kind }) => kind === 'zero-flow').length
  const taken = stations.length - rejected - zero
  return `${counted(taken, 'reading')}, ${counted(zero, 'zero-flow block')}, ${rejected} rejected`
}

export const seriesSection: Section = {
  id: 'series',
  title: 'Raw gauge series',
  steps: ['site'],
  shown: ({ store }) => store.host.hasWorkbook,
  // Readings that were taken from a series are looked at again with it.
  fold: ({ entries }) => (Object.values(entries.runs).some((run) => run?.stations) ? 'open' : 'closed'),
  summary: ({ entries: { runs } }) => {
    const taken = Object.values(runs).filter(({ stations }) => stations)
    return taken.length === 0 ? '' : `used for ${taken.length === 1 ? 'one run' : 'both runs'}`
  },
  Body: SeriesBody,
}
