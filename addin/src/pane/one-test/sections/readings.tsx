import { counted, type Direction, runDirections, type TestRecord, withMinus } from '@draughtbook/shared-calc'
import type { PickedQuestion } from '@draughtbook/shared-calc/log'
import { useState } from 'preact/hooks'
import { joinReference } from '../../../host/address.js'
import { drawnOnChange } from '../../drawn-on-change.js'
import type { Field } from '../../fields.js'
import { figure } from '../../figures.js'
import { PickIcon } from '../../form/field-row.js'
import { Fields } from '../../form/fields.js'
import type { RunPicks, RunRole } from '../entries.js'
import { QuestionBox } from '../proposal/question-box.js'
import type { Section, SectionProps } from '../section.js'
import type { TakenStations } from '../taken-stations.js'
import { TypedReadings } from '../typed/typed-readings.js'

const ROLES: readonly (readonly [RunRole, string, string])[] = [
  ['zeroFlowBefore', 'Zero-flow before', 'Pa'],
  ['pressure', 'Pressures', 'Pa'],
  ['flow', 'Air flows', 'm³/h'],
  ['devicePressure', 'Device pressures', 'Pa'],
  ['zeroFlowAfter', 'Zero-flow after', 'Pa'],
]

/** Asked where flows are read or typed; worked out from device pressures they are known. */
const flowStatedField: Field = {
  path: 'flowStatedAt',
  label: 'The device shows flows of',
  kind: 'choice',
  options: [
    ['device air', 'device air: as it passes the device'],
    ['reference air', 'reference air: at the reference density'],
  ],
}

function Readings(props: SectionProps) {
  return (
    <>
      <ReadingsFrom {...props} />
      {hasFlows(props.state) ? <Fields {...props} fields={[flowStatedField]} /> : null}
    </>
  )
}

function hasFlows({ entries, result }: SectionProps['state']): boolean {
  const { runs = [] } = (result?.draft ?? {}) as Pick<TestRecord, 'runs'>
  return (
    entries.fields.flowStatedAt !== undefined ||
    runs.some(({ readings }) => readings.some(({ flow_m3_h }) => flow_m3_h !== undefined))
  )
}

/** From cells of a log, or typed here; what was picked stays when readings are typed, and the other way round. */
function ReadingsFrom(props: SectionProps) {
  const { store, state } = props
  const typed = runDirections.some((direction) => state.entries.runs[direction]?.typed)
  const [wanted, setWanted] = useState<boolean>()
  if (!store.host.hasWorkbook) return <TypedReadings {...props} />
  const typing = wanted ?? typed
  return (
    <>
      {/* biome-ignore lint/a11y/useSemanticElements: two views of the same readings, not a form's own group */}
      <div class="segments" role="group" aria-label="Readings from">
        <button type="button" aria-pressed={!typing} onClick={() => setWanted(false)}>
          From cells
        </button>
        <button type="button" aria-pressed={typing} onClick={() => setWanted(true)}>
          Typed here
        </button>
      </div>
      {typing ? <TypedReadings {...props} /> : <FromCells {...props} typed={typed} />}
    </>
  )
}

function FromCells({ typed, ...props }: SectionProps & { typed: boolean }) {
  const drop = (): void =>
    props.store.change(({ runs, ...entries }) => ({
      ...entries,
      runs: Object.fromEntries(
        Object.entries(runs).map(([direction, { typed: _, ...picks }]) => [direction, picks]),
      ),
    }))
  return (
    <>
      {typed ? (
        <p class="hint">
          The readings typed here are in use.{' '}
          <button type="button" onClick={drop}>
            Use the cells instead
          </button>
        </p>
      ) : (
        <p class="hint">Select cells in the sheet, then say what they are.</p>
      )}
      {runDirections.map((direction) => (
        <RunFieldset
          key={direction}
          direction={direction}
          store={props.store}
          picks={props.state.entries.runs[direction]}
          asked={(props.state.result?.questions ?? []).filter((one) => one.direction === direction)}
          told={readingsText(direction, props.state)}
        />
      ))}
    </>
  )
}

interface RunProps {
  direction: Direction
  store: SectionProps['store']
  picks: RunPicks | undefined
  /** What the picked cells leave open. */
  asked: readonly PickedQuestion[]
  /** How many readings there are, in words. */
  told: string
}

const RunFieldset = drawnOnChange(WholeRun, ({ direction, store, picks, asked, told }) => [
  direction,
  store,
  picks,
  JSON.stringify(asked),
  told,
])

