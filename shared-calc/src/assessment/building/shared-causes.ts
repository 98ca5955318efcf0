import { dayInWords } from '../../catalogue/words.js'
import type { TestRecord } from '../../contract/record/index.js'
import { cause } from '../../uncertainty/causes.js'
import type { TestedHome } from './home.js'

/** One relative contribution to a home's figure, with its sign. */
export interface Contribution {
  readonly home: number
  readonly value: number
}

export interface SharedCause {
  readonly name: string
  /** Causes that the homes share. */
  readonly of: string
  readonly contributions: readonly Contribution[]
}

export interface Contributions {
  readonly shared: readonly SharedCause[]
  readonly own: readonly (Contribution & { readonly name: string })[]
  /** Homes whose instruments are not named: taken to share them. */
  readonly unnamed: ReadonlySet<number>
}

/**
 * Which contributions the homes share. An instrument is shared where serial number and calibration date are alike, and where
 * neither is named; a volume or area where both homes hold the same number, as homes of one type do.
 */
export function contributionsOf(homes: readonly TestedHome[]): Contributions {
  const shared = new Map<string, { name: string; of: string; contributions: Contribution[] }>()
  const own: (Contribution & { name: string })[] = []
  const unnamed = new Set<number>()
  homes.forEach(({ decision, record }, home) => {
    const { rows, block } = decision.budget
    rows.forEach((row, i) => {
      const [c, d] = [block.column('c')[i] ?? 0, block.column('d')[i] ?? 0]
      const { sharedWhereSame: what } = cause(row.cause)
      const key = what && row.run === undefined ? keyOf(record, what) : undefined
      if (key === undefined) {
        own.push({ home, name: row.name, value: d })
        return
      }
      if (key === UNNAMED) unnamed.add(home)
      const id = JSON.stringify([row.id, what, key])
      const group = shared.get(id) ?? { name: row.name, of: key, contributions: [] }
      group.contributions.push({ home, value: Math.sign(c) * d })
      shared.set(id, group)
    })
  })
  const groups = [...shared.values()]
  return {
    shared: groups.filter(({ contributions }) => contributions.length > 1),
    own: [
      ...own,
      ...groups
        .filter(({ contributions }) => contributions.length === 1)
        .flatMap(({ name, contributions }) => contributions.map((one) => ({ ...one, name }))),
    ],
    unnamed,
  }
}

const UNNAMED = 'not named'

type Shared = NonNullable<ReturnType<typeof cause>['sharedWhereSame']>

function keyOf({ building, flowDevice, pressureGauge }: TestRecord, what: Shared): string | undefined {
  if (what !== 'flowDevice' && what !== 'pressureGauge') {
    const number = building[what]
    return number === undefined ? undefined : `${number} ${what.endsWith('_m3') ? 'm³' : 'm²'}`
  }
  const instrument = what === 'flowDevice' ? flowDevice : pressureGauge
  const { serial, calibrationDue } = instrument ?? {}
  return serial === undefined
    ? UNNAMED
    : [serial, dayInWords(calibrationDue ?? '')].filter(Boolean).join(', ')
}
