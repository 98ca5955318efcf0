import { runDirections } from '@draughtbook/shared-calc'
import type { SeriesSettings } from '@draughtbook/shared-calc/log'
import { useId } from 'preact/hooks'
import { choicesOf } from '../lists/list-column.js'

interface SeriesFormProps {
  settings: SeriesSettings
  /** The series holds device pressures, which need the device's range. */
  device: boolean
  onChange: (settings: SeriesSettings) => void
}

const DIRECTIONS = [
  ['', 'as found'],
  ['by sign', 'by the sign of the pressures'],
  ...choicesOf(runDirections),
] as const
const SIGNS = [
  ['', 'inside − outside'],
  ['outside minus inside', 'outside − inside'],
] as const

const COLUMNS = [
  ['time', 'Time'],
  ['pressure', 'Pressure'],
  ['flow', 'Flow'],
  ['devicePressure', 'or device pressure'],
] as const

/** How the series is to be read. */
export function SeriesForm({ settings, device, onChange }: SeriesFormProps) {
  const id = useId()
  const { averagingTime_s, direction, sign, range, columns } = settings
  return (
    <div class="fields">
      <div class="field">
        <label for={`${id}-time`}>
          Averaging time <span class="unit">s</span>
        </label>
        <div class="entry">
          <input
            id={`${id}-time`}
            type="number"
            min="1"
            max="600"
            value={averagingTime_s}
            onChange={({ currentTarget }) => {
              const seconds = currentTarget.valueAsNumber
              // The field's own limits; anything else stays as it was, and the field shows that.
              if (seconds >= 1 && seconds <= 600) onChange({ ...settings, averagingTime_s: seconds })
              else currentTarget.value = String(averagingTime_s)
            }}
          />
        </div>
      </div>
      <Choice
        id={`${id}-direction`}
        label="Direction"
        value={direction ?? ''}
        options={DIRECTIONS}
        onChange={(value) =>
          onChange({ ...without(settings, 'direction'), ...(value ? { direction: value } : {}) })
        }
      />
      <Choice
        id={`${id}-sign`}
        label="Pressures logged as"
        value={sign === 'outside minus inside' ? sign : ''}
        options={SIGNS}
        onChange={(value) => onChange({ ...without(settings, 'sign'), ...(value ? { sign: value } : {}) })}
      />
      {device ? (
        <div class="field">
          <label for={`${id}-range`}>Device range</label>
          <div class="entry">
            <input
              id={`${id}-range`}
              value={range?.value ?? ''}
              onChange={({ currentTarget }) => {
                const value = currentTarget.value.trim()
                onChange({ ...without(settings, 'range'), ...(value ? { range: { value } } : {}) })
              }}
            />
          </div>
        </div>
      ) : null}
      <details class="sub columns">
        <summary>Name the columns instead</summary>
        <div class="fields">
          {COLUMNS.map(([name, label]) => (
            <div class="field" key={name}>
              <label for={`${id}-column-${name}`}>{label}</label>
              <div class="entry">
                <input
                  id={`${id}-column-${name}`}
                  placeholder="letter, as in B"
                  value={columns?.[name] ?? ''}
                  onChange={({ currentTarget }) => {
                    const { [name]: _, ...others } = columns ?? {}
                    const letters = currentTarget.value.trim().toUpperCase()
                    const named = letters ? { ...others, [name]: letters } : others
                    onChange({
                      ...without(settings, 'columns'),
                      ...(Object.keys(named).length > 0 ? { columns: named } : {}),
                    })
                  }}
                />
              </div>
            </div>
          ))}
        </div>
      </details>
    </div>
  )
}

function without(settings: SeriesSettings, name: keyof SeriesSettings): SeriesSettings {
  const { [name]: _, ...others } = settings
  return others
}

interface ChoiceProps<T extends string> {
  id: string
  label: string
  value: T | ''
  options: readonly (readonly [value: T | '', label: string])[]
  onChange: (value: T | '') => void
}

function Choice<T extends string>({ id, label, value, options, onChange }: ChoiceProps<T>) {
  return (
    <div class="field text">
      <label for={id}>{label}</label>
      <div class="entry">
        <select
          id={id}
          value={value}
          onChange={({ currentTarget }) => onChange(currentTarget.value as T | '')}
        >
          {options.map(([one, words]) => (
            <option key={one} value={one}>
              {words}
            </option>
          ))}
        </select>
      </div>
    </div>
  )
}
