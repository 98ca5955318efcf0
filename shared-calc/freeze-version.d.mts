/** The bundle of the current version as TypeScript text. */
export function frozenBundle(version: string): Promise<string>
/** File and variable name of a version: 1.2.0 → v1_2_0. */
export function nameOf(version: string): string
