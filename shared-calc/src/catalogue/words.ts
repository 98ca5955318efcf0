import type { Direction } from '../contract/record/index.js'

/** A number as findings print it: at most `decimals` places, no trailing zeros. */
export const plain = (value: number, decimals = 2): string => String(Number(value.toFixed(decimals)))

/** A reading as findings name it: both runs have a reading 1. */
export const readingName = (direction: Direction, index: number): string =>
  `${direction}, reading ${index + 1}`
