import { splitReference } from '../address.js'
import type { CellMark } from '../host.js'

const KEY = 'draughtbook.marks'
const COLOUR: Record<CellMark['severity'], string> = {
  invalidates: '#f9c9c4',
  caution: '#fde7b0',
  note: '#d5e6f5',
}

interface KeptMark {
  reference: string
  id: string
}

/**
 * Points cells out with a conditional format, which leaves the cell's own format as it is. The formats' ids are
 * kept with the workbook, so that marks left behind by a closed pane are removed by the next one.
 */
export async function replaceMarks(context: Excel.RequestContext, marks: readonly CellMark[]): Promise<void> {
  await removeKept(context)
  const added = marks.map(({ reference, severity }) => {
    const format = rangeOf(context, reference).conditionalFormats.add('Custom')
    format.custom.rule.formula = '=TRUE'
    format.custom.format.fill.color = COLOUR[severity]
    format.load('id')
    return { reference, format }
  })
  await context.sync()
  const kept: KeptMark[] = added.map(({ reference, format }) => ({ reference, id: format.id }))
  await writeKept(context, KEY, JSON.stringify(kept))
}

async function removeKept(context: Excel.RequestContext): Promise<void> {
  const text = await readKept(context, KEY)
  if (text === undefined) return
  const kept = JSON.parse(text) as KeptMark[]
  for (const { reference, id } of kept) {
    const formats = rangeOf(context, reference).conditionalFormats
    formats.load('items/id')
    try {
      await context.sync()
    } catch {
      continue // the sheet was deleted, and the mark with it
    }
    formats.items.find((format) => format.id === id)?.delete()
  }
  await context.sync()
}

function rangeOf(context: Excel.RequestContext, reference: string): Excel.Range {
  const { sheet, address } = splitReference(reference)
  const { worksheets } = context.workbook
  return (sheet === undefined ? worksheets.getActiveWorksheet() : worksheets.getItem(sheet)).getRange(address)
}

/** Text kept in the workbook under a key, or undefined. It is saved with the workbook's file. */
export async function readKept(context: Excel.RequestContext, key: string): Promise<string | undefined> {
  const item = context.workbook.settings.getItemOrNullObject(key)
  item.load('value')
  await context.sync()
  return item.isNullObject || typeof item.value !== 'string' ? undefined : item.value
}

export async function writeKept(context: Excel.RequestContext, key: string, text: string): Promise<void> {
  context.workbook.settings.add(key, text)
  await context.sync()
}
