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
