import type { EarlierTest, Leak, LeakLog, SizeWord } from '../../contract/record/index.js'
import {
  type BlockOf,
  byRule,
  type Calculation,
  columnOf,
  fromRecord,
  type Given,
} from '../../engine/index.js'
import type { WorkedCriterion, WorkedTest } from '../../evaluation/work/worked-test.js'
import {
  estimatedHoles,
  flowThroughHoles,
  gaps,
  holeSizes,
  limitBeforeAgeing,
  ratesCompared,
  roundHoles,
} from '../../formulas/holes.js'
import { areaToSeal, leakageToSeal } from '../../formulas/verdict.js'

/** The pressure at which leaks and repairs are compared, Pa. */
export const COMPARED_AT_PA = 50

/** An area to close, and the same as one square or round hole. */
export interface WorkedHole {
  readonly seal: BlockOf<typeof leakageToSeal | typeof areaToSeal>
  readonly sizes: BlockOf<typeof holeSizes>
}

export interface WorkedToSeal {
  readonly criterion: WorkedCriterion
  readonly now: WorkedHole
  /** With the ageing allowances, in the order of the criterion's own. */
  readonly aged: readonly { readonly growth: number; readonly hole: WorkedHole }[]
}

export interface WorkedRound {
  readonly before: EarlierTest
  readonly compared: BlockOf<typeof ratesCompared>
  /** The hole that was closed; where leakage grew, the one that was opened. */
  readonly hole: WorkedHole
}

/** A leak log worked out. */
export interface WorkedLeaks {
  /** Sharp-edged hole that would carry the whole leakage at 50 Pa. */
  readonly whole: WorkedHole
  /** Rows are the leaks that have a size, in the order of `sized`. */
  readonly flows?: BlockOf<typeof flowThroughHoles>
  readonly sized: readonly Leak[]
  readonly toSeal: readonly WorkedToSeal[]
  readonly rounds: readonly WorkedRound[]
  /** First pressurisation, second depressurisation; present where both were run. */
  readonly directions?: { readonly compared: BlockOf<typeof ratesCompared>; readonly hole: WorkedHole }
}

/** Works out the leaks of a test that has been worked out, in the same calculation. */
export function workLeaks(test: WorkedTest, log: LeakLog, at = 'leaks'): WorkedLeaks {
  const { calculation } = test
  const rate = test.means.get(COMPARED_AT_PA)?.rate
  if (!rate) throw new RangeError(`nothing calculated at ${COMPARED_AT_PA} Pa`)
  const now = rate.ref('q_pr')
  const whole = between(calculation, 'leaks.whole', 'Total leakage', now, byRule(0, 'no leakage'))
  const areas = workAreas(calculation, log, at)
  const sized = log.list.filter((leak) => areas.has(leak))
  const flows =
    sized.length === 0
      ? undefined
      : calculation.add('leaks.flows', 'Leaks as logged', flowThroughHoles, {
          A_h: columnOf(sized.map((leak) => areas.get(leak) as Given)),
          dp_r: byRule(COMPARED_AT_PA, 'pressure for comparing leaks'),
          A_q: whole.seal.ref('A_s'),
        })
  const directions = workDirections(test)
  return {
    whole,
    ...(flows && { flows }),
    sized,
    toSeal: test.criteria.map((criterion) => workToSeal(calculation, criterion)),
    rounds: workRounds(calculation, log, at, now),
    ...(directions && { directions }),
  }
}

/** The hole that makes the difference between two leakage rates, larger first. */
function between(
  calculation: Calculation,
  id: string,
  title: string,
  larger: Given,
  smaller: Given,
): WorkedHole {
  const seal = calculation.add(id, title, leakageToSeal, {
    v: larger,
    L: smaller,
    B: byRule(1, 'an air flow itself'),
    dp_r: byRule(COMPARED_AT_PA, 'pressure for comparing leaks'),
  })
  return { seal, sizes: sizes(calculation, seal, title) }
}

const sizes = (calculation: Calculation, seal: WorkedHole['seal'], title: string): WorkedHole['sizes'] =>
  calculation.add(`${seal.id}.size`, `${title}, as one hole`, holeSizes, { A_s: seal.ref('A_s') })

function workToSeal(calculation: Calculation, criterion: WorkedCriterion): WorkedToSeal {
  const { value, toSeal, ageing, quantity } = criterion
  const isOfArea = toSeal.chapter === areaToSeal
  return {
    criterion,
    now: { seal: toSeal, sizes: sizes(calculation, toSeal, `Leakage to seal: ${quantity}`) },
    aged: ageing.map((age) => {
      const title = `Leakage to seal allowing ${age.value('g') * 100} % for ageing: ${quantity}`
      const limit = calculation.add(`${age.id}.limit`, `${title}, limit`, limitBeforeAgeing, {
        L: value.ref('L'),
        g: age.ref('g'),
      })
      const seal = calculation.add(`${age.id}.seal`, title, isOfArea ? areaToSeal : leakageToSeal, {
        v: value.ref('v'),
        L: limit.ref('L_g'),
        B: toSeal.ref('B'),
        dp_r: toSeal.ref('dp_r'),
      })
      return { growth: age.value('g'), hole: { seal, sizes: sizes(calculation, seal, title) } }
    }),
  }
}