function WholeRun({ direction, store, picks = {}, asked, told }: RunProps) {
  // Cells picked by hand are read as picked, no longer as the log was understood.
  const change = ({ understood: _, ...next }: RunPicks): void =>
    store.change((entries) => ({ ...entries, runs: { ...entries.runs, [direction]: next } }))
  const pick = async (role: RunRole): Promise<void> => {
    const block = await store.attempt(() => store.host.selection())
    if (block)
      change({ ...picks, [role]: { ...picks[role], reference: joinReference(block.sheet, block.asked) } })
  }
  const without = (role: RunRole): RunPicks => {
    const { [role]: _, ...others } = picks
    return others
  }
  return (
    <fieldset class="run">
      <legend>
        {direction === 'depressurisation' ? 'Depressurisation' : 'Pressurisation'}
        <span class="tell">{told}</span>
      </legend>
      {picks.stations ? <Taken stations={picks.stations} direction={direction} store={store} /> : null}
      {(picks.stations ? [] : ROLES).map(([role, label, unit]) => {
        const chosen = picks[role]
        return (
          <div class="role" key={role}>
            <button
              type="button"
              class="pick"
              aria-label={`${label}, ${direction}: take the selected cells`}
              onClick={() => void pick(role)}
            >
              <PickIcon /> {label}
            </button>
            {chosen ? (
              <>
                <button
                  type="button"
                  class="link"
                  title="Go to the cells"
                  onClick={() => void store.attempt(() => store.host.jump(chosen.reference))}
                >
                  {chosen.reference}
                </button>
                <input
                  class="unit-entry"
                  aria-label={`Unit of ${label}, ${direction}`}
                  placeholder={unit}
                  value={chosen.unit ?? ''}
                  onChange={(event) => {
                    const typed = event.currentTarget.value.trim()
                    change({
                      ...picks,
                      [role]: typed
                        ? { reference: chosen.reference, unit: typed }
                        : { reference: chosen.reference },
                    })
                  }}
                />
                <button
                  type="button"
                  class="icon"
                  aria-label={`Clear ${label}, ${direction}`}
                  onClick={() => change(without(role))}
                >
                  ×
                </button>
              </>
            ) : (
              <span class="none">not picked</span>
            )}
          </div>
        )
      })}
      {asked.length > 0 ? (
        <ul class="questions" aria-label={`Questions about the cells of ${direction}`}>
          {asked.map((question) => (
            <QuestionBox
              key={question.path}
              question={question}
              onAnswer={(value) => change(answered(picks, question, value))}
              onCell={(cell) => void store.attempt(() => store.host.jump(cell))}
            />
          ))}
        </ul>
      ) : null}
      {picks.devicePressure && !picks.flow ? (
        <Ranges direction={direction} picks={picks} store={store} onChange={change} />
      ) : null}
    </fieldset>
  )
}

/** The picks with the answer to what their cells leave open. */
function answered(picks: RunPicks, { role }: PickedQuestion, value: string): RunPicks {
  const chosen = role && picks[role]
  return role && chosen ? { ...picks, [role]: { ...chosen, unit: value } } : { ...picks, zeroFlowSign: value }
}

interface TakenProps {
  stations: TakenStations
  direction: Direction
  store: SectionProps['store']
}

/** Readings that were taken over from a raw series; putting them away lets cells be picked again. */
function Taken({ stations, direction, store }: TakenProps) {
  return (
    <div class="role">
      <span>from the series</span>
      <button
        type="button"
        class="link"
        title="Go to the cells"
        onClick={() => void store.attempt(() => store.host.jump(stations.source))}
      >
        {stations.source}
      </button>
      <button
        type="button"
        class="icon"
        aria-label={`Clear the readings from the series, ${direction}`}
        onClick={() =>
          store.change(({ runs: { [direction]: _, ...runs }, ...entries }) => ({ ...entries, runs }))
        }
      >
        ×
      </button>
    </div>
  )
}

interface RangesProps {
  direction: Direction
  picks: RunPicks
  store: SectionProps['store']
  onChange: (picks: RunPicks) => void
}

/** Device pressures need the range each was read in: cells that name it, or one for the whole run. */
function Ranges({ direction, picks, store, onChange }: RangesProps) {
  const { ranges, range, ...others } = picks
  const pick = async (): Promise<void> => {
    const block = await store.attempt(() => store.host.selection())
    if (block) onChange({ ...others, ranges: { reference: joinReference(block.sheet, block.asked) } })
  }
  return (
    <div class="role">
      <button
        type="button"
        class="pick"
        aria-label={`Device range, ${direction}: take the selected cells`}
        onClick={() => void pick()}
      >
        <PickIcon /> Device range
      </button>
      {ranges ? (
        <>
          <button
            type="button"
            class="link"
            onClick={() => void store.attempt(() => store.host.jump(ranges.reference))}
          >
            {ranges.reference}
          </button>
          <button
            type="button"
            class="icon"
            aria-label={`Clear the range of each reading, ${direction}`}
            onClick={() => onChange(others)}
          >
            ×
          </button>
        </>
      ) : (
        <input
          aria-label={`One range for all readings, ${direction}`}
          placeholder="or one for all"
          value={range ?? ''}
          onInput={(event) => onChange({ ...others, range: event.currentTarget.value })}
        />
      )}
    </div>
  )
}

function readingsText(direction: Direction, { result }: SectionProps['state']): string {
  const run = result?.record?.runs.find((candidate) => candidate.direction === direction)
  if (!run) {
    const estimate = result?.estimates.find((candidate) => candidate.direction === direction)
    return estimate ? `${counted(estimate.readings, 'reading')} so far` : ''
  }
  const pressures = run.readings.map(({ pressure_Pa }) => pressure_Pa)
  const [first = 0, last = 0] = [pressures[0], pressures.at(-1)]
  return `${counted(run.readings.length, 'reading')}, ${withMinus(figure(first, 3))} to ${withMinus(figure(last, 3))}\u00a0Pa`
}

export const readingsSection: Section = {
  id: 'readings',
  title: 'Readings',
  steps: ['site'],
  holds: ['runs', 'flowStatedAt'],
  fold: 'open',
  summary: ({ result }) => {
    const count = result?.record?.runs.reduce((sum, { readings }) => sum + readings.length, 0)
    return count === undefined ? '' : counted(count, 'reading')
  },
  Body: Readings,
}
