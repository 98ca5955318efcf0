import {
  type Area,
  areaAddress,
  intersection,
  joinReference,
  parseArea,
} from '../../../addin/src/host/address.js'
import { ModelCharts } from './chart-model.js'
import { WireFault } from './protocol.js'

export type ModelValue = string | number | boolean
export interface ModelCell {
  value: ModelValue
  text?: string
  format?: string
  formula?: string
  struck?: boolean
}

/** The worksheets of a workbook in memory, under the names the wire uses. */
export class ModelSheet {
  readonly Id: string
  readonly cells = new Map<string, ModelCell>()
  readonly Charts = new ModelCharts()
  readonly Names: ModelNames
  readonly formats: ModelFormat[] = []
  readonly hiddenRows = new Set<number>()
  readonly merged: Area[] = []
  Visibility = 'Visible'

  constructor(
    readonly book: ModelWorkbook,
    public Name: string,
  ) {
    this.Id = `{sheet-${book.nextId()}}`
    this.Names = new ModelNames(book)
  }

  GetRange(address: string): ModelRange {
    const area = parseArea(address)
    if (!area) throw new WireFault('InvalidArgument', `not an address: ${address}`)
    return new ModelRange(this, area)
  }

  GetUsedRangeOrNullObject(valuesOnly: boolean): ModelRange | null {
    if (valuesOnly !== true)
      throw new Error('used range is asked with formats too: that reaches over styled rows')
    let used: Area | undefined
    for (const address of this.cells.keys()) {
      const at = parseArea(address)
      if (!at) throw new Error(`the model holds a cell at ${address}`)
      used = used
        ? {
            top: Math.min(used.top, at.top),
            left: Math.min(used.left, at.left),
            bottom: Math.max(used.bottom, at.bottom),
            right: Math.max(used.right, at.right),
          }
        : at
    }
    return used ? new ModelRange(this, used) : null
  }

  Activate(): void {
    this.book.active = this
  }
}

export class ModelRange {
  readonly ConditionalFormats: ModelFormats

  constructor(
    readonly Worksheet: ModelSheet,
    readonly area: Area,
  ) {
    this.ConditionalFormats = new ModelFormats(Worksheet, area)
  }

  /** Whole columns come back as Excel writes them, `Log!B:B`. */
  get Address(): string {
    const { top, bottom } = this.area
    const address = areaAddress(this.area)
    return joinReference(
      this.Worksheet.Name,
      top === 1 && bottom === 1_048_576
        ? address.replaceAll(/\d+/g, '').replace(/^([A-Z]+)$/, '$1:$1')
        : address,
    )
  }

  get Values(): ModelValue[][] {
    return this.#grid((cell) => cell?.value ?? '')
  }

  get Text(): string[][] {
    return this.#grid((cell) => cell?.text ?? String(cell?.value ?? ''))
  }

  get NumberFormat(): string[][] {
    return this.#grid((cell) => cell?.format ?? 'General')
  }

  get Formulas(): ModelValue[][] {
    return this.#grid((cell) => cell?.formula ?? cell?.value ?? '')
  }

  get ValueTypes(): string[][] {
    return this.#grid((cell) => valueType(cell?.value))
  }

  GetCellProperties(): object[][] {
    return this.#grid((cell) => ({ format: { font: { strikethrough: cell?.struck === true } } }))
  }

  /** Excel names at most 512 (office.js reference). */
  GetMergedAreasOrNullObject(): object | null {
    const found = this.Worksheet.merged.filter((block) => intersection(block, this.area))
    if (found.length > 512) throw new WireFault('GeneralException', 'too many merged areas')
    if (found.length === 0) return null
    return { Areas: { Items: found.map((block) => new ModelRange(this.Worksheet, block)) } }
  }

  GetRowProperties(): object[] {
    const { top, bottom } = this.area
    return Array.from({ length: bottom - top + 1 }, (_, row) => ({
      rowHidden: this.Worksheet.hiddenRows.has(top + row),
    }))
  }

