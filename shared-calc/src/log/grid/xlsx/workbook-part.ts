import type { XmlEvents } from '../../container/xml.js'
import { LIMITS } from '../../limits.js'
import { refuse } from '../../problem.js'

export interface SheetEntry {
  name: string
  relation: string
  hidden: boolean
}

export interface WorkbookPart {
  sheets: SheetEntry[]
  date1904: boolean
  /** Names with the text they stand for, as in `Log!$B$4`; names local to one sheet included. */
  names: { name: string; text: string }[]
}

/** Reads xl/workbook.xml: sheets in order, date system, defined names. */
export function workbookEvents(part: WorkbookPart): XmlEvents {
  let name: string | undefined
  let text = ''
  return {
    open(element, attributes) {
      if (element === 'workbookPr')
        part.date1904 = attributes.date1904 === '1' || attributes.date1904 === 'true'
      else if (element === 'sheet') part.sheets.push(sheetEntry(attributes, part.sheets.length))
      else if (element === 'definedName') {
        name = attributes.name ?? ''
        text = ''
      }
    },
    text(piece) {
      if (name !== undefined) text += piece
    },
    close(element) {
      if (element !== 'definedName' || name === undefined) return
      if (part.names.length >= LIMITS.names)
        refuse('too-many-cells', `the workbook defines more than ${LIMITS.names} names`)
      part.names.push({ name, text: text.trim() })
      name = undefined
    },
  }
}

function sheetEntry(attributes: Record<string, string>, count: number): SheetEntry {
  if (count >= LIMITS.sheets)
    refuse('too-many-sheets', `the workbook has more than ${LIMITS.sheets} sheets: split it`)
  const relation = Object.entries(attributes).find(([key]) => key === 'id' || key.endsWith(':id'))?.[1] ?? ''
  return { name: attributes.name ?? '', relation, hidden: (attributes.state ?? 'visible') !== 'visible' }
}

export interface Relation {
  type: string
  target: string
}

/** Reads a .rels part: id → kind (last word of the type's address) and target. */
export function relationsEvents(relations: Map<string, Relation>): XmlEvents {
  return {
    open(element, attributes) {
      if (element !== 'Relationship') return
      const type = (attributes.Type ?? '').split('/').at(-1) ?? ''
      if (attributes.TargetMode !== 'External')
        relations.set(attributes.Id ?? '', { type, target: attributes.Target ?? '' })
    },
    text() {},
    close() {},
  }
}

/** Target of a relation as a part's name: relative to the folder of the part it belongs to, or from the root. */
export function resolveTarget(folder: string, target: string): string {
  const parts = target.startsWith('/') ? [] : folder.split('/').filter(Boolean)
  for (const step of target.split('/')) {
    if (step === '..') parts.pop()
    else if (step !== '.' && step !== '') parts.push(step)
  }
  return parts.join('/')
}
