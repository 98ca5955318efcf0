import { counted } from '../../catalogue/words.js'
import { InputError } from '../../contract/problem.js'
import type { TargetQuantity } from '../../contract/record/index.js'
import { type BlockOf, byRule, Calculation, type Column, columnOf, type Given } from '../../engine/index.js'
import { basisOf } from '../../evaluation/work/definite-target.js'
import {
  correctionOfHomes,
  meanOfHomes,
  ownOfHomes,
  sampleOfHomes,
  sharedByHomes,
  uncertaintyOfHomes,
} from '../../formulas/building-of-homes.js'
import { conformity } from '../../formulas/uncertainty-budget.js'
import { comparison, sampledValue } from '../../formulas/verdict.js'
import { targetPresets } from '../../targets/index.js'
import { basisFields, type GivenHome, homesTargetText, limitText, type TestedHome, workHome } from './home.js'
import { type Contributions, contributionsOf } from './shared-causes.js'

/** How the figures of the homes become one. */
export const buildingRules = ['each', 'summed', 'volume', 'envelope', 'floor'] as const
export type BuildingRule = (typeof buildingRules)[number]

export const ruleWords: Readonly<Record<BuildingRule, string>> = {
  each: 'each home by itself',
  summed: 'sum of the flows at the same pressure',
  volume: 'mean weighted by volume',
  envelope: 'mean weighted by envelope area',
  floor: 'mean weighted by floor area',
}

export interface BuildingRequest {
  readonly name: string
  readonly homes: readonly GivenHome[]
  /** Left out: as the target's scheme does; else each home by itself. */
  readonly rule?: BuildingRule
  /** Homes in the building; left out: those given. */
  readonly homesInBuilding?: number
  /** Size of the sample and extra homes to test for each home that fails; left out: as the target's scheme says. */
  readonly sampleSize?: number
  readonly morePerMiss?: number
}

/** One way to put the homes together, worked out. */
export interface WorkedWay {
  readonly rule: Exclude<BuildingRule, 'each'>
  readonly mean: BlockOf<typeof meanOfHomes>
  readonly uncertainty: BlockOf<typeof uncertaintyOfHomes>
  /** The factor of the scheme for a sample, where it was used. */
  readonly sampled?: BlockOf<typeof sampledValue>
  readonly comparison: BlockOf<typeof comparison>
  readonly probability: BlockOf<typeof conformity>
}

export interface WorkedBuilding {
  readonly calculation: Calculation
  readonly homes: readonly TestedHome[]
  readonly rule: BuildingRule
  /** Whether the rule was asked for, or follows from the target. */
  readonly ruleFrom: 'asked for' | 'the scheme of the target' | 'no rule of the target'
  readonly ways: readonly WorkedWay[]
  readonly sample?: BlockOf<typeof sampleOfHomes>
  readonly contributions: Contributions
  readonly homesInBuilding: number
}

const isBasis = ({ target }: TestedHome, rule: keyof typeof weightFields): boolean =>
  basisFields[basisOf(target.quantity) as keyof typeof basisFields] === weightFields[rule]

/** Summed, and weighted by everything else that homes have. */
const rulesFor = (home: TestedHome): WorkedWay['rule'][] => [
  'summed',
  ...(['volume', 'envelope', 'floor'] as const).filter((rule) => !isBasis(home, rule)),
]

const weightFields = { volume: 'volume_m3', envelope: 'envelopeArea_m2', floor: 'floorArea_m2' } as const

/**
 * Works out several homes of one building.
 * @throws InputError where fewer than two homes are given, where their targets are not the same, or naming the file that cannot be used
 */