  GetColumnProperties(): object[] {
    return Array.from({ length: this.area.right - this.area.left + 1 }, () => ({ columnHidden: false }))
  }

  Select(): void {
    this.Worksheet.book.selected = [this]
  }

  #grid<T>(of: (cell: ModelCell | undefined) => T): T[][] {
    const { top, left, bottom, right } = this.area
    if ((bottom - top + 1) * (right - left + 1) > 1_000_000)
      throw new WireFault('ResponsePayloadSizeLimitExceeded', 'too large')
    return Array.from({ length: bottom - top + 1 }, (_, row) =>
      Array.from({ length: right - left + 1 }, (_, column) =>
        of(
          this.Worksheet.cells.get(
            areaAddress({ top: top + row, bottom: top + row, left: left + column, right: left + column }),
          ),
        ),
      ),
    )
  }
}

function valueType(value: ModelValue | undefined): string {
  if (value === undefined || value === '') return 'Empty'
  if (typeof value === 'number') return 'Double'
  if (typeof value === 'boolean') return 'Boolean'
  return value.startsWith('#') ? 'Error' : 'String'
}

export class ModelFormat {
  readonly Id: string
  readonly Custom = { Rule: { Formula: '' }, Format: { Fill: { Color: '' } } }

  constructor(
    readonly sheet: ModelSheet,
    readonly area: Area,
  ) {
    this.Id = `format-${sheet.book.nextId()}`
  }

  Delete(): void {
    this.sheet.formats.splice(this.sheet.formats.indexOf(this), 1)
  }
}

class ModelFormats {
  constructor(
    readonly sheet: ModelSheet,
    readonly area: Area,
  ) {}

  get Items(): ModelFormat[] {
    return this.sheet.formats.filter((format) => intersection(format.area, this.area))
  }

  Add(type: string): ModelFormat {
    if (type !== 'Custom') throw new WireFault('InvalidArgument', `conditional format of type ${type}`)
    const format = new ModelFormat(this.sheet, this.area)
    this.sheet.formats.push(format)
    return format
  }

  Indexer(id: string): ModelFormat {
    const found = this.Items.find((format) => format.Id === id)
    if (!found) throw new WireFault('ItemNotFound', `no conditional format ${id}`)
    return found
  }
}

export class ModelNames {
  readonly all = new Map<string, () => ModelRange | null>()

  constructor(readonly book: ModelWorkbook) {}

  get Items(): ModelName[] {
    return [...this.all].map(([name, range]) => new ModelName(name, range))
  }

  GetItemOrNullObject(name: string): object | null {
    const range = this.all.get(name)
    return range ? new ModelName(name, range) : null
  }
}

class ModelName {
  readonly Type = 'Range'

  get Value(): string {
    return `=${this.range()?.Address ?? '#REF!'}`
  }

  constructor(
    readonly Name: string,
    readonly range: () => ModelRange | null,
  ) {}

  GetRangeOrNullObject(): ModelRange | null {
    return this.range()
  }
}

class ModelSettings {
  readonly all = new Map<string, { Key: string; Value: unknown }>()

  Add(Key: string, Value: unknown): object {
    const setting = { Key, Value }
    this.all.set(Key, setting)
    return setting
  }

  GetItemOrNullObject(key: string): object | null {
    return this.all.get(key) ?? null
  }
}

class ModelXmlPart {
  readonly Id: string

  constructor(
    readonly parts: ModelXmlParts,
    readonly xml: string,
  ) {
    this.Id = `{part-${parts.book.nextId()}}`
  }

  GetXml(): string {
    return this.xml
  }

  Delete(): void {
    this.parts.all.splice(this.parts.all.indexOf(this), 1)
  }
}

class ModelXmlParts {
  readonly all: ModelXmlPart[] = []

  constructor(readonly book: ModelWorkbook) {}

  Add(xml: string): ModelXmlPart {
    const part = new ModelXmlPart(this, xml)
    this.all.push(part)
    return part
  }

