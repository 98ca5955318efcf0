import { archivedParts } from '../reports/archive/archived-parts.js'
import { Package } from './look/package.js'
import { child } from './look/xml-tree.js'

/** Longest name of a program that is repeated in a report. */
const LONGEST = 40

/** The program that says it saved a workbook; empty where none does. */
export function savedBy(bytes: Uint8Array): string {
  const from = new Package(archivedParts(bytes))
  const tree = from.tree(from.linked('', 'extended-properties') ?? '')
  return (child(tree, 'Application')?.text ?? '').split('$')[0]?.trim().slice(0, LONGEST) ?? ''
}
