import type { Problem } from '../problem.js'
import { fieldLabel } from './field-labels.js'

/** As much of a record as a place needs: which run is which. */
export interface Directions {
  readonly runs?: readonly { readonly direction?: string | undefined }[] | undefined
}

/** Lists whose schema names the list, not one of what it holds. */
const ONE: Readonly<Record<string, string>> = {
  readings: 'reading',
  zeroFlowBefore_Pa: 'zero-flow pressure before, value',
  zeroFlowAfter_Pa: 'zero-flow pressure after, value',
  evenness: 'inside pressure comparison',
  ranges: 'range',
  openings: 'opening',
  devices: 'device',
  spaces: 'space',
  cautions: 'caution',
  list: 'leak',
  parts: 'part',
  elements: 'envelope element',
  gauges: 'gauge',
  earlierTests: 'earlier test',
}

/** Fields without a term in the schema whose own name would not say what they are. */
const FIELDS: Readonly<Record<string, string>> = {
  ranges: 'calibrated ranges of the flow device',
  forecast: 'forecast',
  openings: 'list of openings',
  preparation: 'preparation of the building',
  cautions: 'cautions of the preparation',
  zeroFlowBefore_Pa: 'zero-flow pressure before',
  zeroFlowAfter_Pa: 'zero-flow pressure after',
  evenness: 'inside pressure comparisons',
  flowStatedAt: 'air for which the flows are stated',
  windAt: 'where the wind was measured',
  beaufort: 'wind force (Beaufort)',
  indoor: 'indoor air',
  outdoor: 'outdoor air',
  runs: 'both directions',
  words: 'size in words',
  fixedInRound: 'repair round',
  foundBy: 'found by',
}

/** Parts of a record whose fields need the part's name to be told apart. */
const PARTS: Readonly<Record<string, string>> = {
  pressureGauge: 'pressure gauge',
  flowDevice: 'flow device',
  thermometer: 'thermometer',
  target: 'target',
  forecast: 'forecast',
}

/**
 * A field's path in words: `runs[0].readings[1].pressure_Pa` is `depressurisation, reading 2, pressure difference`,
 * `conditions.windSpeed_m_s` is `wind speed`. Terms are those of the record's schema.
 */
export function placeWords(path: string, { runs = [] }: Directions): string {
  if (path === 'runs' && runs.length === 1) return runs[0]?.direction ?? 'run 1'
  const keys = keysOf(path)
  const words: string[] = []
  keys.forEach((key, i) => {
    const list = keys[i - 1]
    if (typeof key === 'number')
      words.push(
        list === 'runs'
          ? (runs[key]?.direction ?? `run ${key + 1}`)
          : `${ONE[String(list)] ?? fieldLabel(keys.slice(0, i)).label} ${key + 1}`,
      )
    else if (i === keys.length - 1) words.push(FIELDS[key] ?? fieldLabel(keys).label)
    else if (PARTS[key]) words.push(PARTS[key])
  })
  // The field's own term often names the part already.
  const [part = '', field = ''] = words
  return (field.includes(part) && field !== part ? words.slice(1) : words).join(', ')
}

/** Unit of a field, empty where it has none. */
export const placeUnit = (path: string): string => fieldLabel(keysOf(path)).unit

/** `runs[0].readings` has the keys runs, 0 and readings. */
const keysOf = (path: string): (string | number)[] =>
  [...path.matchAll(/([^.[\]]+)|\[(\d+)\]/g)].map(([, name, index]) => name ?? Number(index))

/**
 * A problem as people read it: the cell, else the field in words, then what is wrong. The field is not named twice where the message
 * names it.
 */
export function problemWords({ path, cell, message }: Problem, given: Directions = {}): string {
  if (cell) return `${cell}: ${message}`
  const said = message.toLowerCase()
  if (FILE.test(path)) return `${path}: ${message}`
  const words = path === '' ? [] : placeWords(path, given).split(', ')
  const place = words.filter((word) => !said.includes(word.toLowerCase())).join(', ')
  return place ? `${place}: ${message}` : message
}

/** What is wrong with a whole file has its name in place of a field. */
const FILE = /\.(?:xlsx|xlsm|ods|csv|tsv|txt|json|zip)(?: \([^()]*\))?$/i

/** Several problems in one text, each once. */
export const problemsInWords = (problems: readonly Problem[], given?: Directions): string =>
  [...new Set(problems.map((problem) => problemWords(problem, given)))].join('; ')
