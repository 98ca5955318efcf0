import type { LeakReport } from '@draughtbook/shared-calc'
import { figure, signed } from '../../figures.js'
import { ListRows, useRows } from '../../form/list-rows.js'
import type { Section, SectionProps } from '../section.js'

/** What is left to seal, the leak log, the rounds so far, and why the directions may differ. */
function Leaks(props: SectionProps) {
  const report = props.state.result?.site.leaks
  return (
    <>
      {report ? (
        <ToSeal report={report} />
      ) : (
        <p class="hint">Remaining leakage appears with the first result.</p>
      )}
      <ListRows {...props} list="leaks.list" noun="Leak" tell={(i) => areaOf(report, i)} />
      <h3>Tests before this one, oldest first</h3>
      <ListRows {...props} list="leaks.earlierTests" noun="Earlier test" />
      <Retest {...props} />
      {report?.rounds.map(({ round, gain_m3_h, gainShare, hole }) => (
        <p key={round} data-round={round}>
          Round {round}: {signed(gain_m3_h, 0)} m³/h ({signed(gainShare * 100, 0)} %), a hole of{' '}
          {figure(hole.area_cm2, 2)} cm²
        </p>
      ))}
      {report?.directions.map((words) => (
        <p class="hint" key={words}>
          {words}
        </p>
      ))}
    </>
  )
}

const areaOf = (report: LeakReport | undefined, i: number): string => {
  const area = report?.leaks[i]?.area_cm2
  const share = report?.leaks[i]?.shareOfWhole
  return area === undefined || share === undefined
    ? ''
    : `${figure(area, 2)} cm², ${figure(share * 100, 2)} % of the total`
}

function ToSeal({ report: { toSeal, wholeLeakage } }: { report: LeakReport }) {
  return (
    <table class="figures to-seal">
      <thead>
        <tr>
          <th scope="col">left to seal</th>
          <th scope="col">cm²</th>
          <th scope="col">square, mm</th>
          <th scope="col">round, mm</th>
        </tr>
      </thead>
      <tbody>
        {toSeal.map(({ quantity, allowanceForAgeing, hole }) => (
          <tr key={`${quantity}${allowanceForAgeing}`}>
            <th scope="row">
              {allowanceForAgeing === 0
                ? `${quantity}, the target`
                : `with ${figure(allowanceForAgeing * 100, 2)} % for ageing`}
            </th>
            <td>{figure(hole.area_cm2, 3)}</td>
            <td>{figure(hole.squareSide_mm, 3)}</td>
            <td>{figure(hole.roundDiameter_mm, 3)}</td>
          </tr>
        ))}
        <tr>
          <th scope="row">the total leakage</th>
          <td>{figure(wholeLeakage.hole.area_cm2, 3)}</td>
          <td>{figure(wholeLeakage.hole.squareSide_mm, 3)}</td>
          <td>{figure(wholeLeakage.hole.roundDiameter_mm, 3)}</td>
        </tr>
      </tbody>
    </table>
  )
}

/** Keeps the present result as an earlier test, before repairs and a retest. */
function Retest(props: SectionProps) {
  const { change } = useRows('leaks.earlierTests', props)
  const { evaluation, result } = props.state
  const date = result?.record?.test.date
  if (!evaluation || date === undefined) return null
  const keep = (): void =>
    change((rows) => [
      ...rows,
      { date, airLeakageRate50_m3_h: String(Number(evaluation.results.q50.value.toPrecision(8))) },
    ])
  return (
    <button type="button" onClick={keep}>
      Keep this result as the test before repairs
    </button>
  )
}

export const leaksSection: Section = {
  id: 'leaks',
  title: 'Leaks',
  steps: ['site'],
  holds: ['leaks'],
  fold: 'closed',
  summary: ({ result }) => {
    const [first] = result?.site.leaks?.toSeal ?? []
    return first && first.hole.area_cm2 > 0 ? `${figure(first.hole.area_cm2, 2)} cm² left to seal` : ''
  },
  Body: Leaks,
}
