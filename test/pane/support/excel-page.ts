import { readFile } from 'node:fs/promises'
import type { Page } from 'playwright-core'
import { WorkbookBridge } from '../../addin/excel-wire/bridge.js'
import { HOST_FILE } from '../../addin/excel-wire/load-excel.js'
import type { ModelWorkbook } from '../../addin/excel-wire/workbook-model.js'
import type { World } from './world.js'

/** What stands before the host file: the door it looks for, and Excel's place for spreadsheet functions. */
const BEFORE = `
window._richApiNativeBridge = {
  sendMessageToHost: (text) =>
    void window.toWorkbook(text).then((answer) => window._richApiNativeBridge.onMessageFromHost(answer)),
}
window.associated = new Map()
window.CustomFunctions = {
  associate: (id, run) => window.associated.set(id, run),
  ErrorCode: { invalidValue: '#VALUE!' },
  Error: class extends Error { constructor(code, message) { super(message); this.code = code } },
}
`
/** What the loader does in Excel: it names the host and its requirement sets. */
const after = (version: string, platform: string): string => `
window.Office = Object.create(window.Office, {
  onReady: { value: async () => ({ host: 'Excel', platform: '${platform}' }) },
  context: { value: { platform: '${platform}', requirements: { isSetSupported: (set, wanted) =>
    set !== 'ExcelApi' || Number(String(wanted).split('.')[1]) <= Number('${version}'.split('.')[1]) } } },
})
`

/**
 * pane.html over the real Excel object model in Chromium: the host file of the npm package stands in for office.js,
 * and its requests are answered from a workbook in memory.
 */
export async function openInExcel(
  world: World,
  workbook: ModelWorkbook,
  { version = '1.17', platform = 'OfficeOnline' }: { version?: string; platform?: string } = {},
): Promise<{ page: Page; bridge: WorkbookBridge; complaints: string[] }> {
  const page = await world.page({ viewport: { width: 350, height: 900 } })
  const bridge = new WorkbookBridge(workbook)
  bridge.onMessageFromHost = (text) =>
    void page.evaluate((message) => {
      const { _richApiNativeBridge: door } = window as unknown as {
        _richApiNativeBridge: { onMessageFromHost: (text: string) => void }
      }
      door.onMessageFromHost(message)
    }, text)
  await page.exposeFunction('toWorkbook', (text: string) => bridge.answer(text))
  const script = `${BEFORE}\n${await readFile(HOST_FILE, 'utf8')}\n${after(version, platform)}`
  await page.route('https://appsforoffice.microsoft.com/**', (route) =>
    route.fulfill({ contentType: 'text/javascript', body: script }),
  )
  const complaints: string[] = []
  page.on('pageerror', (error) => complaints.push(String(error)))
  await page.goto(new URL('pane.html', world.base).href)
  return { page, bridge, complaints }
}
