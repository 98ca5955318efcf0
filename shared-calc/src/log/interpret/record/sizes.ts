import { fieldText } from '../../../catalogue/findings/log/fields.js'
import { valueReasons } from '../../../catalogue/findings/log/runs.js'
import { questions } from '../../../catalogue/questions.js'
import { placeWords } from '../../../contract/record/index.js'
import { plausibleRanges } from '../../../contract/record/plausible.js'
import { type KnownUnit, shown, toRecordUnit } from '../../cells/units.js'
import type { Written } from '../../cells/written.js'
import type { FoundField } from '../fields/found-field.js'
import type { Sides } from '../fields/sides.js'
import type { Unread } from '../fields/unread-volume.js'
import type { Choice } from '../interpretation.js'
import type { FieldScope } from '../tests/scope.js'
import { says } from '../words/label.js'
import { areaOf } from './areas.js'
import type { Draft } from './draft.js'
import { answeredUnit, put } from './put-field.js'

const VOLUME = 'building.volume_m3'
const M3: KnownUnit = { kind: 'volume', unit: 'm^3' }
const FT3: KnownUnit = { kind: 'volume', unit: 'cuft' }

/** The volume of a rooms table added up, offered where nothing else states one. */
export interface Rooms {
  sum: { value: number; unit?: KnownUnit }
  cells: string
  count: number
}

/** What a volume may be taken from where none is stated. */
export interface Offered {
  readonly rooms: Rooms | undefined
  readonly sides: () => Sides | undefined
  readonly unread: () => Unread | undefined
}

/** What the log says of its volume: settled, or waiting for the results of the log to prove its unit. */
export interface VolumeFound {
  /** Logged number whose unit nothing states. */
  open?: { value: number; field: FoundField }
}

/** Envelope area, floor area, height, then the volume, which they help to understand. */
export function putSizes(draft: Draft, scope: FieldScope, offered: Offered, american: boolean): VolumeFound {
  const envelope = putSize(draft, scope, 'envelopeArea', 'building.envelopeArea_m2')
  putSize(draft, scope, 'lossArea', 'building.lossArea_m2')
  const floor = putSize(draft, scope, 'floorArea', 'building.floorArea_m2')
  tellUnknownAreas(draft, scope)
  putSize(draft, scope, 'height', 'building.height_m')
  putSize(draft, scope, 'altitude', 'building.altitude_m')
  for (const path of ['building.volumeBasis', 'building.volumeUncertainty_m3', 'building.largeBuilding']) {
    const typed = draft.answered(path)
    if (typed !== undefined) draft.put(path, typed)
  }
  return putVolume(draft, scope, offered, american, envelope, floor)
}

function putSize(
  draft: Draft,
  scope: FieldScope,
  name: 'envelopeArea' | 'lossArea' | 'floorArea' | 'height' | 'altitude',
  path: string,
): number | undefined {
  const given = draft.answered(path)
  if (given !== undefined) {
    draft.put(path, given)
    return Number(given)
  }
  const all = scope.all(name).filter(({ content }) => content.kind === 'number')
  const field = name === 'envelopeArea' || name === 'floorArea' ? areaOf(draft, all, name, path) : all[0]
  if (field?.content.kind !== 'number') return undefined
  const unit = field.content.written.unit ?? field.unit
  const kind = path.endsWith('_m2') ? 'area' : 'length'
  if (!unit || unit.kind !== kind) {
    draft.uses.push({
      cells: field.cell,
      heading: field.label.text,
      ignoredBecause: valueReasons.noUnit,
    })
    draft.tell(fieldText('log-left-out/no-unit', { label: field.label.text }), field.cell, path)
    return undefined
  }
  const value = draft.quantity(field.content.written, unit, field.cell, path)
  if (!(value > 0)) return undefined
  put(draft, field, path, value)
  return value
}

/** Areas whose labels say neither floor nor envelope. */
function tellUnknownAreas(draft: Draft, scope: FieldScope): void {
  const areas = scope.all('area').filter(({ content }) => content.kind === 'number')
  if (areas.length === 0) return
  const labels = [...new Set(areas.map(({ label }) => label.text))]
  draft.tell(
    fieldText('log-left-out/areas', {
      labels: labels.slice(0, MOST_NAMED),
      more: labels.length > MOST_NAMED,
    }),
    areas.map(({ cell }) => cell),
    'building',
  )
}

/** So many labels are named. */
const MOST_NAMED = 4

