import type { ChartDescription } from '../workbook/chart/description.js'
import type { PlacedPicture } from '../workbook/pictures/add-pictures.js'
import { drawChart } from './draw-chart.js'
import type { PageCell, PageModel, PageRow } from './page-model.js'
import { charactersWithout, decorate, type Pdf } from './pdf-document.js'

const PAGE = { width: 595.28, height: 841.89, left: 36, right: 36, top: 40, bottom: 46 } as const
const PADDING = 2
const INDENT = 6.75
/** Share of its size that a text may be set down to. */
const SMALLEST = 0.75
/** Points by which heights that were added up may differ from the page they were made for. */
const ROUNDING = 0.01
type Element = ReturnType<Pdf['struct']>

/** What is on a sheet beside its cells. */
export interface Drawn {
  readonly chart?: ChartDescription
  readonly pictures: readonly PlacedPicture[]
}

/** Draws a sheet on pages of its own, tagged row by row. Returns the characters that its fonts lack. */
export function drawSheet(pdf: Pdf, model: PageModel, drawn: Drawn): Set<string> {
  const drawer = new SheetDrawer(pdf, model, drawn)
  drawer.draw()
  return drawer.lacking
}

class SheetDrawer {
  readonly lacking = new Set<string>()
  private readonly scale: number
  private readonly heights: readonly number[]
  private readonly lefts: readonly number[]
  private readonly section: Element
  /** Where the sheet begins; a page made to fit is centred. */
  private readonly left: number
  private table: Element | undefined
  private y: number = PAGE.top

  constructor(
    private readonly pdf: Pdf,
    private readonly model: PageModel,
    private readonly drawn: Drawn,
  ) {
    const { columns_pt, rows, onePage } = model
    this.lefts = [0, ...columns_pt].map((_, i) =>
      columns_pt.slice(0, i).reduce((sum, width) => sum + width, 0),
    )
    const wide = (PAGE.width - PAGE.left - PAGE.right) / (this.lefts.at(-1) ?? 1)
    const heights = rows.map((row) => this.heightOf(row))
    const room = PAGE.height - PAGE.top - PAGE.bottom
    this.scale = onePage ? Math.min(wide, room / sumOf(heights)) : wide
    const texts = rows.map((row) => this.tallestText(row))
    this.heights = onePage ? heights : closedUp(rows, heights, texts, room / this.scale)
    this.left = PAGE.left + ((wide - this.scale) * (this.lefts.at(-1) ?? 0)) / 2
    this.section = pdf.struct('Sect')
    pdf.addStructure(this.section)
  }

  draw(): void {
    const { rows } = this.model
    const { chart } = this.drawn
    this.newPage()
    rows.forEach((row, i) => {
      if (chart && row.number > chart.anchor.fromRow && row.number <= chart.anchor.toRow) {
        if (row.number === chart.anchor.fromRow + 1) this.drawChart(chart)
        return
      }
      this.makeRoom(i)
      this.drawRow(row, (this.heights[i] ?? 0) * this.scale)
      if (row.breakAfter && i + 1 < rows.length) this.newPage()
    })
    this.closeTable()
    this.section.end()
  }

  private newPage(): void {
    this.pdf.addPage()
    this.y = PAGE.top
  }

  /** A row that does not fit begins a page; a heading stays with what follows it, a photo with its caption. */
  private makeRoom(i: number): void {
    const { rows, onePage } = this.model
    if (onePage) return
    let needed = this.heights[i] ?? 0
    const keeps = (k: number) =>
      rows[k]?.role === 'heading' ||
      rows[k - 1]?.role === 'heading' ||
      rows[k]?.role === 'table head' ||
      this.picturesIn(rows[k]).length > 0
    for (let k = i; keeps(k) && k + 1 < rows.length; k += 1) needed += this.heights[k + 1] ?? 0
    if (this.y > PAGE.top && this.y + needed * this.scale > PAGE.height - PAGE.bottom + ROUNDING)
      this.newPage()
  }