export function workBuilding(request: BuildingRequest): WorkedBuilding {
  const homes = withOneLimit(request.homes)
  const [first] = homes
  if (!first || homes.length < 2)
    throw new InputError([
      {
        path: '',
        message: `give the tests of at least two homes: ${homes.length === 0 ? 'none was' : 'only one was'} given`,
      },
    ])
  refuseOthers(homes, first)
  const calculation = new Calculation()
  const preset = presetOf(first)
  const homesInBuilding = request.homesInBuilding ?? homes.length
  if (homesInBuilding < homes.length)
    throw new InputError([
      {
        path: 'homesInBuilding',
        message: `the building has ${counted(homesInBuilding, 'home')}, but ${homes.length} tests were given`,
      },
    ])
  const contributions = contributionsOf(homes)
  const factor = homes.length < homesInBuilding ? preset?.sampling?.factor : undefined
  const ways = rulesFor(first).flatMap((rule) => {
    const weights = weightsOf(homes, rule)
    return weights ? [workWay(calculation, homes, rule, weights, contributions, factor)] : []
  })
  const asked = request.rule ?? (preset?.sampling ? 'summed' : 'each')
  // Weighted by what the figure is related to, the flows add up: the same as summed.
  const rule = asked !== 'each' && asked !== 'summed' && isBasis(first, asked) ? 'summed' : asked
  if (rule !== 'each' && !ways.some((way) => way.rule === rule))
    throw new InputError([
      {
        path: 'rule',
        message: `the rule "${rule}" (${ruleWords[rule]}) needs a value that some homes lack: enter it for every home`,
      },
    ])
  const size = request.sampleSize ?? sizeOf(preset?.sampling?.sizes, homesInBuilding)
  const more = request.morePerMiss ?? preset?.sampling?.morePerMiss ?? 0
  const misses = homes.filter(({ outcome }) => outcome !== 'meets').length
  return {
    calculation,
    homes,
    rule,
    ruleFrom:
      request.rule !== undefined
        ? 'asked for'
        : preset?.sampling
          ? 'the scheme of the target'
          : 'no rule of the target',
    ways,
    contributions,
    homesInBuilding,
    ...(size !== undefined && {
      sample: calculation.add('sample', 'Homes to be tested', sampleOfHomes, {
        N_h: field(homesInBuilding, 'building.homesInBuilding'),
        N_t: field(homes.length, 'building.tested'),
        N_f: field(misses, 'building.misses'),
        z_s: field(size, 'building.sampleSize'),
        z_f: field(more, 'building.morePerMiss'),
      }),
    }),
  }
}

/**
 * Every home against the same limit of the target: where different limits decide for different homes, the one that a home comes
 * nearest to, or misses by most.
 */
function withOneLimit(given: readonly GivenHome[]): TestedHome[] {
  const homes = given.map((home) => workHome(home))
  const [first] = homes
  if (!first || homes.every(({ target }) => target.quantity === first.target.quantity)) return homes
  const least = (quantity: TargetQuantity): number =>
    Math.min(...homes.map(({ margins }) => margins.get(quantity) ?? Number.POSITIVE_INFINITY))
  const [decisive] = [...first.margins.keys()]
    .filter((quantity) => homes.every(({ margins }) => margins.has(quantity)))
    .sort((a, b) => least(a) - least(b))
  return decisive === undefined ? homes : given.map((home) => workHome(home, decisive))
}

const presetOf = ({ record: { target } }: TestedHome) =>
  target && 'preset' in target ? targetPresets.find(({ id }) => id === target.preset) : undefined

const sizeOf = (
  sizes: readonly { readonly upToHomes?: number; readonly tests: number }[] | undefined,
  homes: number,
): number | undefined => sizes?.find(({ upToHomes = Infinity }) => homes <= upToHomes)?.tests

function refuseOthers(homes: readonly TestedHome[], first: TestedHome): void {
  const key = ({ target }: TestedHome) => JSON.stringify(target)
  const other = homes.find((home) => key(home) !== key(first))
  if (!other) return
  // Where any one limit meets a target, the one that a home keeps best decides for it.
  if (other.target.label === first.target.label && other.target.quantity !== first.target.quantity)
    throw new InputError([
      {
        path: other.file,
        message: `${limitText(other.target)} decides here, but ${limitText(first.target)} in ${first.file}: either limit is enough for this target, and a building needs the same limit for all homes. Enter one of them as a target of your own in every home`,
      },
    ])
  throw new InputError([
    {
      path: other.file,
      message: `its target (${homesTargetText(other.target)}) differs from that of ${first.file} (${homesTargetText(first.target)}): all homes of a building need the same target`,
    },
  ])
}