/** As large as a tested volume is, where a unit says how large it is. */
const isOfABuilding = ({ value, unit }: Ranked): boolean =>
  unit?.kind !== 'volume' || toRecordUnit(value, unit) >= plausibleRanges['building.volume_m3'].lowest

interface Ranked {
  field: FoundField
  written: Written
  value: number
  unit: KnownUnit | undefined
  rank: number
}

function rank({ label }: FoundField): number {
  if (says(label, 'gross') && !says(label, 'net'))
    return label.tokens.some((token) => /^(gross|brut|brutto|bruto|lordo|external|outer)/.test(token)) ? 0 : 1
  if (
    label.tokens.some((token) =>
      /^(gross|brut|brutto|bruto|lordo|external|outer|heat|below|garage|attic|loft|cellar|basement)$/.test(
        token,
      ),
    )
  )
    return 0
  if (label.tokens.some((token) => /^(net|netto|netta|neto)$/.test(token)) || /netto/.test(label.padded))
    return 4
  if (says(label, 'room')) return 0.5
  // "Volume used for the calculation" is the one that its keeper chose.
  if (label.tokens.includes('used')) return 4
  return says(label, 'net') ? 3 : 2
}

function putVolume(
  draft: Draft,
  scope: FieldScope,
  { rooms, sides, unread }: Offered,
  american: boolean,
  envelope: number | undefined,
  floor: number | undefined,
): VolumeFound {
  const given = draft.answered(VOLUME)
  if (given !== undefined) {
    draft.put(VOLUME, given)
    return {}
  }
  const found = scope
    .all('volume')
    .flatMap((field): Ranked[] =>
      field.content.kind === 'number' && field.content.written.value > 0
        ? [
            {
              field,
              written: field.content.written,
              value: field.content.written.value,
              unit: field.content.written.unit ?? field.unit,
              rank: rank(field),
            },
          ]
        : [],
    )
    .sort((a, b) => b.rank - a.rank)
  const [best] = found
  const product = best || rooms ? undefined : sides()
  if (product?.isLabelled) {
    draft.tell(fieldText('log-volume-of-sides', product), product.cell, VOLUME)
    draft.put(VOLUME, toRecordUnit(product.amount, product.unit === 'm³' ? M3 : FT3), product.cell)
    draft.use(product.cell, 'volume', placeWords(VOLUME, {}), VOLUME)
    return {}
  }
  if (product) {
    draft.ask({ path: VOLUME, cells: [product.cell], ...questions.volumeOfSides(product) })
    return {}
  }
  if (!best) {
    const sum = rooms && {
      sum: rooms.sum.value,
      unit: rooms.sum.unit && shown(rooms.sum.unit.unit),
      typed: rooms.sum.unit && `${rooms.sum.value} ${rooms.sum.unit.unit === 'cuft' ? 'ft3' : 'm3'}`,
      count: rooms.count,
    }
    const unstored = draft.unstoredCell('volume')
    const text = rooms ? undefined : unread()
    const cells = rooms ? [rooms.cells] : (text?.cell ?? unstored ?? [])
    draft.ask({
      path: VOLUME,
      cells: [cells].flat(),
      ...questions.volume({ rooms: sum, unread: text, unstored }),
    })
    return {}
  }
  const others = found.filter((one) => one !== best && one.rank >= 1 && !agree(one, best))
  // "Ground floor", "first floor" and their total.
  const parts = addUpTo(others, best) ? others : []
  // "Tank | 300 l" is no house.
  const rivals = others.filter(
    (one) =>
      one.rank > best.rank - 1.5 && !parts.includes(one) && (isOfABuilding(one) || !isOfABuilding(best)),
  )
  if (best.rank < 1 || rivals.length > 0) {
    const all = best.rank < 1 ? found : [best, ...rivals]
    draft.ask({
      path: VOLUME,
      cells: all.map(({ field }) => field.cell),
      ...questions.whichVolume({
        only: best.rank < 1 ? best.field.label.text : undefined,
        choices: choicesOf(all),
      }),
    })
    return {}
  }
  for (const other of found.slice(1)) if (!agree(other, best)) ignoreVolume(draft, other, best)
  // "Volume (ft³) | 437 | m³"
  const isTwice = best.field.rivalUnit?.kind === 'volume'
  if (isTwice && draft.answers['volume.unit'] === undefined) {
    draft.ask(volumeUnitQuestion(best, american))
    return {}
  }
  const unit =
    best.unit?.kind === 'volume' && !isTwice
      ? best.unit
      : (answeredUnit(draft, 'volume.unit', best.field.cell) ?? provenByShape(draft, best, envelope, floor))
  if (unit) {
    put(draft, best.field, VOLUME, draft.quantity(best.written, unit, best.field.cell, VOLUME))
    return {}
  }
  if (best.unit && best.unit.kind !== 'volume') {
    draft.ask(volumeUnitQuestion(best, american))
    return {}
  }
  return { open: { value: best.value, field: best.field } }
}

