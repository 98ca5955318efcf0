import type { GeneratedLog } from '../generate.js'
import type { Ask } from '../recipe.js'
import { AREA, BAROMETER, FLOW, LENGTH, meant, PRESSURE, TEMPERATURE, type Unit, VOLUME } from '../units.js'
import type { AskedQuestion } from './reader.js'

/** What a question asks for, by its path and words. */
export function kindOf({ path, text }: AskedQuestion): Ask | undefined {
  const about = `${path} ${text}`.toLowerCase()
  const unit = /unit|ft³|ft3|cfm|l\/s/.test(about)
  if (path === 'test' || /which test|which house|which job/.test(about)) return 'which test'
  if (/volume/.test(path))
    return unit ? 'volume unit' : /which|gross/.test(text.toLowerCase()) ? 'which volume' : 'volume'
  if (/date/.test(about)) return 'date'
  if (/barom/.test(about)) return 'barometer unit'
  if (/temperature/i.test(about)) return 'temperatures'
  if (/device|plate|range/.test(path.toLowerCase())) return 'device'
  if (/sign|minus/.test(about)) return 'sign'
  if (/zero/.test(about)) return 'zero flow'
  if (/direction/.test(about)) return 'direction'
  if (/flow/.test(about)) return unit ? 'flow unit' : 'which flow'
  if (/pressure/.test(about)) return unit ? 'pressure unit' : 'which pressure'
  return /reading/.test(about) ? 'readings' : undefined
}

const ALL_UNITS: readonly Unit[] = [
  ...Object.values(VOLUME),
  ...Object.values(AREA),
  ...Object.values(LENGTH),
  ...Object.values(FLOW),
  ...Object.values(TEMPERATURE),
  ...Object.values(BAROMETER),
  ...Object.values(PRESSURE),
]

const plain = (text: string) =>
  text
    .normalize('NFKC')
    .toLowerCase()
    .replaceAll(/[\s.·^]/g, '')
    .replace('cuft', 'ft3')
    .replace('degc', '°c')
    .replace('degf', '°f')

/** A figure with its unit, or a unit alone, as typed. */
function parse(text: string): { value?: number; unit?: Unit } {
  const match = /^\s*(-?[\d.,]*)\s*(.*?)\s*$/s.exec(text)
  const value = match?.[1] ? Number(match[1].replaceAll(',', '')) : undefined
  const unit = ALL_UNITS.find(({ symbol }) => plain(symbol) === plain(match?.[2] ?? ''))
  return { ...(value !== undefined && { value }), ...(unit && { unit }) }
}

/** What somebody who was there would answer; undefined where nothing on offer is true. */
export function answerOf(question: AskedQuestion, log: GeneratedLog): string | undefined {
  const { recipe, tests } = log
  const [first] = tests
  if (!first) return undefined
  const { units, noMinus, induced } = recipe
  const kind = kindOf(question)
  const figures: Partial<Record<string, { value: number; unit: Unit }>> = {
    'building.volume_m3': { value: first.volume_m3, unit: units.volume },
    'conditions.indoorTemperature_C': { value: first.indoor_C, unit: units.temperature },
    'conditions.outdoorTemperature_C': { value: first.outdoor_C, unit: units.temperature },
    'conditions.barometricPressure_Pa': { value: first.barometer_Pa, unit: units.barometer },
  }
  const byUnit = { 'flow unit': units.flow, 'pressure unit': units.pressure, 'volume unit': units.volume }
  const figure = figures[question.path]
  const unit = figure?.unit ?? byUnit[kind as keyof typeof byUnit]
  const fitting = question.choices.find(({ value, label }) =>
    [value, label].map(parse).some((one) => {
      if (one.value !== undefined && figure)
        return near(meant(one.value, one.unit ?? (value === label ? figure.unit : RECORD_UNIT)), figure.value)
      return one.value === undefined && one.unit !== undefined && one.unit.factor === unit?.factor
    }),
  )
  if (fitting) return fitting.value
  if (kind === 'date') return question.choices.find(({ value }) => value === first.date)?.value ?? first.date
  if (question.choices.length === 0 && figure) return String(figure.value)
  if (kind === 'which test') return question.choices[0]?.value ?? '1'
  const wanted =
    kind === 'sign' || kind === 'zero flow' || kind === 'which pressure'
      ? induced
        ? /without zero|already|induced|corrected|not subtract/i
        : noMinus
          ? /keep|as logged|inside minus outside|own sign|minus left out|without (its )?minus|size/i
          : /as logged|measured|inside minus outside/i
      : kind === 'which volume'
        ? /internal|net\b|rooms|total/i
        : kind === 'which flow'
          ? /both|sum|total|together/i
          : kind === 'readings'
            ? /leave/i
            : undefined
  return wanted && question.choices.find(({ value, label }) => wanted.test(`${label} ${value}`))?.value
}

const RECORD_UNIT: Unit = { symbol: '', factor: 1, digits: 0 }
const near = (one: number, other: number) => Math.abs(one - other) <= 0.002 * Math.max(1, Math.abs(other))
