import { results } from '../../catalogue/figures.js'
import { InputError } from '../../contract/problem.js'
import type { JudgedTarget, TargetQuantity, TestRecord } from '../../contract/record/index.js'
import { sourceText } from '../../engine/index.js'
import { type LimitRule, type TargetPreset, targetPresets } from '../../targets/presets.js'
import type { DefiniteTarget } from './worked-test.js'

type Basis = 'n' | 'qE' | 'qF' | 'q'

/** n, qE, qF or q: what the quantity is related to. */
export const basisOf = (quantity: TargetQuantity): Basis => quantity.replace(/50$|_pr$/, '') as Basis

const figureOf = { n: results.n50, qE: results.qE50, qF: results.qF50, q: results.q50 } as const
export const unitOf = (quantity: TargetQuantity): string => figureOf[basisOf(quantity)].unit

const needs = { n: 'volume_m3', qE: 'envelopeArea_m2', qF: 'floorArea_m2' } as const

/** What a target depends on: it is known before there are readings. */
type Asked = Pick<TestRecord, 'target' | 'building'>

/**
 * The limits that count for this building.
 * @throws InputError for an unknown preset, or when the building lacks what a limit is related to
 */
export function definiteTarget(record: Asked): DefiniteTarget | undefined {
  const { target } = record
  if (!target) return undefined
  const definite = 'preset' in target ? fromPreset(record, target.preset, target.directions) : fromOwn(target)
  for (const { quantity } of definite.limits) refuseMissingBasis(record, quantity)
  return definite
}

function fromPreset(
  record: Asked,
  id: string,
  directions: JudgedTarget['directions'] | undefined,
): DefiniteTarget {
  const preset = targetPresets.find((candidate) => candidate.id === id)
  if (!preset) {
    const known = targetPresets.map((candidate) => candidate.id).join(', ')
    throw new InputError([
      { path: 'target.preset', message: `there is no target preset "${id}" (known: ${known})` },
    ])
  }
  const limits = limitsFor(preset, record.building.volume_m3)
  const [main] = limits
  if (!main)
    throw new InputError([{ path: 'target.preset', message: `target "${id}" has no limit for this volume` }])
  return {
    limits,
    target: {
      preset: id,
      label: preset.label,
      quantity: main.quantity,
      limit: main.limit,
      unit: unitOf(main.quantity),
      referencePressure_Pa: main.referencePressure_Pa,
      directions: directions ?? preset.directions,
      ...(preset.volumeBasis && { volumeBasis: preset.volumeBasis }),
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

function fromOwn(target: Exclude<TestRecord['target'], undefined | { preset: string }>): DefiniteTarget {
  const reference = target.referencePressure_Pa ?? 50
  const source = { text: 'target set by the user', seen: 'definition' } as const
  return {
    limits: [{ quantity: target.quantity, limit: target.limit, referencePressure_Pa: reference, source }],
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

function refuseMissingBasis({ building }: Asked, quantity: TargetQuantity): void {
  const basis = basisOf(quantity)
  if (basis === 'q') return
  const field = needs[basis]
  if (building[field] === undefined)
    throw new InputError([{ path: `building.${field}`, message: `missing: the target asks for ${quantity}` }])
}
