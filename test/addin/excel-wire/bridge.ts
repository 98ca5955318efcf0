import { WireExecutor } from './executor.js'
import type { WireRequest } from './protocol.js'
import type { ModelWorkbook } from './workbook-model.js'

/** The door Office.js looks for, under `_richApiNativeBridge`, before it turns to a real host. */
export interface NativeBridge {
  sendMessageToHost(text: string): void
  onMessageFromHost?: (text: string) => void
}

const CHANGED = 10
const CALCULATED = 16

/** Connects the object model to a workbook of ours; `sizes` holds the length of every request and answer. */
export class WorkbookBridge implements NativeBridge {
  onMessageFromHost?: (text: string) => void
  readonly sizes: { request: number; response: number }[] = []
  readonly #executor: WireExecutor

  constructor(readonly workbook: ModelWorkbook) {
    this.#executor = new WireExecutor(workbook)
  }

  sendMessageToHost(text: string): void {
    void Promise.resolve().then(() => this.onMessageFromHost?.(this.answer(text)))
  }

  /** One message of Office.js in, the host's answer out. */
  answer(text: string): string {
    const message = JSON.parse(text) as { id: number; message: { body: WireRequest } }
    const body = JSON.stringify(this.#executor.execute(message.message.body))
    this.sizes.push({ request: text.length, response: body.length })
    return JSON.stringify({ id: message.id, type: 1, message: { statusCode: 200, headers: {}, body } })
  }

  /** Changes a cell as a user would, and reports it as Excel does. */
  edit(sheetName: string, address: string, value: string | number | boolean): void {
    const sheet = this.workbook.Worksheets.Indexer(sheetName)
    if (value === '') sheet.cells.delete(address)
    else sheet.cells.set(address, { value })
    const { registered } = this.workbook.Worksheets
    if (registered.has('changed'))
      this.#report(CHANGED, {
        worksheetId: sheet.Id,
        address,
        changeType: 'RangeEdited',
        source: 'Local',
        triggerSource: 'ThisLocalAddin',
      })
    if (registered.has('calculated')) this.#report(CALCULATED, { worksheetId: sheet.Id })
  }

  #report(messageType: number, detail: object): void {
    this.onMessageFromHost?.(
      JSON.stringify({
        type: 3,
        message: {
          entries: [
            { messageCategory: 65_536, messageType, targetId: 'Workbook', message: JSON.stringify(detail) },
          ],
        },
      }),
    )
  }
}
