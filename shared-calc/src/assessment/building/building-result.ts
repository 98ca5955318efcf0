import type { Outcome } from '../../contract/record/index.js'
import { type BuildingFinding, buildingFindings } from './building-findings.js'
import type { HomeTarget } from './home.js'
import {
  type BuildingRequest,
  type BuildingRule,
  type WorkedBuilding,
  type WorkedWay,
  workBuilding,
} from './work-building.js'

export const BUILDING_FORMAT = 'draughtbook/building@1'

export interface BuildingHome {
  readonly file: string
  readonly name: string
  readonly testNumber?: string
  readonly date: string
  readonly adjoiningSpaces?: 'guarded' | 'unguarded'
  /** Value of the limited figure, and what it is related to. */
  readonly value: number
  readonly basis: number
  readonly outcome: Outcome
  readonly probability: number
}

/** The homes put together in one way. */
export interface BuildingWay {
  readonly rule: WorkedWay['rule']
  readonly value: number
  /** Ends of the 95 % interval of the value. */
  readonly interval95: readonly [number, number]
  /** Relative. */
  readonly standardUncertainty: number
  /** With the factor of a sample, where one was used. */
  readonly judged: number
  readonly margin: number
  readonly within: boolean
  readonly probability: number
}

/** A building of several homes. */
export interface BuildingResult {
  readonly format: typeof BUILDING_FORMAT
  readonly name: string
  readonly rule: BuildingRule
  readonly ruleFrom: WorkedBuilding['ruleFrom']
  readonly target: HomeTarget
  readonly homes: readonly BuildingHome[]
  readonly ways: readonly BuildingWay[]
  readonly outcome: Outcome
  /** Absent where each home is judged by itself. */
  readonly value?: number
  readonly sample?: { readonly required: number; readonly tested: number; readonly stillToTest: number }
  readonly findings: readonly BuildingFinding[]
}

/** Several homes of one building. Throws InputError as `workBuilding` does. */
export const assessBuilding = (request: BuildingRequest): BuildingResult =>
  buildingResult(request.name, workBuilding(request))

export function buildingResult(name: string, worked: WorkedBuilding): BuildingResult {
  const { homes, ways, rule, ruleFrom, sample } = worked
  const findings = buildingFindings(worked)
  const results = ways.map(wayOf)
  const chosen = results.find((way) => way.rule === rule)
  const [first] = homes
  if (!first) throw new RangeError('no homes')
  return {
    format: BUILDING_FORMAT,
    name,
    rule,
    ruleFrom,
    target: first.target,
    homes: homes.map(({ file, record: { building, test }, adjoiningSpaces, decision, basis, outcome }) => ({
      file,
      name: building.name,
      ...(test.id !== undefined && { testNumber: test.id }),
      date: test.date,
      ...(adjoiningSpaces && { adjoiningSpaces }),
      value: decision.budget.block.value('v'),
      basis,
      outcome,
      probability: decision.met.block.value(decision.met.symbol),
    })),
    ways: results,
    outcome: outcomeOf(worked, findings, chosen),
    ...(chosen && { value: chosen.judged }),
    ...(sample && {
      sample: {
        required: sample.value('N_n'),
        tested: homes.length,
        stillToTest: sample.value('N_m'),
      },
    }),
    findings,
  }
}

function outcomeOf(
  { homes }: WorkedBuilding,
  findings: readonly BuildingFinding[],
  chosen: BuildingWay | undefined,
): Outcome {
  if (findings.some(({ severity }) => severity === 'invalidates')) return 'not valid'
  const within = chosen ? chosen.within : homes.every(({ outcome }) => outcome === 'meets')
  return within ? 'meets' : 'misses'
}

function wayOf({ rule, mean, uncertainty, sampled, comparison, probability }: WorkedWay): BuildingWay {
  const margin = comparison.value('M')
  return {
    rule,
    value: mean.value('v_u'),
    interval95: [uncertainty.value('v_lo'), uncertainty.value('v_hi')],
    standardUncertainty: uncertainty.value('u_c'),
    judged: sampled ? sampled.value('v') : mean.value('v_u'),
    margin,
    within: margin >= 0,
    probability: probability.value('P_m'),
  }
}