function workRounds(calculation: Calculation, log: LeakLog, at: string, now: Given): WorkedRound[] {
  const earlier = log.earlierTests ?? []
  const rates = earlier.map(({ airLeakageRate50_m3_h }, i) =>
    fromRecord(`${at}.earlierTests[${i}].airLeakageRate50_m3_h`, airLeakageRate50_m3_h),
  )
  return earlier.map((before, i) => {
    const first = rates[i] as Given
    const second = rates[i + 1] ?? now
    const title = `Repair round ${i + 1}`
    const [larger, smaller] = first.value >= second.value ? [first, second] : [second, first]
    return {
      before,
      compared: calculation.add(`leaks.round${i + 1}`, title, ratesCompared, { q_a: first, q_b: second }),
      hole: between(calculation, `leaks.round${i + 1}.hole`, title, larger, smaller),
    }
  })
}

function workDirections({ calculation, runs }: WorkedTest): WorkedLeaks['directions'] {
  const [plus, minus] = (['pressurisation', 'depressurisation'] as const).map((direction) =>
    runs
      .find((run) => run.direction === direction)
      ?.at.get(COMPARED_AT_PA)
      ?.rate.ref('q_pr'),
  )
  if (!plus || !minus) return undefined
  const title = 'Pressurisation and depressurisation'
  const [larger, smaller] = plus.value >= minus.value ? [plus, minus] : [minus, plus]
  return {
    compared: calculation.add('leaks.directions', title, ratesCompared, { q_a: plus, q_b: minus }),
    hole: between(calculation, 'leaks.directions.hole', title, larger, smaller),
  }
}

/** Area of every leak that has a size. */
function workAreas(calculation: Calculation, { list }: LeakLog, at: string): Map<Leak, Given> {
  const members = list.map((leak, i) => ({
    leak,
    path: `${at}.list[${i}]`,
    taken: takenFor(leak, `${at}.list[${i}]`),
  }))
  const areas = new Map<Leak, Given>()
  const family = (id: string, title: string, chapter: typeof gaps, kind: string): void => {
    const own = members.filter(({ taken }) => taken?.kind === kind)
    if (own.length === 0) return
    const symbols = Object.keys(own[0]?.taken?.cells ?? {})
    const columns = symbols.map((symbol) => [
      symbol,
      columnOf(own.map(({ taken }) => taken?.cells[symbol] as Given)),
    ])
    const block = calculation.add(id, title, chapter, {
      z: columnOf(
        own.map(({ leak, path }) =>
          leak.count === undefined ? byRule(1, 'one of them') : fromRecord(`${path}.count`, leak.count),
        ),
      ),
      ...Object.fromEntries(columns),
    })
    own.forEach(({ leak }, row) => {
      areas.set(leak, block.refRow('A_h', row))
    })
  }
  family('leaks.round', 'Leaks: round holes', roundHoles, 'round')
  family('leaks.gaps', 'Leaks: gaps', gaps, 'gap')
  family('leaks.areas', 'Leaks: areas as estimated', estimatedHoles, 'area')
  return areas
}

interface Taken {
  readonly kind: 'round' | 'gap' | 'area'
  readonly cells: Readonly<Record<string, Given>>
}

function takenFor({ size }: Leak, path: string): Taken | undefined {
  if (!size) return undefined
  const { words, width_mm, diameter_mm, area_cm2, length_m } = size
  const at = `${path}.size`
  const word = words && sizeWords[words]
  const said = (value: number) => byRule(value, `"${words ?? ''}" means ${word?.likeness ?? ''}`)
  if (area_cm2 !== undefined) return { kind: 'area', cells: { A_e: fromRecord(`${at}.area_cm2`, area_cm2) } }
  if (diameter_mm !== undefined)
    return { kind: 'round', cells: { d_h: fromRecord(`${at}.diameter_mm`, diameter_mm) } }
  if (word && 'diameter_mm' in word) return { kind: 'round', cells: { d_h: said(word.diameter_mm) } }
  const width = width_mm === undefined ? word && said(word.width_mm) : fromRecord(`${at}.width_mm`, width_mm)
  if (!width || length_m === undefined) return undefined
  return { kind: 'gap', cells: { w_g: width, l_g: fromRecord(`${at}.length_m`, length_m) } }
}

/** What a size said in words is taken for. Source of all: common practice, no source. */
export type TakenFor = { readonly diameter_mm: number } | { readonly width_mm: number }

export const sizeWords: Readonly<Record<SizeWord, TakenFor & { readonly likeness: string }>> = {
  pinhole: { diameter_mm: 1, likeness: 'round, 1 mm' },
  pencil: { diameter_mm: 7, likeness: 'round, 7 mm, a pencil goes through' },
  finger: { diameter_mm: 20, likeness: 'round, 20 mm, a finger goes in' },
  fist: { diameter_mm: 90, likeness: 'round, 90 mm, a fist goes in' },
  'hairline gap': { width_mm: 0.2, likeness: '0.2 mm wide, barely visible' },
  'card gap': { width_mm: 0.8, likeness: '0.8 mm wide, a plastic card goes in' },
  'pencil gap': { width_mm: 7, likeness: '7 mm wide, a pencil goes in' },
  'finger gap': { width_mm: 20, likeness: '20 mm wide, a finger goes in' },
}
