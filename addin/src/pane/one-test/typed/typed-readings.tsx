import type { Direction } from '@draughtbook/shared-calc'
import { runDirections } from '@draughtbook/shared-calc'
import { useState } from 'preact/hooks'

import type { SectionProps } from '../section.js'
import { ReadingTable } from './reading-table.js'
import { emptyRun, isBlank, type SecondColumn, type TypedRun } from './typed-run.js'
import { ValueList } from './value-list.js'

const FLOW_UNITS = ['m³/h', 'l/s', 'cfm', 'm³/s'] as const
const PRESSURE_UNITS = ['Pa', 'in. w.c.', 'hPa'] as const

/** Readings from paper and gauge: one direction at a time, each value reached by Enter. */
export function TypedReadings({ store, state }: SectionProps) {
  const [direction, setDirection] = useState<Direction>('depressurisation')
  const run = runOf(state.entries, direction)
  const change = (edit: (run: TypedRun) => TypedRun, what?: string): void =>
    store.change(
      (entries) => ({
        ...entries,
        runs: {
          ...entries.runs,
          [direction]: {
            ...entries.runs[direction],
            typed: edit(runOf(entries, direction)),
          },
        },
      }),
      what && `${direction}.${what}`,
    )
  const keep = (text: string): void => change((r) => ({ ...r, kept: [...(r.kept ?? []), text] }))
  return (
    <div class="typed">
      {/* biome-ignore lint/a11y/useSemanticElements: these are two views of one table, not a form's own group */}
      <div class="segments" role="group" aria-label="Direction">
        {runDirections.map((one) => (
          <button type="button" key={one} aria-pressed={direction === one} onClick={() => setDirection(one)}>
            {one === 'depressurisation' ? 'Depressurisation' : 'Pressurisation'}
            <span class="tell"> {countOf(state, one)}</span>
          </button>
        ))}
      </div>
      <ValueList
        label="Zero-flow pressure before, fan covered"
        unit={run.pressureUnit}
        values={run.zeroFlowBefore}
        place={`${direction}.zeroFlowBefore`}
        faults={state.result?.typedFaults ?? {}}
        onChange={(zeroFlowBefore, at) => change((r) => ({ ...r, zeroFlowBefore }), `before[${at}]`)}
        onKeep={keep}
        onRefused={(words) => store.tell(words)}
      />
      <Units run={run} onChange={(part) => change((r) => ({ ...r, ...part }))} />
      <ReadingTable
        run={run}
        direction={direction}
        faults={state.result?.typedFaults ?? {}}
        ranges={rangesOf(state)}
        onChange={change}
        onRefused={(words) => store.tell(words)}
      />
      <ValueList
        label="Zero-flow pressure after, fan covered"
        unit={run.pressureUnit}
        values={run.zeroFlowAfter}
        place={`${direction}.zeroFlowAfter`}
        faults={state.result?.typedFaults ?? {}}
        onChange={(zeroFlowAfter, at) => change((r) => ({ ...r, zeroFlowAfter }), `after[${at}]`)}
        onKeep={keep}
        onRefused={(words) => store.tell(words)}
      />
    </div>
  )
}

/** The run as typed; a new one takes column and units of the other direction. */
function runOf({ runs }: SectionProps['state']['entries'], direction: Direction): TypedRun {
  const own = runs[direction]?.typed
  if (own) return own
  const other = runDirections.map((one) => runs[one]?.typed).find(Boolean)
  return other
    ? { ...emptyRun(other.second, other.secondUnit), pressureUnit: other.pressureUnit }
    : emptyRun()
}

const countOf = ({ entries }: SectionProps['state'], direction: Direction): number =>
  (entries.runs[direction]?.typed?.readings ?? []).filter((reading) => !isBlank(reading)).length

/** Names of the device's ranges as entered in the step before. */
function rangesOf({ result }: SectionProps['state']): string[] {
  const device = result?.draft.flowDevice as { ranges?: { label?: string }[] } | undefined
  return (device?.ranges ?? []).flatMap(({ label }) => label ?? [])
}

interface UnitsProps {
  run: TypedRun
  onChange: (part: Partial<TypedRun>) => void
}

/** What the second column holds, and the units of numbers typed without one. */
function Units({ run, onChange }: UnitsProps) {
  const units = run.second === 'flow' ? FLOW_UNITS : PRESSURE_UNITS
  return (
    <details class="sub">
      <summary>
        Pressures in {run.pressureUnit}; the device shows{' '}
        {run.second === 'flow' ? 'air flow' : 'its own pressure'} in {run.secondUnit}
      </summary>
      <div class="typed-units">
        <span>
          Pressure in{' '}
          <Options
            label="Unit of the pressures"
            values={PRESSURE_UNITS}
            value={run.pressureUnit}
            onValue={(pressureUnit) => onChange({ pressureUnit })}
          />
        </span>
        <span>
          The device shows{' '}
          <select
            aria-label="What the device shows"
            value={run.second}
            onChange={({ currentTarget }) => {
              const second = currentTarget.value as SecondColumn
              onChange({ second, secondUnit: second === 'flow' ? 'm³/h' : 'Pa' })
            }}
          >
            <option value="flow">air flow</option>
            <option value="devicePressure">its own pressure</option>
          </select>
        </span>
        <span>
          in{' '}
          <Options
            label="Unit of what the device shows"
            values={units}
            value={run.secondUnit}
            onValue={(secondUnit) => onChange({ secondUnit })}
          />
        </span>
      </div>
    </details>
  )
}

interface OptionsProps {
  label: string
  values: readonly string[]
  value: string
  onValue: (value: string) => void
}

function Options({ label, values, value, onValue }: OptionsProps) {
  return (
    <select aria-label={label} value={value} onChange={({ currentTarget }) => onValue(currentTarget.value)}>
      {values.map((one) => (
        <option key={one}>{one}</option>
      ))}
    </select>
  )
}