/** Each volume as it may be typed, and where floors are listed without a total, all of them together. */
function choicesOf(all: readonly Ranked[]): Choice[] {
  const choices = all.map(({ value, unit, field }): Choice => {
    const known = unit?.kind === 'volume' && unit.unit !== 'cuft' ? toRecordUnit(value, unit) : value
    const typed = unit?.unit === 'cuft' ? 'ft3' : 'm3'
    const amount = Number(known.toPrecision(10))
    return {
      value: `${amount} ${typed}`,
      label: `${amount} ${shown(typed === 'ft3' ? 'cuft' : 'm^3')}`,
      reason: `"${field.label.text}" in ${field.cell}`,
    }
  })
  const unit = all[0]?.unit
  const isAlike =
    unit?.kind === 'volume' && all.every((one) => one.unit?.unit === unit.unit && one.rank === all[0]?.rank)
  if (!isAlike || all.length < 2) return choices
  const sum = all.reduce((total, one) => total + toRecordUnit(one.value, unit), 0)
  const amount = Number(sum.toPrecision(8))
  return [...choices, { value: `${amount} m3`, label: `${amount} m³`, reason: 'all of them together' }]
}

/** Whether two or more values are the parts of another, to half a per cent. */
function addUpTo(parts: readonly Ranked[], whole: Ranked): boolean {
  const units = new Set([whole, ...parts].map(({ unit }) => unit?.unit))
  const sum = parts.reduce((total, { value }) => total + value, 0)
  return parts.length >= 2 && units.size === 1 && Math.abs(sum / whole.value - 1) < 0.005
}

function ignoreVolume(draft: Draft, { field, value, unit }: Ranked, best: Ranked): void {
  const why = rank(field) < 1 ? valueReasons.notInternal : valueReasons.otherVolume(best.field.label.text)
  draft.uses.push({ cells: field.cell, heading: field.label.text, ignoredBecause: why })
  draft.tell(
    fieldText('log-left-out/volume', {
      label: field.label.text,
      value,
      unit: unit && shown(unit.unit),
      why,
    }),
    field.cell,
    VOLUME,
  )
}

const agree = (one: Ranked, other: Ranked): boolean => {
  const inM3 = ({ value, unit }: Ranked) => (unit?.kind === 'volume' ? toRecordUnit(value, unit) : value)
  return Math.abs(inM3(one) / inM3(other) - 1) < 0.005
}

/**
 * The area around a volume is 4.84 to about 12 times its two-thirds power (a sphere has 4.84); a house is 1.8 to 8 m high over its
 * floors. In the wrong unit either is out by a factor of ten. Geometry, no source.
 */
function provenByShape(
  draft: Draft,
  { value, field }: Ranked,
  envelope: number | undefined,
  floor: number | undefined,
): KnownUnit | undefined {
  const fits = (unit: KnownUnit): boolean => {
    const volume = toRecordUnit(value, unit)
    const shape = envelope === undefined ? undefined : envelope / volume ** (2 / 3)
    const height = floor === undefined ? undefined : volume / floor
    return (
      (shape === undefined || (shape > 4.8 && shape < 14)) &&
      (height === undefined || (height > 1.7 && height < 12)) &&
      (shape ?? height) !== undefined
    )
  }
  const fitting = [M3, FT3].filter(fits)
  const [only] = fitting
  if (fitting.length !== 1 || !only) return undefined
  const by = envelope === undefined ? 'floor area' : 'envelope area'
  draft.tell(fieldText('log-unit-proven/volume', { value, unit: shown(only.unit), by }), field.cell, VOLUME)
  return only
}

export function volumeUnitQuestion(
  { value, field }: { value: number; field: FoundField },
  american: boolean,
) {
  return {
    path: 'volume.unit',
    cells: [field.cell],
    ...questions.volumeUnit({ value, feetFirst: american || value > 5000 }),
  }
}
