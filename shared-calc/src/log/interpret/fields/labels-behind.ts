import { fromBelow, fromTheRight, type Mirrored } from '../grid/mirrored.js'
import type { View } from '../grid/view.js'
import type { Stopped } from '../not-searched.js'
import type { FieldName } from './classify.js'
import { findFields } from './find-fields.js'
import { type FormerColumn, formerColumns, takenWith } from './former-columns.js'
import type { FoundField } from './found-field.js'

type IsTaken = (row: number, column: number) => boolean

/** What a log needs besides its readings. */
const CORE: readonly FieldName[] = [
  'volume',
  'indoorTemperature',
  'outdoorTemperature',
  'temperatures',
  'barometer',
  'envelopeArea',
  'date',
]

/** So many core values more must be found behind or below by their labels than in front or above. */
const CLEARLY = 2
const FEWEST = 3

const worth = (fields: readonly FoundField[]): number =>
  CORE.filter((name) => fields.some((field) => field.name === name)).length

export interface FieldsOfSheet {
  readonly fields: readonly FoundField[]
  /** Set where the labels stand behind or below their values. */
  readonly mirrored?: Mirrored
  /** Values of an earlier test, which were left out. */
  readonly former: readonly FormerColumn[]
}

/**
 * The labelled values of a sheet. Labels stand in front of their values or above; where nearly nothing is found so, a sheet
 * that has them behind ("412 | m³ internal volume") or below is read that way.
 */
export function fieldsOfSheet(view: View, isOfTable: IsTaken, stopped: Stopped): FieldsOfSheet {
  const former = formerColumns(view).filter(({ top, column }) => !isOfTable(top + 1, column))
  const isTaken = takenWith(isOfTable, former)
  const fields = findFields(view, isTaken, stopped)
  const usual = worth(fields)
  if (usual >= FEWEST) return { fields, former }
  const [best] = [fromTheRight(view), fromBelow(view)]
    .map((mirrored) => ({ mirrored, fields: seenFrom(view, mirrored, isTaken, stopped) }))
    .sort((one, other) => worth(other.fields) - worth(one.fields))
  return best && worth(best.fields) >= Math.max(FEWEST, usual + CLEARLY)
    ? { ...best, former }
    : { fields, former }
}

const seenFrom = (
  view: View,
  { view: other, own }: Mirrored,
  isTaken: IsTaken,
  stopped: Stopped,
): FoundField[] =>
  findFields(other, takenFrom(own, isTaken), stopped).map((field) => ({
    ...field,
    view,
    ...own(field.row, field.column),
  }))

/** Taken cells as seen from the other side. */
export const takenFrom =
  (own: Mirrored['own'], isTaken: IsTaken): IsTaken =>
  (row, column) => {
    const at = own(row, column)
    return isTaken(at.row, at.column)
  }
