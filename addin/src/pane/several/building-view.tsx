import {
  type BuildingResult,
  type BuildingRule,
  buildingRules,
  counted,
  dayInWords,
  judgedTexts,
  outcomeWords,
  probabilityText,
  ruleWords,
  unitText,
  visible,
} from '@draughtbook/shared-calc'
import type { LeftOut } from '@draughtbook/shared-calc/register'
import { useState } from 'preact/hooks'
import { plainName } from '../../host/download.js'
import type { BuildingOrder } from '../month/archive-messages.js'
import { LeftOutList } from '../month/choose-files.js'
import { DownloadButton } from '../month/download-button.js'
import type { PageTests } from '../page/page-tests.js'
import { useRun } from '../use-changes.js'
import { WholeNumber } from './number-choice.js'
import { SeveralView, severalRun } from './several-view.js'
import { Table } from './table.js'

interface MadeBuilding {
  order: BuildingOrder
  building: BuildingResult
  leftOut: readonly LeftOut[]
}

type Wish = BuildingOrder['wish']

/** How the homes are to be put together; what is left out follows the scheme of the target. */
let wish: Wish = {}

const buildingRun = severalRun<MadeBuilding>(async (helper, read, leftOut) => {
  const order = { read, wish }
  const missing = leftOut.filter(({ expected }) => !expected)
  // A building without one of its homes would be another building.
  if (missing.length > 0)
    throw new Error(
      [
        `${counted(missing.length, 'file')} cannot be used.`,
        ...missing.map(({ file, why }) => visible(`${file}: ${why}`)),
      ].join('\n'),
    )
  const building = await helper.ask<'make-building'>({ kind: 'make-building', ...order })
  return { order, leftOut, building }
})

/** Tests of several homes of one building: put together, each judged, weighted. */
export function BuildingView({ tests }: { tests?: PageTests }) {
  const state = useRun(buildingRun)
  const [, setDrawn] = useState(0)
  const put = (part: { [Key in keyof Wish]?: Wish[Key] | '' | undefined }): void => {
    wish = Object.fromEntries(
      Object.entries({ ...wish, ...part }).filter(([, value]) => value !== undefined && value !== ''),
    )
    setDrawn((count) => count + 1)
    void buildingRun.remake()
  }
  return (
    <SeveralView
      run={buildingRun}
      tests={tests}
      id="building"
      title="Building of several homes"
      intro="Choose the summary of each home."
      what="building"
      wishes={{
        title: 'How the homes are judged',
        body: (
          <>
            <label>
              Rule
              <select
                value={wish.rule ?? ''}
                onChange={({ currentTarget: { value } }) => put({ rule: value as BuildingRule | '' })}
              >
                <option value="">as the target’s scheme requires</option>
                {buildingRules.map((rule) => (
                  <option key={rule} value={rule}>
                    {ruleWords[rule]}
                  </option>
                ))}
              </select>
            </label>
            <WholeNumber
              label="Homes in the building"
              hint="leave empty if all were tested"
              value={wish.homesInBuilding}
              onValue={(homesInBuilding) => put({ homesInBuilding })}
            />
            <WholeNumber
              label="Homes to be tested"
              hint="leave empty to follow the scheme"
              value={wish.sampleSize}
              onValue={(sampleSize) => put({ sampleSize })}
            />
            <WholeNumber
              label="Extra homes for each that fails"
              hint="leave empty to follow the scheme"
              value={wish.morePerMiss}
              onValue={(morePerMiss) => put({ morePerMiss })}
            />
            <label>
              Name
              <input
                value={wish.name ?? ''}
                placeholder={state.report?.building.name}
                onChange={({ currentTarget: { value } }) => put({ name: value })}
              />
            </label>
          </>
        ),
      }}
      head={(made) => <Verdict {...made} />}
      tables={(made) => <Homes {...made} />}
    />
  )
}

