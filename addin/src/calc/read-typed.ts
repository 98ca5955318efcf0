import type { Direction, Reading, Run } from '@draughtbook/shared-calc'
import { findUnit, interpret, type KnownUnit, pageText } from '@draughtbook/shared-calc/log'
import { isBlank, type TypedReading, type TypedRun } from '../pane/one-test/typed/typed-run.js'
import { type Told, withoutLayout } from './told.js'

interface TypedSource {
  direction: Direction
  /** Place of the run in the record. */
  index: number
  typed: TypedRun
  told: Told
  /** Takes what is wrong with a value, by its place in the table: `depressurisation.readings[3].pressure`. */
  faults: Record<string, string>
}

/** Beyond these a typed value is asked about: usual tests stay well within. Source: common practice, no source. */
export const USUAL = {
  pressure: { unit: 'Pa', lowest: 2, highest: 150 },
  zeroFlow: { unit: 'Pa', lowest: 0, highest: 30 },
  devicePressure: { unit: 'Pa', lowest: 1, highest: 2500 },
  flow: { unit: 'm³/h', lowest: 1, highest: 50_000 },
} as const

/** A run typed by hand, as the record has it. Undefined where nothing was typed. */
export function readTyped(source: TypedSource): { run: Run; waiting?: string } | undefined {
  const { direction, typed } = source
  const before = zeroFlow(source, 'zeroFlowBefore')
  const after = zeroFlow(source, 'zeroFlowAfter')
  const readings: Reading[] = []
  let waiting: string | undefined
  let unsigned = false
  const last = typed.readings.findLastIndex((row) => !isBlank(row))
  for (const [row, entry] of typed.readings.entries()) {
    if (isBlank(entry)) continue
    const read = readRow(source, row, entry)
    if (entry.pressure.trim() === '' || entry.second.trim() === '') {
      if (row === last) {
        waiting = `reading ${row + 1}`
        source.told.tell(pageText('reading-unfinished', { direction, reading: row }), '')
      } else
        fault(
          source,
          `readings[${row}].${entry.pressure.trim() === '' ? 'pressure' : 'second'}`,
          ' is missing.',
        )
      continue
    }
    if (!read) continue
    unsigned ||= direction === 'depressurisation' && !/^\s*[-−–+]/.test(entry.pressure)
    readings.push(read)
  }
  if (!before && !after && readings.length === 0 && waiting === undefined) return undefined
  if (unsigned) source.told.tell(pageText('sign-by-direction'), '')
  const run: Run = {
    direction,
    ...(before && { zeroFlowBefore_Pa: before }),
    readings,
    ...(after && { zeroFlowAfter_Pa: after }),
  }
  return waiting === undefined ? { run } : { run, waiting }
}

function readRow(source: TypedSource, row: number, entry: TypedReading): Reading | undefined {
  const { typed, direction } = source
  const at = `readings[${row}]`
  const field = typed.second === 'flow' ? 'flow_m3_h' : 'devicePressure_Pa'
  const size = numberOf(source, `${at}.pressure`, entry.pressure, 'pressure', typed.pressureUnit, entry.kept)
  const second = numberOf(source, `${at}.second`, entry.second, typed.second, typed.secondUnit, entry.kept)
  if (size === undefined || second === undefined) return undefined
  const signed = /^\s*[-−–+]/.test(entry.pressure)
  const pressure_Pa = direction === 'depressurisation' && !signed ? -size : size
  if (pressure_Pa < 0 !== (direction === 'depressurisation') && pressure_Pa !== 0 && signed)
    source.told.tell(pageText('sign-by-direction/other', { direction, reading: row }), '')
  const range = entry.range?.trim()
  return {
    pressure_Pa,
    [field]: second,
    ...(field === 'devicePressure_Pa' && range ? { range } : {}),
  }
}

function zeroFlow(source: TypedSource, role: 'zeroFlowBefore' | 'zeroFlowAfter'): number[] | undefined {
  const values = source.typed[role].flatMap((text, i) =>
    text.trim() === ''
      ? []
      : (numberOf(source, `${role}[${i}]`, text, 'zeroFlow', source.typed.pressureUnit, source.typed.kept) ??
        []),
  )
  return values.length > 0 ? values : undefined
}

/** The value in the record's unit; what cannot be used, or is unusual and not confirmed, is said and left out. */
function numberOf(
  source: TypedSource,
  at: string,
  text: string,
  what: keyof typeof USUAL,
  unit: string,
  kept: readonly string[] | undefined,
): number | undefined {
  if (text.trim() === '') return undefined
  const quantity = what === 'flow' ? 'flow' : 'pressure'
  const known: KnownUnit | undefined = findUnit(unit)
  const read = interpret(
    { kind: 'text', value: text.trim().replace(/^[−–]/, '-') },
    { kind: 'quantity', quantity },
    known ? { unit: known } : {},
  )
  if ('refused' in read) {
    fault(source, at, `: ${withoutLayout(read)}`)
    return undefined
  }
  for (const { severity, rule, message } of read.remarks)
    if (rule !== 'log-text-number')
      source.told.add(severity, rule, `${titled(source.direction)}, typed readings. ${message}`, '')
  const value = Number(read.value)
  if (what === 'flow' && value < 0) {
    fault(source, at, ': an air flow has no sign: the direction is chosen above. Enter it without the minus.')
    return undefined
  }
  const { lowest, highest, unit: base } = USUAL[what]
  const size = Math.abs(value)
  if ((size < lowest || size > highest) && !kept?.includes(text.trim())) {
    fault(
      source,
      at,
      `: ${Number(size.toPrecision(6))} ${base} is ${size < lowest ? 'unusually low' : 'unusually high'}. Correct it, or keep it as it is.`,
    )
    return undefined
  }
  return value
}

function fault({ direction, index, told, faults }: TypedSource, at: string, words: string): void {
  faults[`${direction}.${at}`] = sentence(words.replace(/^:? /, ''))
  told.problem('', `${titled(direction)}, ${placeIn(at)}${words}`, `runs[${index}]`)
}

const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

export const titled = (direction: Direction): string =>
  direction === 'depressurisation' ? 'Depressurisation' : 'Pressurisation'

function placeIn(at: string): string {
  const reading = /^readings\[(\d+)\]\.(\w+)$/.exec(at)
  if (reading) return `reading ${Number(reading[1]) + 1}, ${reading[2] === 'pressure' ? 'pressure' : 'flow'}`
  const zero = /^zeroFlow(Before|After)\[(\d+)\]$/.exec(at)
  return zero ? `zero-flow pressure ${zero[1]?.toLowerCase()}, value ${Number(zero[2]) + 1}` : at
}
