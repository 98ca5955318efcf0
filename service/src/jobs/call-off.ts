/**
 * A task that may be called off before it begins. Ending a thread costs the next caller its start, up to a second; so a task that
 * nobody wants any more is marked, and the thread that comes to it passes over it. Shared with the thread: one cell of memory.
 */
export type Flag = Int32Array<SharedArrayBuffer>

const WAITING = 0
const BEGUN = 1
const CALLED_OFF = 2

export const newFlag = (): Flag => new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT))

/** For the thread: whether it is to begin. */
export const begin = (flag: Flag): boolean => Atomics.compareExchange(flag, 0, WAITING, BEGUN) === WAITING

/** For the caller: whether it came in time; else the task has begun. */
export const callOff = (flag: Flag): boolean =>
  Atomics.compareExchange(flag, 0, WAITING, CALLED_OFF) === WAITING