function Verdict({ order, building }: MadeBuilding) {
  const { outcome, target, homes, ways, rule, sample, findings, name } = building
  const judged = ways.find((way) => way.rule === rule)
  const meeting = homes.filter((home) => home.outcome === 'meets').length
  return (
    <>
      <p class={`headline outcome ${outcome.replace(' ', '-')}`}>
        {name}: {outcomeWords[outcome]}
      </p>
      <p>
        {judged ? (
          <>
            <b>
              {target.quantity} {textsOf(target, judged).value} {unitText(target.unit)}
            </b>{' '}
            against {target.limit} · margin {textsOf(target, judged).margin}
            {labelOf(target)}: {ruleWords[judged.rule]}. Probability of meeting the target:{' '}
            {probabilityText(judged.probability)}.
          </>
        ) : (
          <>
            <b>
              {meeting} of {counted(homes.length, 'home')}
            </b>{' '}
            {meeting === 1 ? 'meets' : 'meet'} the target: {target.quantity} ≤ {target.limit}{' '}
            {unitText(target.unit)}
            {labelOf(target)}.
          </>
        )}
        {sample
          ? ` ${sample.tested} tested of ${sample.required} required${sample.stillToTest > 0 ? `: ${sample.stillToTest} still to test` : ''}.`
          : ''}
      </p>
      <DownloadButton
        label="Download the building"
        fileName={`${plainName(name) || 'building'}.xlsx`}
        write={() =>
          buildingRun.after((helper) => helper.ask<'write-building'>({ kind: 'write-building', ...order }))
        }
      />
      {findings.length > 0 ? (
        <ul class="notes">
          {findings.map(({ severity, message }) => (
            <li key={message} class={severity}>
              <b>{severityWords[severity]}:</b> {message}
            </li>
          ))}
        </ul>
      ) : null}
    </>
  )
}

function Homes({ building: { target, homes, ways, rule }, leftOut }: MadeBuilding) {
  const head = [target.quantity, unitText(target.unit)].filter(Boolean).join(', ')
  return (
    <>
      <Table
        caption="Homes"
        heads={['Home', head, 'Verdict', 'Probability', 'Date', 'Adjoining spaces', 'File']}
        numbers={[head, 'Probability']}
      >
        {homes.map((home) => (
          <tr key={home.file} class={home.outcome.replace(' ', '-')}>
            <th scope="row">{home.name}</th>
            <td class="number">{beside(target, home.value)}</td>
            <td>{outcomeWords[home.outcome]}</td>
            <td class="number">{probabilityText(home.probability)}</td>
            <td>{dayInWords(home.date)}</td>
            <td>{home.adjoiningSpaces ?? 'not logged'}</td>
            <td class="file">{visible(home.file)}</td>
          </tr>
        ))}
      </Table>
      <Table
        caption="The homes together"
        heads={['Rule', head, '95 % interval', 'Compared', 'Margin', 'Probability']}
        numbers={[head, '95 % interval', 'Compared', 'Margin', 'Probability']}
      >
        {ways.map((way) => (
          <tr key={way.rule} class={way.rule === rule ? 'chosen' : undefined}>
            <th scope="row">
              {ruleWords[way.rule]}
              {way.rule === rule ? ' (used for the verdict)' : ''}
            </th>
            <td class="number">{beside(target, way.value)}</td>
            <td class="number">{way.interval95.map((end) => beside(target, end)).join(' to ')}</td>
            <td class="number">{textsOf(target, way).value}</td>
            <td class="number">{textsOf(target, way).margin}</td>
            <td class="number">{probabilityText(way.probability)}</td>
          </tr>
        ))}
      </Table>
      <LeftOutList leftOut={leftOut} />
      <p class="hint">Local codes and licensed practice decide how several homes are tested and judged.</p>
    </>
  )
}

const severityWords = { invalidates: 'Not valid', caution: 'Caution', note: 'Note' } as const

type Target = BuildingResult['target']

/** A target of one's own is called by its limit. */
const labelOf = ({ label, quantity }: Target): string => (label.startsWith(quantity) ? '' : ` (${label})`)

const textsOf = ({ limit }: Target, { judged, margin }: BuildingResult['ways'][number]) =>
  judgedTexts({ value: judged, limit, margin })

/** A value beside its limit, with as many digits as it takes to tell them apart. */
const beside = ({ limit }: Target, value: number): string =>
  judgedTexts({ value, limit, margin: limit - value }).value
