import {
  counted,
  dayInWords,
  judgedTexts,
  probabilityText,
  type SiteStage,
  type StagesResult,
  siteStages,
  USUAL_CONFIDENCE,
  usualShares,
  visible,
  withMinus,
} from '@draughtbook/shared-calc'
import type { LeftOut } from '@draughtbook/shared-calc/register'
import { useState } from 'preact/hooks'
import type { StagesOrder } from '../month/archive-messages.js'
import { LeftOutList } from '../month/choose-files.js'
import { DownloadButton } from '../month/download-button.js'
import type { PageTests } from '../page/page-tests.js'
import { NumberChoice } from './number-choice.js'
import { SeveralView, severalRun } from './several-view.js'
import { percent, Table } from './table.js'

interface MadeStages {
  order: StagesOrder
  site: StagesResult
  leftOut: readonly LeftOut[]
}

/** What the stages may use, and how sure a go has to be. */
let wish: StagesOrder['wish'] = {}

const stagesRun = severalRun<MadeStages>(async (helper, read, leftOut) => {
  const order = { read, wish }
  const site = await helper.ask<'make-stages'>({ kind: 'make-stages', ...order })
  return { order, site, leftOut: [...leftOut, ...site.leftOut] }
})

const heads: Readonly<Record<SiteStage, string>> = {
  fabric: 'Fabric',
  'after services': 'After services',
  acceptance: 'Acceptance',
}

/** Tests of plots at their stages: what is used, what is left, and whether the next trade may start. */
export function StagesView({ tests }: { tests?: PageTests }) {
  const [, setDrawn] = useState(0)
  const put = (part: StagesOrder['wish']): void => {
    wish = { ...wish, ...part }
    setDrawn((count) => count + 1)
    void stagesRun.remake()
  }
  const shares = wish.shares ?? usualShares
  const share = (stage: SiteStage) => (
    <NumberChoice
      label={`${heads[stage]} may use, %`}
      hint="of the target"
      value={100 * shares[stage]}
      fits={isPercent}
      must="above 0, at most 100"
      onValue={(value = 100 * usualShares[stage]) => put({ shares: { ...shares, [stage]: value / 100 } })}
    />
  )
  return (
    <SeveralView
      run={stagesRun}
      tests={tests}
      id="stages"
      title="May the next trade start?"
      intro="Choose the summaries of the plots of a site, each with its stage: fabric, after services or acceptance."
      what="overview of the site"
      wishes={{
        title: 'What each stage may use',
        body: (
          <>
            {share('fabric')}
            {share('after services')}
            <NumberChoice
              label="Probability needed for go, %"
              hint="that the leakage is within the allowance"
              value={100 * (wish.confidence ?? USUAL_CONFIDENCE)}
              fits={(value) => isPercent(value) && value < 100}
              must="above 0 and below 100"
              onValue={(value = 100 * USUAL_CONFIDENCE) => put({ confidence: value / 100 })}
            />
          </>
        ),
      }}
      head={(made) => <Site {...made} />}
      tables={(made) => <Allowance {...made} />}
    />
  )
}

const isPercent = (value: number): boolean => value > 0 && value <= 100