  Indexer(id: string): ModelXmlPart {
    const found = this.all.find((part) => part.Id === id)
    if (!found) throw new WireFault('ItemNotFound', `no custom XML part ${id}`)
    return found
  }

  GetItemOrNullObject(id: string): ModelXmlPart | null {
    return this.all.find((part) => part.Id === id) ?? null
  }
}

class ModelSheets {
  readonly Items: ModelSheet[] = []
  readonly registered = new Set<string>()

  constructor(readonly book: ModelWorkbook) {}

  Indexer(key: string): ModelSheet {
    const found = this.#find(key)
    if (!found) throw new WireFault('ItemNotFound', `The requested resource doesn't exist: ${key}`)
    return found
  }

  GetItemOrNullObject(key: string): ModelSheet | null {
    return this.#find(key) ?? null
  }

  GetActiveWorksheet(): ModelSheet {
    return this.book.active
  }

  _RegisterDataChangedEvent(): void {
    this.registered.add('changed')
  }

  _UnregisterDataChangedEvent(): void {
    this.registered.delete('changed')
  }

  _RegisterCalculatedEvent(): void {
    this.registered.add('calculated')
  }

  _UnregisterCalculatedEvent(): void {
    this.registered.delete('calculated')
  }

  #find(key: string): ModelSheet | undefined {
    return this.Items.find(({ Id, Name }) => Id === key || Name.toLowerCase() === key.toLowerCase())
  }
}

/** A workbook behind the real Excel object model. `fail` makes the named calls fail as Excel sometimes does. */
export class ModelWorkbook {
  #id = 0
  readonly Names: ModelNames = new ModelNames(this)
  readonly Settings = new ModelSettings()
  readonly CustomXmlParts: ModelXmlParts = new ModelXmlParts(this)
  readonly Worksheets: ModelSheets = new ModelSheets(this)
  readonly Application = {
    CreateWorkbook: (base64: string) => ({ Open: () => void this.created.push(base64) }),
  }
  readonly created: string[] = []
  readonly fail = new Map<string, { code: string; message: string }>()
  /** Reads the sheet names of an inserted workbook. */
  sheetNames: (bytes: Uint8Array) => string[] = () => []
  active: ModelSheet
  selected: ModelRange[]

  constructor(
    readonly Name: string,
    sheets: Record<string, Record<string, ModelCell | ModelValue>>,
  ) {
    for (const [name, cells] of Object.entries(sheets)) {
      const sheet = this.add(name)
      for (const [address, cell] of Object.entries(cells))
        sheet.cells.set(address, typeof cell === 'object' ? cell : { value: cell })
    }
    const [first] = this.Worksheets.Items
    if (!first) throw new Error('a workbook has a sheet')
    this.active = first
    this.selected = [first.GetRange('A1')]
  }

  nextId(): number {
    return ++this.#id
  }

  add(name: string): ModelSheet {
    const sheet = new ModelSheet(this, name)
    this.Worksheets.Items.push(sheet)
    return sheet
  }

  GetSelectedRange(): ModelRange {
    const [only] = this.selected
    if (!only || this.selected.length > 1)
      throw new WireFault('InvalidSelection', 'The current selection is invalid for this operation.')
    return only
  }

  /** What Excel on the web is asked instead. */
  CreateAndOpenWorkbook(base64: string): void {
    this.created.push(base64)
  }

  InsertWorksheetsFromBase64(base64: string, options: { positionType: string }): string[] {
    const fault = this.fail.get('InsertWorksheetsFromBase64')
    if (fault) throw new WireFault(fault.code, fault.message)
    if (options.positionType !== 'End') throw new WireFault('InvalidArgument', 'position')
    const taken = new Set(this.Worksheets.Items.map(({ Name }) => Name))
    return this.sheetNames(Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))).map((wanted) => {
      let name = wanted
      for (let count = 2; taken.has(name); count++) name = `${wanted} (${count})`
      taken.add(name)
      return this.add(name).Id
    })
  }
}
