import type { Direction } from '../../contract/record/index.js'
import type { Block } from '../grid/address.js'
import type { Question } from '../interpret/interpretation.js'

/** Cells somebody pointed at. `unit` is that of cells which do not say their own. */
export interface PickedCells {
  readonly sheet: string
  /** Places from 0, ends included. */
  readonly block: Block
  readonly unit?: string | undefined
}

/** A cell for one field of the record. */
export interface PickedField extends PickedCells {
  readonly path: string
}

export const listRoles = ['zeroFlowBefore', 'pressure', 'flow', 'devicePressure', 'zeroFlowAfter'] as const
export type ListRole = (typeof listRoles)[number]

/** Cells for one run: its lists, each a row or column of cells. */
export interface PickedLists extends Partial<Readonly<Record<ListRole, PickedCells>>> {
  readonly direction: Direction
  /** Cells that name the device's range of each reading, or one range for all. */
  readonly ranges?: PickedCells | undefined
  readonly range?: string | undefined
  /** How zero-flow pressures count where the readings have no minus sign: the answer to a question. */
  readonly zeroFlowSign?: string | undefined
}

/** A question about picked cells: nothing is read of the run until it is answered. */
export interface PickedQuestion extends Question {
  readonly direction: Direction
  /** The list whose unit is asked for; absent where the sign is. */
  readonly role?: ListRole
}