/** A number that is on sheet Homes. */
export const field = (value: number, path: string): Given => ({ value, origin: { kind: 'record', path } })

/** Weights of the homes; undefined where one has none. Summed: the basis of the figure, so that flows add up. */
function weightsOf(homes: readonly TestedHome[], rule: WorkedWay['rule']): Column | undefined {
  const given = homes.map((home, i) => {
    const value = rule === 'summed' ? home.basis : home.record.building[weightFields[rule]]
    return value === undefined ? undefined : field(value, `homes[${i}].${rule}`)
  })
  return given.every((one) => one !== undefined) ? columnOf(given) : undefined
}

function workWay(
  calculation: Calculation,
  homes: readonly TestedHome[],
  rule: WorkedWay['rule'],
  weights: Column,
  { shared, own }: Contributions,
  factor: number | undefined,
): WorkedWay {
  const words = rule === 'summed' ? 'summed at equal pressure' : `weighted by ${rule}`
  const mean = calculation.add(`${rule}.mean`, `Homes ${words}`, meanOfHomes, {
    r_h: columnOf(
      homes.map(({ decision }, i) => field(decision.budget.block.value('v'), `homes[${i}].figure`)),
    ),
    w_h: weights,
  })
  const share = (home: number) => mean.refRow('g_h', home)
  const reason = 'contribution from the budget of the home'
  const parts = shared.map(({ name, of, contributions }, i) =>
    calculation.add(`${rule}.shared${i + 1}`, `Homes ${words}: ${name} (${of})`, sharedByHomes, {
      g_h: columnOf(contributions.map(({ home }) => share(home))),
      c_h: columnOf(contributions.map(({ value }) => byRule(value, reason))),
    }),
  )
  const ownBlock = calculation.add(`${rule}.own`, `Homes ${words}: each home’s own`, ownOfHomes, {
    g_h: columnOf(own.map(({ home }) => share(home))),
    c_h: columnOf(own.map(({ value }) => byRule(value, reason))),
  })
  const correction = calculation.add(
    `${rule}.correction`,
    `Homes ${words}: expected correction`,
    correctionOfHomes,
    {
      g_h: mean.refColumn('g_h'),
      b_h: columnOf(homes.map(({ decision }) => byRule(decision.budget.block.value('b'), reason))),
      nu_h: columnOf(homes.map(({ decision }) => byRule(decision.budget.block.value('nu_e'), reason))),
    },
  )
  const uncertainty = calculation.add(
    `${rule}.uncertainty`,
    `Homes ${words}: uncertainty`,
    uncertaintyOfHomes,
    {
      v: mean.ref('v_u'),
      u_o: ownBlock.ref('u_o'),
      // A row of 0 keeps the column where nothing is shared.
      s_c: columnOf([...parts.map((part) => part.ref('s_c')), byRule(0, 'nothing else is shared')]),
      b: correction.ref('b'),
      nu_e: correction.ref('nu_e'),
    },
  )
  const sampled =
    factor === undefined
      ? undefined
      : calculation.add(`${rule}.sampled`, `Homes ${words}: a sample`, sampledValue, {
          v_u: mean.ref('v_u'),
          k_s: byRule(factor, 'factor of the scheme for a sample'),
        })
  const limit = field(homes[0]?.target.limit ?? 0, 'building.limit')
  const judged = sampled ? sampled.ref('v') : mean.ref('v_u')
  return {
    rule,
    mean,
    uncertainty,
    ...(sampled && { sampled }),
    comparison: calculation.add(`${rule}.comparison`, `Homes ${words}: against the target`, comparison, {
      v: judged,
      L: limit,
    }),
    probability: calculation.add(`${rule}.probability`, `Homes ${words}: probability`, conformity, {
      v: judged,
      L: limit,
      u_c: uncertainty.ref('u_c'),
      b: correction.ref('b'),
      nu_e: correction.ref('nu_e'),
    }),
  }
}
