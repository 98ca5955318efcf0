/** One thing that stops a calculation, with the place it stands at. */
export interface Problem {
  /** Field path, as in `runs[0].readings[2].flow_m3_h`; empty for the whole input. */
  path: string
  /** Cell address, where the input came from a sheet. */
  cell?: string
  message: string
}

/** Input that cannot be read or computed. Every problem names its field, and its cell where there is one. */
export class InputError extends Error {
  override readonly name = 'InputError'
  constructor(readonly problems: readonly Problem[]) {
    super(problems.map(problemLine).join('\n'))
  }
}

export function problemLine({ path, cell, message }: Problem): string {
  const place = [cell, path].filter(Boolean).join(' · ')
  return place ? `${place}: ${message}` : message
}
