import { areaAddress, bands, cellCount, intersection, parseArea, splitReference } from '../address.js'
import { type CellBlock, type CellValue, HostError, MOST_CELLS } from '../host.js'

/** Excel on the web refuses answers above 5 MB; this many cells with value, text and format take about 2 MB. */
const CELLS_PER_ANSWER = 60_000

/**
 * The range a reference stands for.
 * @throws HostError `not-found` where no sheet, range or name of that name exists
 */
export async function locate(context: Excel.RequestContext, reference: string): Promise<Excel.Range> {
  const { sheet, address } = splitReference(reference)
  const isAddress = parseArea(address) !== undefined
  const { workbook } = context
  if (sheet === undefined) {
    if (isAddress) return workbook.worksheets.getActiveWorksheet().getRange(address)
    return namedRange(context, workbook.names, reference)
  }
  const worksheet = workbook.worksheets.getItemOrNullObject(sheet)
  worksheet.load('name')
  await context.sync()
  if (worksheet.isNullObject)
    throw new HostError('not-found', `There is no sheet "${sheet}" in this workbook.`)
  return isAddress ? worksheet.getRange(address) : namedRange(context, worksheet.names, address)
}

async function namedRange(
  context: Excel.RequestContext,
  names: Excel.NamedItemCollection,
  name: string,
): Promise<Excel.Range> {
  const item = names.getItemOrNullObject(name)
  item.load('name')
  await context.sync()
  if (item.isNullObject)
    throw new HostError('not-found', `There is no range named "${name}" in this workbook.`)
  const range = item.getRangeOrNullObject()
  range.load('address')
  await context.sync()
  if (range.isNullObject) throw new HostError('not-found', `The name "${name}" does not refer to cells.`)
  return range
}

/** Reads values, texts and formats of the part of a range that holds anything. */
export async function readBlock(context: Excel.RequestContext, range: Excel.Range): Promise<CellBlock> {
  const { worksheet } = range
  const used = worksheet.getUsedRangeOrNullObject(true)
  range.load('address')
  worksheet.load('name')
  used.load('address')
  await context.sync()
  const asked = parseArea(range.address)
  if (!asked) throw new HostError('failed', `Excel gave an address that cannot be read: ${range.address}`)
  const within = used.isNullObject ? undefined : parseArea(used.address)
  const area = within && intersection(asked, within)
  if (!area)
    return {
      sheet: worksheet.name,
      address: areaAddress({ ...asked, bottom: asked.top, right: asked.left }),
      asked: areaAddress(asked),
      values: [],
      texts: [],
      formats: [],
      limited: `${areaAddress(asked)} on sheet ${worksheet.name} is empty`,
    }
  if (cellCount(area) > MOST_CELLS)
    throw new HostError(
      'too-large',
      `${areaAddress(area)} has ${cellCount(area)} cells; select at most ${MOST_CELLS}.`,
    )
  const block: CellBlock = {
    sheet: worksheet.name,
    address: areaAddress(area),
    asked: areaAddress(asked),
    values: [],
    texts: [],
    formats: [],
  }
  for (const band of bands(area, CELLS_PER_ANSWER)) {
    const part = worksheet.getRange(areaAddress(band))
    part.load('values,text,numberFormat')
    await context.sync()
    block.values = block.values.concat(part.values as CellValue[][])
    block.texts = block.texts.concat(part.text)
    block.formats = block.formats.concat(part.numberFormat as string[][])
  }
  if (cellCount(area) < cellCount(asked))
    block.limited = `read ${areaAddress(area)}, the part of ${areaAddress(asked)} that is used`
  return block
}