  private drawChart(chart: ChartDescription): void {
    const { fromRow, toRow } = chart.anchor
    const height = this.heights.slice(fromRow, toRow).reduce((sum, one) => sum + one, 0) * this.scale
    const width = (this.lefts.at(-1) ?? 0) * this.scale
    const box = { left: this.left, top: this.y, width, height }
    this.closeTable()
    this.add(
      'Figure',
      {
        alt: chart.altText ?? chart.title,
        bbox: [box.left, box.top, box.left + box.width, box.top + height],
      },
      () => drawChart(this.pdf, chart, box),
    )
    this.y += height
  }

  private drawRow(row: PageRow, height: number): void {
    const { pdf } = this
    decorate(pdf, () => this.drawLook(row, height))
    const filled = row.cells.filter(({ text }) => text !== '')
    if (row.role === 'table head' || row.role === 'table row') this.drawTableRow(row, height)
    else if (row.role !== 'empty') {
      this.closeTable()
      for (const [i, cell] of filled.entries()) {
        const heads = row.role === 'heading' && i > 0
        const type = row.role === 'title' && i === 0 ? 'H1' : row.role === 'heading' && !heads ? 'H2' : 'P'
        this.add(type, {}, () => this.drawText(cell, height))
      }
      if (row.role === 'title' || row.role === 'heading') pdf.outline.addItem(filled[0]?.text ?? '')
    }
    for (const placed of this.picturesIn(row)) this.drawPicture(placed)
    this.y += height
  }

  private drawTableRow(row: PageRow, height: number): void {
    if (row.role === 'table head') this.closeTable()
    if (!this.table) {
      this.table = this.pdf.struct('Table')
      this.section.add(this.table)
    }
    const line = this.pdf.struct('TR')
    this.table.add(line)
    for (const cell of row.cells) {
      const head = row.role === 'table head' || cell.column === 0
      const scope = row.role === 'table head' ? 'Column' : 'Row'
      const draw = cell.text === '' ? [] : [() => this.drawText(cell, height)]
      const element = this.pdf.struct(head ? 'TH' : 'TD', head ? ({ scope } as object) : {}, draw)
      spanning(element, cell.span)
      line.add(element)
    }
    line.end()
  }

  private closeTable(): void {
    this.table?.end()
    this.table = undefined
  }

  private add(type: string, options: object, draw: () => void): void {
    this.section.add(this.pdf.struct(type, options, [draw]))
  }

  private picturesIn(row: PageRow | undefined): readonly PlacedPicture[] {
    return this.drawn.pictures.filter(({ from }) => from.row + 1 === row?.number)
  }

  private drawPicture({ picture, from, to }: PlacedPicture): void {
    const at = (column: number, right: number) => this.left + ((this.lefts[column] ?? 0) + right) * this.scale
    const left = at(from.column, from.right_pt)
    const top = this.y + from.down_pt * this.scale
    const size: [number, number] = [
      at(to.column, to.right_pt) - left,
      (to.down_pt - from.down_pt) * this.scale,
    ]
    this.add('Figure', { alt: picture.caption, bbox: [left, top, left + size[0], top + size[1]] }, () =>
      this.pdf.image(picture.bytes as unknown as ArrayBuffer, left, top, { fit: size }),
    )
  }

  /** Background and hairlines. */
  private drawLook({ cells }: PageRow, height: number): void {
    for (const { column, span, fill, underline } of cells) {
      const left = this.left + (this.lefts[column] ?? 0) * this.scale
      const width = ((this.lefts[column + span] ?? 0) - (this.lefts[column] ?? 0)) * this.scale
      if (fill) this.pdf.rect(left, this.y, width, height).fill(`#${fill}`)
      if (underline)
        this.pdf
          .moveTo(left, this.y + height)
          .lineTo(left + width, this.y + height)
          .lineWidth(0.4)
          .stroke('#9AA5B1')
    }
  }

