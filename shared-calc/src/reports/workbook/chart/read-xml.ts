import { SaxesParser } from 'saxes'

/** Attributes, by local name, of every element with that local name. Throws Error for malformed XML. */
export function attributesOf(xml: string, local: string): Record<string, string>[] {
  const found: Record<string, string>[] = []
  const parser = new SaxesParser({ xmlns: true })
  parser.on('opentag', (tag) => {
    if (tag.local !== local) return
    found.push(Object.fromEntries(Object.values(tag.attributes).map(({ local, value }) => [local, value])))
  })
  parser.write(xml).close()
  return found
}

/** Puts a fragment last inside the root element. Throws RangeError, naming the part, when the root is empty. */
export function appendToRoot(xml: string, fragment: string, part: string): string {
  const end = xml.lastIndexOf('</')
  if (end < 0) throw new RangeError(`${part} has an empty root element`)
  return xml.slice(0, end) + fragment + xml.slice(end)
}
