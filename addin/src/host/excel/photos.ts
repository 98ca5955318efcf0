import { HostError, type PhotoKeeper } from '../host.js'
import { type ExcelApi, inExcel } from './excel-api.js'
import { toBase64 } from './insert.js'
import { readKept, writeKept } from './marks.js'

const NAMESPACE = 'urn:draughtbook:photo'
/** File name → id of the custom XML part that holds the photo. */
const INDEX = 'draughtbook.photos'

type PhotoIndex = Readonly<Record<string, string>>

/** Photos kept in the workbook itself, each in a custom XML part, so that they go wherever its file goes. */
export function workbookPhotos(excel: ExcelApi): PhotoKeeper {
  // One after the other: each change starts from the list that the one before has written.
  let last: Promise<unknown> = Promise.resolve()
  const inTurn = <T>(what: string, act: (context: Excel.RequestContext) => Promise<T>): Promise<T> => {
    const next = last.then(
      () => inExcel(excel, what, act),
      () => inExcel(excel, what, act),
    )
    last = next
    return next
  }
  return {
    take: (start, jpeg) =>
      inTurn('keeping the photo', async (context) => {
        const index = await readIndex(context)
        let number = 1
        while (index[`${start}-${number}.jpg`] !== undefined) number += 1
        const name = `${start}-${number}.jpg`
        const part = context.workbook.customXmlParts.add(
          `<photo xmlns="${NAMESPACE}" name="${name}">${toBase64(jpeg)}</photo>`,
        )
        part.load('id')
        await context.sync()
        await writeKept(context, INDEX, JSON.stringify({ ...index, [name]: part.id }))
        return name
      }),
    read: (name) =>
      inTurn('reading a photo', async (context) => {
        const id = (await readIndex(context))[name]
        if (id === undefined) return undefined
        const part = context.workbook.customXmlParts.getItemOrNullObject(id)
        part.load('id')
        await context.sync()
        if (part.isNullObject) return undefined
        const xml = part.getXml()
        await context.sync()
        return photoIn(xml.value, name)
      }),
    keepOnly: (names) =>
      inTurn('removing photos', async (context) => {
        const index = await readIndex(context)
        const gone = Object.entries(index).filter(([name]) => !names.includes(name))
        if (gone.length === 0) return
        const parts = gone.map(([, id]) => context.workbook.customXmlParts.getItemOrNullObject(id))
        for (const part of parts) part.load('id')
        await context.sync()
        for (const part of parts) if (!part.isNullObject) part.delete()
        const kept = Object.fromEntries(Object.entries(index).filter(([name]) => names.includes(name)))
        await writeKept(context, INDEX, JSON.stringify(kept))
      }),
  }
}

async function readIndex(context: Excel.RequestContext): Promise<PhotoIndex> {
  return JSON.parse((await readKept(context, INDEX)) ?? '{}') as PhotoIndex
}

function photoIn(xml: string, name: string): Uint8Array {
  const text = />([A-Za-z0-9+/=\s]*)<\/[^>]*>\s*$/.exec(xml)?.[1]
  if (text === undefined)
    throw new HostError('failed', `The photo ${name} in this workbook is damaged and cannot be shown.`)
  return Uint8Array.from(atob(text.trim()), (letter) => letter.charCodeAt(0))
}
