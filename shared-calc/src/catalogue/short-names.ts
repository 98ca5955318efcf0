/** Names of files without the folders they share: the last step of each path, and as many more as tell it from the others. */
export function shortNames(paths: readonly string[]): ReadonlyMap<string, string> {
  const all = [...new Set(paths)].map((path) => ({ path, steps: path.split(/[\\/]/).filter(Boolean) }))
  const names = new Map<string, string>()
  let left = all
  for (let steps = 1; left.length > 0; steps += 1) {
    const named = left.map((one) => ({ ...one, name: one.steps.slice(-steps).join('/') }))
    const count = new Map<string, number>()
    for (const { name } of named) count.set(name, (count.get(name) ?? 0) + 1)
    const settled = (one: (typeof named)[number]) => count.get(one.name) === 1 || one.steps.length <= steps
    for (const one of named) if (settled(one)) names.set(one.path, one.name)
    left = named.filter((one) => !settled(one))
  }
  return names
}