function Site({ order, site }: MadeStages) {
  const { stages } = site
  const plots = [...new Set(stages.map(({ plot }) => plot))]
  const latest = plots.flatMap((plot) => stages.findLast((one) => one.plot === plot) ?? [])
  const held = latest.filter(({ decision }) => decision === 'stop' || decision === 'fails').length
  return (
    <>
      {plots.length > 0 ? (
        <p class={held > 0 ? 'headline bad' : 'headline'}>
          {held === 0
            ? `${counted(plots.length, 'plot')}: no plot is held up`
            : `${held} of ${counted(plots.length, 'plot')} held up`}
        </p>
      ) : null}
      <Table
        caption="Plots and stages"
        class="site"
        heads={['Plot', 'Now', ...siteStages.map((stage) => heads[stage])]}
      >
        {latest.map(({ plot, decision: now }) => (
          <tr key={plot}>
            <th scope="row">{plot}</th>
            <td class={`decision ${now}`}>
              <b>{now}</b>
            </td>
            {siteStages.map((stage) => {
              const found = stages.find((one) => one.plot === plot && one.stage === stage)
              if (!found)
                return (
                  <td key={stage} class="untested">
                    not tested
                  </td>
                )
              const { decision, shareUsed, probability, why } = found
              return (
                <td key={stage} class={`decision ${decision}`} title={why}>
                  <b>{decision}</b>
                  <Bar used={shareUsed} allowed={site.shares[stage]} />
                  <span>
                    {usedBeside(shareUsed, site.shares[stage])} used of {percent(site.shares[stage])}
                  </span>
                  <span>probability {probabilityText(probability)}</span>
                </td>
              )
            })}
          </tr>
        ))}
      </Table>
      <DownloadButton
        label="Download the stages"
        fileName="stages.xlsx"
        write={() =>
          stagesRun.after((helper) => helper.ask<'write-stages'>({ kind: 'write-stages', ...order }))
        }
      />
    </>
  )
}

function Allowance({ site: { stages }, leftOut }: MadeStages) {
  return (
    <>
      <Table
        caption="Allowance, test by test"
        numbers={['Measured, m³/h', 'Allowed, m³/h', 'Used since, m³/h', 'Left, m³/h', 'Left, cm²']}
        heads={[
          'Plot',
          'Stage',
          'Decision',
          'Measured, m³/h',
          'Allowed, m³/h',
          'Used since, m³/h',
          'Left, m³/h',
          'Left, cm²',
          'Date',
          'File',
        ]}
      >
        {stages.map((one) => (
          <tr key={one.file} class={one.decision}>
            <th scope="row">{one.plot}</th>
            <td>{one.stage}</td>
            <td>
              {one.decision}
              {one.why === undefined ? '' : `: ${one.why}`}
            </td>
            <td class="number">{one.measured_m3_h.toFixed(decimalsApart(one))}</td>
            <td class="number">{one.allowed_m3_h.toFixed(decimalsApart(one))}</td>
            <td class="number">{one.used_m3_h?.toFixed(0) ?? ''}</td>
            <td class="number">{withMinus(one.left_m3_h.toFixed(0))}</td>
            <td class="number">{withMinus(one.left_cm2.toFixed(0))}</td>
            <td>{dayInWords(one.date)}</td>
            <td class="file">{visible(one.file)}</td>
          </tr>
        ))}
      </Table>
      <LeftOutList leftOut={leftOut} />
      <p class="hint">
        Go means that the leakage is within the allowance, with the probability set above. It is advice. The
        person in charge of the site decides.
      </p>
    </>
  )
}

/** As many decimals as it takes to tell the flow measured from the flow allowed. */
const decimalsApart = ({ measured_m3_h: measured, allowed_m3_h: allowed }: StagesResult['stages'][number]) =>
  [0, 1, 2].find((decimals) => measured.toFixed(decimals) !== allowed.toFixed(decimals)) ?? 0

/** The share used, with as many digits as it takes to tell it from the share allowed. */
const usedBeside = (used: number, allowed: number): string =>
  percent(used) === percent(allowed) && used !== allowed
    ? `${judgedTexts({ value: 100 * used, limit: 100 * allowed, margin: 100 * (allowed - used) }).value} %`
    : percent(used)

/** Share used against the share allowed; the words under it say the same. */
function Bar({ used, allowed }: { used: number; allowed: number }) {
  const end = 1.5
  const place = (allowed / end) * 150 - 1
  return (
    <svg class="share-bar" viewBox="0 0 150 6" preserveAspectRatio="none" aria-hidden="true">
      <rect class="whole" width="150" height="6" />
      <rect class="part" width={(Math.min(Math.max(0, used), end) / end) * 150} height="6" />
      {/* What is allowed is seen within the part used as well. */}
      <rect class={used > allowed ? 'tick passed' : 'tick'} x={place} width="2" height="6" />
    </svg>
  )
}
