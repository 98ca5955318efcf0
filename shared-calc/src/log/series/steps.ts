/** How a log says which samples belong together. */
export interface Steps {
  /** Which stretch of one marker a sample is in. */
  readonly blocks: Uint32Array
  /** 1 where the log names other samples as those of a step, but not this one. */
  readonly between: Uint8Array
}

/** With fewer samples marked, a marker is an event: it begins a step. Own choice, no source. */
const MARKED = 0.3

/**
 * The steps of a series by the markers beside its samples, blank ones undefined: each stretch of one marker is a step, and what has none
 * lies between. Where a few samples only are marked, each marker begins a step.
 */
export function stepsOf(markers: readonly (string | undefined)[]): Steps {
  const marked = markers.filter((one) => one !== undefined).length
  const areEvents = marked < MARKED * markers.length
  const blocks = new Uint32Array(markers.length)
  const between = new Uint8Array(markers.length)
  let block = 0
  for (const [index, marker] of markers.entries()) {
    if (areEvents ? marker !== undefined : marker !== markers[index - 1]) block++
    blocks[index] = block
    between[index] = !areEvents && marker === undefined ? 1 : 0
  }
  return { blocks, between }
}
