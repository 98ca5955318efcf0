import type { Method } from './method.js'

/** A line is fitted through three points at least. */
const FOR_A_CURVE = 3

/** Fewest readings of a run that can be worked out by a method; a method that fits no line may do with fewer. */
export const fewestReadings = (method: Pick<Method, 'fewestReadings'> | undefined): number =>
  method?.fewestReadings ?? FOR_A_CURVE
