import { results } from '../../catalogue/figures.js'
import { didYouMean, nearest, nearestFirst } from '../../contract/nearest.js'
import { InputError } from '../../contract/problem.js'
import { pressureByName, TargetQuantity, type TestRecord } from '../../contract/record/index.js'
import { sourceText } from '../../engine/index.js'
import { type LimitRule, type TargetPreset, targetPresets } from '../../targets/index.js'
import type { DefiniteTarget } from './worked-test.js'

/** n, qE, qF, qT, q or aE: what the quantity is related to, or is the area of. */
export type Basis = 'n' | 'qE' | 'qF' | 'qT' | 'q' | 'aE'

const bases = Object.fromEntries(
  TargetQuantity.options.map((quantity) => [quantity, quantity.replace(/(?:50|10|_pr)$/, '')]),
) as Readonly<Record<TargetQuantity, Basis>>

export const basisOf = (quantity: TargetQuantity): Basis => bases[quantity]

const units: Readonly<Record<Basis, string>> = {
  n: results.n50.unit,
  qE: results.qE50.unit,
  qF: results.qF50.unit,
  qT: results.qE50.unit,
  q: results.q50.unit,
  aE: 'cm2/m2',
}
export const unitOf = (quantity: TargetQuantity): string => units[basisOf(quantity)]

const needs = {
  n: 'volume_m3',
  qE: 'envelopeArea_m2',
  qF: 'floorArea_m2',
  qT: 'lossArea_m2',
  aE: 'envelopeArea_m2',
} as const

/** What a target depends on: it is known before there are readings. */
type Asked = Pick<TestRecord, 'target' | 'building'>

/**
 * The limits that count for this building.
 * @throws InputError for an unknown preset, or when the building lacks what a limit is related to
 */
export function definiteTarget(record: Asked): DefiniteTarget | undefined {
  const { target } = record
  if (!target) return undefined
  return 'preset' in target ? fromPreset(record, target) : fromOwn(record, target)
}

/** The limits that can be held against already while a test is under way: those whose volume and basis are known. */
export function limitsSoFar(record: Asked): Pick<DefiniteTarget, 'limits' | 'satisfiedBy'> {
  try {
    return definiteTarget(record) ?? { limits: [], satisfiedBy: 'all' }
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    const { target, building } = record
    const preset = targetPresets.find(({ id }) => target && 'preset' in target && id === target.preset)
    const { limits = [], satisfiedBy = 'all' } = preset ?? {}
    const counting =
      preset && building.volume_m3 !== undefined
        ? limitsFor(preset, building.volume_m3)
        : limits.filter(({ when }) => when === undefined)
    return {
      limits: counting.filter(({ quantity }) => missingBasis(record, quantity) === undefined),
      satisfiedBy,
    }
  }
}

type Chosen = Extract<NonNullable<TestRecord['target']>, { preset: string }>

function fromPreset(record: Asked, { preset: id, directions, sampled = false }: Chosen): DefiniteTarget {
  const preset = targetPresets.find((candidate) => candidate.id === id)
  if (!preset) {
    const known = targetPresets.map((candidate) => candidate.id)
    throw new InputError([
      {
        path: 'target.preset',
        message: `there is no target "${id}"${didYouMean(nearest(id, known)) || '.'} Known targets: ${nearestFirst(id, known)}`,
      },
    ])
  }
  if (sampled && !preset.sampling)
    throw new InputError([
      { path: 'target.sampled', message: `target "${preset.label}" has no factor for tested samples` },
    ])
  const limits = withBasis(record, preset, limitsFor(preset, record.building.volume_m3))
  const [main] = limits
  if (!main)
    throw new InputError([
      { path: 'target.preset', message: `target "${id}" has no limit for a building of this volume` },
    ])
  return {
    limits,
    satisfiedBy: preset.satisfiedBy,
    preset,
    ...(sampled && preset.sampling && { sampling: preset.sampling }),
    target: {
      preset: id,
      label: preset.label,
      quantity: main.quantity,
      limit: main.limit,
      unit: unitOf(main.quantity),
      referencePressure_Pa: main.referencePressure_Pa,
      directions: directions ?? preset.directions,
      ...(preset.volumeBasis && { volumeBasis: preset.volumeBasis }),
      ...(preset.decimalPlaces !== undefined && { decimalPlaces: preset.decimalPlaces }),
      source: sourceText(main.source),
    },
  }
}

function limitsFor(preset: TargetPreset, volume: number | undefined): LimitRule[] {
  return preset.limits.filter(({ when }) => {
    if (!when) return true
    if (volume === undefined)
      throw new InputError([
        {
          path: 'building.volume_m3',
          message: `internal volume is missing: target "${preset.label}" depends on it`,
        },
      ])
    const { atLeast_m3 = 0, above_m3 = 0, upTo_m3 = Number.POSITIVE_INFINITY } = when
    return volume >= atLeast_m3 && volume > above_m3 && volume <= upTo_m3
  })
}

/** The limits whose basis the building has; where any one limit is enough, the others fall away. */
function withBasis(record: Asked, { satisfiedBy }: TargetPreset, limits: readonly LimitRule[]): LimitRule[] {
  const usable = limits.flatMap((rule): LimitRule[] => {
    if (missingBasis(record, rule.quantity) === undefined) return [rule]
    const { standIn } = rule
    if (standIn && missingBasis(record, standIn) === undefined) return [{ ...rule, quantity: standIn }]
    return []
  })
  if (usable.length === limits.length || (satisfiedBy === 'any' && usable.length > 0)) return usable
  for (const { quantity } of limits) refuseMissingBasis(record, quantity)
  return usable
}

function fromOwn(
  record: Asked,
  target: Exclude<TestRecord['target'], undefined | { preset: string }>,
): DefiniteTarget {
  const reference = target.referencePressure_Pa ?? pressureByName(target.quantity) ?? 50
  const source = { text: 'target set by the user', seen: 'definition' } as const
  refuseMissingBasis(record, target.quantity)
  return {
    limits: [{ quantity: target.quantity, limit: target.limit, referencePressure_Pa: reference, source }],
    satisfiedBy: 'all',
    target: {
      label: target.label ?? `${target.quantity} ≤ ${target.limit}`,
      quantity: target.quantity,
      limit: target.limit,
      unit: unitOf(target.quantity),
      referencePressure_Pa: reference,
      directions: target.directions ?? 'mean',
      ...(target.volumeBasis && { volumeBasis: target.volumeBasis }),
      ...(target.decimalPlaces !== undefined && { decimalPlaces: target.decimalPlaces }),
      source: source.text,
    },
  }
}

type BasisField = (typeof needs)[keyof typeof needs]

/** The field that a quantity needs and the building lacks. */
function missingBasis({ building }: Asked, quantity: TargetQuantity): BasisField | undefined {
  const basis = basisOf(quantity)
  if (basis === 'q') return undefined
  return building[needs[basis]] === undefined ? needs[basis] : undefined
}

function refuseMissingBasis(record: Asked, quantity: TargetQuantity): void {
  const field = missingBasis(record, quantity)
  if (field)
    throw new InputError([
      {
        path: `building.${field}`,
        message: `it is missing; the target needs it for ${quantity}`,
        missing: true,
      },
    ])
}