  private drawText(cell: PageCell, height: number): void {
    const { pdf, scale } = this
    const font = cell.bold ? 'bold' : 'regular'
    for (const character of charactersWithout(pdf, font, cell.text)) this.lacking.add(character)
    const { left, width } = this.roomOf(cell)
    const free = Math.max(0, height - this.textHeight(cell) * scale)
    const top =
      this.y + { top: Math.min(free, PADDING * scale), middle: free / 2, bottom: free }[cell.vertical]
    pdf
      .font(font)
      .fontSize(this.sizeOf(cell) * scale)
      .fillColor(`#${cell.colour}`)
      .text(cell.text, this.left + left * scale, top, { width: width * scale, align: cell.align })
  }

  /** A text that must stay on its lines is set a little smaller where it would not fit; one far too long runs over several. */
  private sizeOf(cell: PageCell): number {
    const lines = cell.text.split('\n')
    if (cell.wrap && lines.length === 1) return cell.size
    this.pdf.font(cell.bold ? 'bold' : 'regular').fontSize(cell.size)
    const needed = Math.max(...lines.map((line) => this.pdf.widthOfString(line)))
    const { width } = this.roomOf(cell)
    // Slightly below the width: at the width itself, rounding may break the line.
    const share = (0.995 * width) / needed
    return share >= 1 || share < SMALLEST ? cell.size : cell.size * share
  }

  /** Where a cell's text may stand, points of the sheet. Text that would not fit its cell runs on over empty ones. */
  private roomOf(cell: PageCell): { left: number; width: number } {
    const own = this.lefts[cell.column] ?? 0
    const indent = cell.indent * INDENT
    const to = cell.wrap || cell.align !== 'left' ? cell.span : cell.reach
    const width = (this.lefts[cell.column + to] ?? 0) - own - 2 * PADDING - indent
    return { left: own + PADDING + (cell.align === 'left' ? indent : 0), width }
  }

  private heightOf({ cells, height_pt, role }: PageRow): number {
    const tallest = this.tallestText({ cells })
    // A row that is higher than its text by design stays so; one that was made for the spreadsheet's own font follows its text.
    const lines = Math.round(height_pt / 13.5)
    return role !== 'title' && lines > 1 && tallest > 0 && cells.some(({ wrap }) => wrap)
      ? Math.max(tallest + PADDING, Math.min(height_pt, 13.5))
      : Math.max(height_pt, tallest + PADDING)
  }

  private tallestText({ cells }: Pick<PageRow, 'cells'>): number {
    return Math.max(0, ...cells.filter(({ text }) => text !== '').map((cell) => this.textHeight(cell)))
  }

  private textHeight(cell: PageCell): number {
    const { width } = this.roomOf(cell)
    return this.pdf
      .font(cell.bold ? 'bold' : 'regular')
      .fontSize(this.sizeOf(cell))
      .heightOfString(cell.text, { width })
  }
}

const sumOf = (heights: readonly number[]): number => heights.reduce((sum, height) => sum + height, 0)

/** Share of the room round its text that a row may give up. */
const MOST_CLOSED_UP = 0.9

/** Content meant for one page and slightly too high has its rows moved together, as far as their texts allow. */
function closedUp(
  rows: readonly PageRow[],
  heights: readonly number[],
  texts: readonly number[],
  room: number,
): number[] {
  const closed = [...heights]
  let start = 0
  for (let end = 1; end <= rows.length; end += 1) {
    if (end < rows.length && !rows[end - 1]?.breakAfter) continue
    const spare = heights.map((height, i) =>
      i >= start && i < end ? Math.max(0, height - (texts[i] ?? 0)) * MOST_CLOSED_UP : 0,
    )
    const over = sumOf(heights.slice(start, end)) - room
    const all = sumOf(spare)
    if (over > 0 && over <= all)
      for (let i = start; i < end; i += 1) closed[i] = (heights[i] ?? 0) - ((spare[i] ?? 0) * over) / all
    start = end
  }
  return closed
}

/** A cell that covers several columns says so (ISO 32000-1, 14.8.5.7). */
function spanning(element: Element, span: number): void {
  if (span === 1) return
  const { dictionary } = element as unknown as { dictionary: { data: { A?: object } } }
  dictionary.data.A = { O: 'Table', ...dictionary.data.A, ColSpan: span }
}
