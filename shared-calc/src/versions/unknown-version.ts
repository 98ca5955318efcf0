import { versions as known } from './list.js'

/** Why a file of a calculation version that is not among those known cannot be checked, and what to do. */
export function unknownVersion(
  version: string,
  versions: readonly { readonly version: string }[] = known,
): string {
  if (isNewer(version, versions))
    return `it was made under calculation version ${version}, which is newer than this Draughtbook (${versions.at(-1)?.version}). Install a Draughtbook with calculation version ${version} or later, then re-run the file`
  return `no calculation version ${version} was ever issued (the known ones are ${versions.map((one) => one.version).join(', ')}), so this file cannot be right. Ask whoever issued it for the original`
}

/** Whether a version is later than all that are known: its first number that is not the same is larger. */
export function isNewer(version: string, versions: readonly { readonly version: string }[] = known): boolean {
  if (!/^\d{1,6}(\.\d{1,6}){2}$/.test(version)) return false
  const last = versions.at(-1)?.version.split('.').map(Number) ?? []
  const parts = version.split('.').map(Number)
  const at = parts.findIndex((part, i) => part !== last[i])
  return at >= 0 && (parts[at] ?? 0) > (last[at] ?? 0)
}
