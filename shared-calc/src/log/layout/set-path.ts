import { refuse } from '../problem.js'
import { remembered } from '../remembered.js'

type Tree = { [key: string]: unknown }

/** Sets a field of a record under construction by its path: `flowDevice.ranges[0].coefficient`. Objects and lists are made on the way. */
export function setPath(target: Tree, path: string, value: unknown): void {
  const { keys } = parsedPath(path)
  let at: Tree = target
  for (const [depth, key] of keys.entries()) {
    if (depth === keys.length - 1) at[key] = value
    else {
      at[key] ??= typeof keys[depth + 1] === 'number' ? [] : {}
      at = at[key] as Tree
    }
  }
}

const parsedPath = remembered((path): { keys: (string | number)[] } => {
  const keys = [...path.matchAll(/([A-Za-z_][A-Za-z0-9_]*)|\[(\d{1,3})\]/g)].map(([, name, index]) =>
    name === undefined ? Number(index) : name,
  )
  if (
    keys.length === 0 ||
    keys.some((key) => key === '__proto__' || key === 'constructor' || key === 'prototype')
  )
    refuse('layout-invalid', `${JSON.stringify(path)} is not a field of a record`, { path })
  return { keys }
})
