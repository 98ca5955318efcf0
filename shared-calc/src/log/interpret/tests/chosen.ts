import type { TestGroup } from './group.js'

/** "2", the name, or the beginning of the name of a test. */
export function chooseTest(groups: readonly TestGroup[], wanted: string): TestGroup[] | undefined {
  const plain = wanted.trim().toLowerCase()
  const exact = groups.filter(({ key }) => key.toLowerCase() === plain)
  if (exact.length > 0) return exact
  const starting = groups.filter(({ key }) => key.toLowerCase().startsWith(plain))
  const number = /^\d{1,3}$/.test(plain) ? groups[Number(plain) - 1] : undefined
  if (number) return [number]
  return starting.length === 1 ? starting : undefined
}
