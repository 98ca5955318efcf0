import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { type ChartRun, leakageChart } from '../../../chart/leakage-chart.js'
import type { Section, SectionProps } from '../section.js'

/** Flow against pressure; what lies under the pointer, or has the focus, is said in the line below. */
function Curve({ state: { result } }: SectionProps) {
  const room = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(320)
  const [told, setTold] = useState('')
  useEffect(() => {
    const element = room.current
    if (!element) return
    const observer = new ResizeObserver(
      ([entry]) => entry && setWidth(Math.max(260, Math.round(entry.contentRect.width))),
    )
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  const tell = (event: Event): void => {
    const point = event.target instanceof Element ? event.target.closest<SVGElement>('.point') : null
    setTold(point?.dataset.label ?? '')
  }
  const chart = result?.chart
  const svg = useMemo(
    () => leakageChart(chart ?? { runs: [] }, Math.min(width, 640), Math.round(Math.min(width, 640) * 0.66)),
    [chart, width],
  )
  const runs = result?.chart.runs ?? []
  return (
    <div class="curve-room" ref={room}>
      {/* The chart is our own text, a pure function shared with print and tests, with every value escaped. */}
      <div
        onPointerOver={tell}
        onFocusIn={tell}
        onPointerLeave={() => setTold('')}
        dangerouslySetInnerHTML={{ __html: svg }}
      />
      <p class="told" aria-live="polite">
        {told || legend(runs)}
      </p>
    </div>
  )
}

/** What the marks stand for; a curve with an assumed exponent has no band. */
const legend = (runs: readonly ChartRun[]): string =>
  [
    ...runs.map(({ direction }) =>
      direction === 'depressurisation' ? '● depressurisation' : '□ pressurisation',
    ),
    ...(runs.some(hasBand) ? ['band: 95 %, fit scatter only'] : []),
  ].join('   ')

const hasBand = ({ provisional, curve }: ChartRun): boolean =>
  !provisional && curve.some(([, , lower, upper]) => lower < upper)

export const curveSection: Section = {
  id: 'curve',
  title: 'Curve',
  steps: ['site', 'result'],
  fold: 'open',
  shown: ({ state: { result } }) => (result?.chart.runs.length ?? 0) > 0,
  Body: Curve,
}
