import type { CellChange } from '../host.js'
import { type ExcelApi, hostError, inExcel } from './excel-api.js'

/** Calls back after edits and after recalculation, which Excel reports apart from edits. */
export async function watchSheets(
  excel: ExcelApi,
  listener: (change: CellChange) => void,
): Promise<() => Promise<void>> {
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
