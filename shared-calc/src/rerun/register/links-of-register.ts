import { TREND_SHEET } from '../../reports/register/trend.js'
import { BUILDINGS_SHEET } from '../../reports/register/workbook/buildings-sheet.js'
import { REGISTER_SHEET } from '../../reports/register/workbook/columns.js'
import type { SeenFrom } from '../../reports/register/workbook/write-register.js'
import { fileOfLink } from '../../reports/workbook/file-link.js'
import type { Parts } from '../../reports/workbook/zip/parts.js'
import { linksOfCells } from '../several/links-of-cells.js'

/** Sheets of a register whose links lead to files. */
export const LINKED: readonly string[] = [REGISTER_SHEET, BUILDINGS_SHEET, TREND_SHEET]

/**
 * Where files are seen from the folder that a register was written to, by its own links: the register does not say which folder that was.
 * A link that fits the name of another file better than its own is not taken, so that it is found.
 */
export function seenFromOf(parts: Parts, files: readonly string[]): SeenFrom {
  const led = LINKED.flatMap((sheet) => [...linksOfCells(parts, sheet).values()])
    .map(fileOfLink)
    .filter((path) => path !== undefined)
  const best = new Map<string, { readonly path: string; readonly alike: number }>()
  const byName = new Map<string, string[]>()
  for (const file of files) byName.set(lastOf(file), [...(byName.get(lastOf(file)) ?? []), file])
  for (const path of led)
    for (const file of byName.get(lastOf(path)) ?? []) {
      const alike = stepsAlike(path, file)
      if (alike > (best.get(file)?.alike ?? 0)) best.set(file, { path, alike })
    }
  return (file) => best.get(file)?.path ?? file
}

const stepsOf = (path: string): string[] => path.split(/[\\/]/).filter(Boolean).reverse()
const lastOf = (path: string): string => stepsOf(path)[0] ?? ''

function stepsAlike(a: string, b: string): number {
  const [one, other] = [stepsOf(a), stepsOf(b)]
  const differs = one.findIndex((step, i) => step !== other[i])
  return differs < 0 ? one.length : differs
}
