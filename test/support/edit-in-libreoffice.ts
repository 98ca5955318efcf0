import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { moduleWith, profileOf, QUIET } from './office.js'
import { runTool } from './run-tool.js'

/** What a user does on a sheet, rows and columns counted from 1. */
export type Edit =
  | { readonly do: 'sort'; readonly by: readonly { readonly column: number; readonly ascending: boolean }[] }
  | { readonly do: 'filter'; readonly column: number; readonly text: string }
  | { readonly do: 'set'; readonly row: number; readonly column: number; readonly value: number }
  | { readonly do: 'delete'; readonly row: number }

/** The table that is edited: its sheet, the row of its headings, its last row and column. */
export interface Table {
  readonly sheet: string
  readonly heads: number
  readonly lastRow: number
  readonly lastColumn: number
}

/** The workbook after LibreOffice has made the edits one after the other, recalculated everything and saved it as .xlsx. */
export async function editInLibreOffice(
  workbook: Uint8Array,
  table: Table,
  edits: readonly Edit[],
): Promise<Uint8Array> {
  const folder = await mkdtemp(join(tmpdir(), 'edits-'))
  try {
    const [input, output] = [join(folder, 'in.xlsx'), join(folder, 'out.xlsx')]
    await writeFile(input, workbook)
    const quiet = [profileOf(folder), ...QUIET]
    // The first start of a profile writes an empty module, over any that is there.
    await runTool('soffice', [...quiet, '--terminate_after_init'], 'libreoffice-calc')
    const program = macro(table, edits, pathToFileURL(input).href, pathToFileURL(output).href)
    await writeFile(join(folder, 'profile', 'user', 'basic', 'Standard', 'Module1.xba'), moduleWith(program))
    await runTool('soffice', [...quiet, 'macro:///Standard.Module1.Run'], 'libreoffice-calc')
    return new Uint8Array(await readFile(output))
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

function macro(
  { sheet, heads, lastRow, lastColumn }: Table,
  edits: readonly Edit[],
  input: string,
  output: string,
): string {
  let last = lastRow
  const steps = edits.map((edit) => {
    const rows = `table.getCellRangeByPosition(0, ${heads}, ${lastColumn - 1}, ${last - 1})`
    if (edit.do === 'sort') return sortRows(rows, edit.by)
    if (edit.do === 'set')
      return `table.getCellByPosition(${edit.column - 1}, ${edit.row - 1}).Value = ${edit.value}`
    if (edit.do === 'filter')
      return [
        `area = table.getCellRangeByPosition(0, ${heads - 1}, ${lastColumn - 1}, ${last - 1})`,
        'wanted = area.createFilterDescriptor(True)',
        'wanted.ContainsHeader = True',
        'Dim choice(0) As New com.sun.star.sheet.TableFilterField',
        `choice(0).Field = ${edit.column - 1}`,
        'choice(0).Operator = com.sun.star.sheet.FilterOperator.EQUAL',
        'choice(0).IsNumeric = False',
        `choice(0).StringValue = "${edit.text}"`,
        'wanted.setFilterFields(choice())',
        'area.filter(wanted)',
      ].join('\n')
    last -= 1
    return `table.Rows.removeByIndex(${edit.row - 1}, 1)`
  })
  return `Sub Run
Dim hidden(0) As New com.sun.star.beans.PropertyValue
hidden(0).Name = "Hidden"
hidden(0).Value = True
book = StarDesktop.loadComponentFromURL("${input}", "_blank", 0, hidden())
table = book.Sheets.getByName("${sheet}")
${steps.join('\n')}
book.calculateAll()
Dim kind(0) As New com.sun.star.beans.PropertyValue
kind(0).Name = "FilterName"
kind(0).Value = "Calc MS Excel 2007 XML"
book.storeToURL("${output}", kind())
book.close(True)
StarDesktop.terminate()
End Sub`
}

let sorts = 0

function sortRows(rows: string, by: readonly { readonly column: number; readonly ascending: boolean }[]) {
  sorts += 1
  return [
    `Dim keys${sorts}(${by.length - 1}) As New com.sun.star.table.TableSortField`,
    ...by.flatMap(({ column, ascending }, i) => [
      `keys${sorts}(${i}).Field = ${column - 1}`,
      `keys${sorts}(${i}).IsAscending = ${ascending ? 'True' : 'False'}`,
    ]),
    `Dim order${sorts}(1) As New com.sun.star.beans.PropertyValue`,
    `order${sorts}(0).Name = "SortFields"`,
    `order${sorts}(0).Value = keys${sorts}()`,
    `order${sorts}(1).Name = "ContainsHeader"`,
    `order${sorts}(1).Value = False`,
    `${rows}.sort(order${sorts}())`,
  ].join('\n')
}
