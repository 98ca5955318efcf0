import type { CellChange } from '../host.js'
import { type ExcelApi, hostError, inExcel } from './excel-api.js'

type Listener = (change: CellChange) => void
type Stop = () => Promise<void>

/**
 * Follows edits, and recalculation, which Excel reports apart from edits. Excel is asked once however many listen: what one
 * registration gives up would be lost to others.
 * @returns a function that adds a listener and gives the one that takes it away again
 */
export function sheetWatch(excel: ExcelApi): (listener: Listener) => Promise<Stop> {
  const listeners = new Set<Listener>()
  let registered: Promise<Stop> | undefined
  return async (listener) => {
    // A listener of its own, though the same function may be given twice.
    const own: Listener = (change) => listener(change)
    listeners.add(own)
    registered ??= register(excel, (change) => {
      for (const each of [...listeners]) each(change)
    })
    const release = registered
    try {
      await release
    } catch (error) {
      listeners.delete(own)
      if (registered === release) registered = undefined
      throw error
    }
    return async () => {
      listeners.delete(own)
      if (listeners.size > 0 || registered !== release) return
      registered = undefined
      await (await release)()
    }
  }
}

async function register(excel: ExcelApi, listener: Listener): Promise<Stop> {
  const tell = async (worksheetId: string, address?: string): Promise<void> => {
    const sheet = await inExcel(excel, 'following a change', async (context) => {
      const worksheet = context.workbook.worksheets.getItemOrNullObject(worksheetId)
      worksheet.load('name')
      await context.sync()
      return worksheet.isNullObject ? undefined : worksheet.name
    })
    if (sheet !== undefined) listener(address === undefined ? { sheet } : { sheet, address })
  }
  const registrations = await inExcel(excel, 'following changes', async (context) => {
    const { worksheets } = context.workbook
    const added = [
      worksheets.onChanged.add((event) => tell(event.worksheetId, event.address)),
      worksheets.onCalculated.add((event) => tell(event.worksheetId)),
    ]
    await context.sync()
    return added
  })
  return async () => {
    for (const registration of registrations)
      try {
        await excel.run(registration.context as Excel.RequestContext, async (context) => {
          registration.remove()
          await context.sync()
        })
      } catch (error) {
        throw hostError(error, 'stopping to follow changes')
      }
  }
}
