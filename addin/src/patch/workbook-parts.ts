import { SaxesParser } from 'saxes'
import { localName } from './sheet-cells.js'

interface Element {
  name: string
  attributes: Readonly<Record<string, string>>
  start: number
  end: number
}

/** Every element of an XML part, in the order in which they end. */
export function elementsOf(xml: string): Element[] {
  const parser = new SaxesParser()
  const open: Element[] = []
  const all: Element[] = []
  parser.on('error', (error) => {
    throw error
  })
  let start = 0
  parser.on('opentagstart', () => {
    start = xml.lastIndexOf('<', parser.position - 1)
  })
  parser.on('opentag', ({ name, attributes }) => open.push({ name, attributes, start, end: 0 }))
  parser.on('closetag', () => {
    const element = open.pop()
    if (element) all.push({ ...element, end: parser.position })
  })
  parser.write(xml).close()
  return all
}

/** Parts of the sheets by name, as the workbook and its relationships tell. */
export function sheetParts(workbook: string, relationships: string): Map<string, string> {
  const targets = new Map(
    elementsOf(relationships).map(({ attributes: { Id = '', Target = '' } }) => [Id, Target]),
  )
  return new Map(
    elementsOf(workbook).flatMap(({ name, attributes }) => {
      if (localName(name) !== 'sheet') return []
      const id = Object.entries(attributes).find(([key]) => key.endsWith(':id'))?.[1] ?? ''
      const target = targets.get(id)
      return target === undefined ? [] : [[attributes.name ?? '', partPath(target)] as const]
    }),
  )
}

const partPath = (target: string): string => (target.startsWith('/') ? target.slice(1) : `xl/${target}`)

const BEFORE_CALCULATION = ['sheets', 'functionGroups', 'externalReferences', 'definedNames']

/** The workbook part told to recalculate when it is opened. */
export function recalculated(workbook: string): string {
  const elements = elementsOf(workbook)
  const own = elements.find(({ name }) => localName(name) === 'calcPr')
  if (own) {
    const tag = workbook.slice(own.start, own.end)
    const rest = Object.entries(own.attributes).filter(([key]) => key !== 'fullCalcOnLoad')
    const attributes = rest.map(([key, value]) => ` ${key}="${value}"`).join('')
    const made = `<${own.name}${attributes} fullCalcOnLoad="1"/>`
    return workbook.replace(tag, () => made)
  }
  const last = elements.filter(({ name }) => BEFORE_CALCULATION.includes(localName(name))).at(-1)
  if (!last) return workbook
  const prefix = last.name.slice(0, last.name.length - localName(last.name).length)
  return `${workbook.slice(0, last.end)}<${prefix}calcPr fullCalcOnLoad="1"/>${workbook.slice(last.end)}`
}

/** A part without the elements for which `is` holds. */
export function without(xml: string, is: (element: Element) => boolean): string {
  return elementsOf(xml)
    .filter(is)
    .toSorted((a, b) => b.start - a.start)
    .reduce((text, { start, end }) => text.slice(0, start) + text.slice(end), xml)
}
