import type { TestRecord } from '../contract/record/index.js'
import { fieldLabel } from '../reports/workbook/field-labels.js'

/** What a list holds, one of it. */
const ONE: Readonly<Record<string, string>> = {
  readings: 'reading',
  zeroFlowBefore_Pa: 'zero-flow pressure before, value',
  zeroFlowAfter_Pa: 'zero-flow pressure after, value',
  ranges: 'range',
  openings: 'opening',
  devices: 'device',
}

/** `runs[0].readings[1].pressure_Pa` → `depressurisation, reading 2, pressure`. */
export function placeWords(path: string, record: TestRecord): string {
  const keys = [...path.matchAll(/([^.[\]]+)|\[(\d+)\]/g)].map(([, name, index]) => name ?? Number(index))
  const words: string[] = []
  keys.forEach((key, i) => {
    const before = keys[i - 1]
    if (typeof key === 'number' && typeof before === 'string')
      words.push(
        before === 'runs'
          ? (record.runs[key]?.direction ?? `run ${key + 1}`)
          : `${ONE[before] ?? fieldLabel(keys.slice(0, i)).label} ${key + 1}`,
      )
    else if (typeof key === 'string' && i === keys.length - 1) words.push(fieldLabel(keys).label)
  })
  const part = PARTS[String(keys[0])]
  return [...(words.length === 1 && part ? [part] : []), ...words].join(', ')
}

/** Parts of a record whose fields need the part's name to be told apart. */
const PARTS: Readonly<Record<string, string>> = {
  pressureGauge: 'pressure gauge',
  flowDevice: 'flow device',
  target: 'target',
}

/** Unit of a field, empty where it has none. */
export const unitOf = (path: string): string =>
  fieldLabel([...path.matchAll(/([^.[\]]+)|\[(\d+)\]/g)].map(([, name, index]) => name ?? Number(index))).unit
