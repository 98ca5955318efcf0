import type { Solid, Space, TakeOff } from '@draughtbook/shared-calc'

/** A space that counts everywhere, with 0.01 m on each length unless said otherwise. */
export const space = (solid: Solid, more: Partial<Space> = {}): Space => ({
  name: 'invented room',
  countsIn: 'both',
  use: 'add',
  countsAsFloor: true,
  lengthUncertainty_m: 0.01,
  solid,
  ...more,
})

export const box = (length_m: number, width_m: number, height_m: number): Solid => ({
  shape: 'box',
  length_m,
  width_m,
  height_m,
})

export const takeOffOf = (spaces: Space[], more: Partial<TakeOff> = {}): TakeOff => ({
  spaces,
  scaleUncertainty: 0,
  ...more,
})
