import ExcelJS from 'exceljs'

/**
 * A made-up workbook with every kind of cell a log may hold. LibreOffice 7.4 saved it as fixtures/every-kind.ods
 * (soffice --headless --convert-to ods); the tests compare that file with what exceljs holds here.
 */
export function sourceBook(): ExcelJS.Workbook {
  const workbook = new ExcelJS.Workbook()
  const log = workbook.addWorksheet('Test log')
  const put = (address: string, value: ExcelJS.CellValue, format?: string) => {
    const cell = log.getCell(address)
    cell.value = value
    if (format !== undefined) cell.numFmt = format
    return cell
  }
  put('A1', 'Invented house, & <co> “quoted”  two spaces')
  put('A2', 'two\nlines')
  put('B3', 412.6, '0.0" m³"')
  put('B4', -61.25)
  put('B5', 0.452, '0.0%')
  put('B6', 1250, '[$€-407] #,##0.00')
  put('B7', new Date(Date.UTC(2026, 9, 14)), 'dd/mm/yyyy')
  put('B8', new Date(Date.UTC(2026, 9, 14, 9, 30)), 'yyyy-mm-dd hh:mm')
  put('B9', 0.4375, 'hh:mm:ss')
  put('B11', { formula: 'B4*2', result: -122.5 })
  put('B12', { formula: 'SUM(B3:B4)', result: 351.35 }, '0.00')
  put('B13', { formula: '1/0', result: { error: '#DIV/0!' } })
  put('B14', { formula: 'IF(B4>0,"up","down")', result: 'down' })
  put('B15', 1.5e-7)
  put('B16', -42.5, '0.0" Pa";[Red]-0.0" Pa"')
  put('C3', 373).font = { strike: true }
  put('C4', 'struck out').font = { strike: true }
  put('C5', {
    richText: [{ text: '373 ' }, { text: 'wrong', font: { strike: true } }, { text: ' 351' }],
  })
  put('C6', 'with a note').note = 'A note that is no part of the cell'
  for (const address of ['E3', 'F3', 'G3', 'E4', 'F4', 'G4']) put(address, 7)
  put('E6', 'over three')
  log.mergeCells('E6:G7')
  put('A20', 'hidden row')
  log.getRow(20).hidden = true
  put('J2', 'hidden column')
  log.getColumn(10).hidden = true
  put('A900', 'far below')
  const old = workbook.addWorksheet('Old job')
  old.getCell('A1').value = 'not this one'
  old.state = 'hidden'
  workbook.definedNames.add("'Test log'!$B$3", 'HouseVolume')
  return workbook
}
