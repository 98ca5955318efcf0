import { openLog, parseLayout, readLog } from '@draughtbook/shared-calc/log'
import ExcelJS from 'exceljs'
import { unzipSync } from 'fflate'
import { SaxesParser } from 'saxes'
import { sixSheetLayout, sixSheets, WORKBOOKS } from './log-workbooks.js'
import { compare } from './report.js'

/** Parts the layout needs: the workbook's own, texts, formats, and the two sheets it names. */
const NEEDED = new Set([
  '_rels/.rels',
  'xl/workbook.xml',
  'xl/_rels/workbook.xml.rels',
  'xl/sharedStrings.xml',
  'xl/styles.xml',
  'xl/worksheets/sheet1.xml',
  'xl/worksheets/sheet2.xml',
])

/** Bare unzip and SAX of the needed parts: every element and text is seen, none is kept. */
function bare(bytes: Uint8Array): number {
  let seen = 0
  for (const part of Object.values(unzipSync(bytes, { filter: ({ name }) => NEEDED.has(name) }))) {
    const parser = new SaxesParser({ position: false })
    parser.on('opentag', () => {
      seen++
    })
    parser.on('text', () => {
      seen++
    })
    parser.write(new TextDecoder().decode(part)).close()
  }
  return seen
}

/** Reading test logs of six sheets, 200 different ones in turn. */
export async function run(): Promise<void> {
  const books: Uint8Array[] = []
  const own: Uint8Array[] = []
  for (let index = 0; index < WORKBOOKS; index++) {
    books.push(await sixSheets(index))
    own.push(await sixSheets(index, true))
  }
  const layout = parseLayout(sixSheetLayout)
  let turn = 0
  const next = () => books[turn++ % WORKBOOKS] as Uint8Array
  const nextOwn = () => own[turn++ % WORKBOOKS] as Uint8Array
  const ours = {
    name: 'readLog: checked record, findings and cells',
    run: () => readLog(next(), 'log.xlsx', { layout }),
  }
  const first = readLog(books[0] as Uint8Array, 'log.xlsx', { layout })
  if (first.problems.length > 0) throw new Error(JSON.stringify(first.problems))
  await compare(
    `One of ${WORKBOOKS} six-sheet workbooks: reading what the layout needs against loading it whole`,
    {
      name: 'exceljs: full load of the same workbook',
      run: async () => {
        const workbook = new ExcelJS.Workbook()
        return workbook.xlsx.load(next().slice().buffer)
      },
    },
    [ours],
    1 / 3,
  )
  await compare(
    'The same against bare unzip (fflate) and SAX (saxes) of the needed parts',
    { name: 'bare unzip + SAX, nothing kept', run: () => bare(next()) },
    [
      {
        name: 'openLog: the needed sheets as cells, guards and checksums included',
        run: () => {
          const grid = openLog(next(), 'log.xlsx')
          return [grid.sheet('Cover'), grid.sheet('Readings')]
        },
      },
      ours,
    ],
    2,
  )
  await compare(
    'The same for workbooks that share neither formats nor names of sheets, so that hardly a part is remembered',
    { name: 'bare unzip + SAX, nothing kept', run: () => bare(nextOwn()) },
    [{ ...ours, run: () => readLog(nextOwn(), 'log.xlsx', { layout }) }],
    2,
  )
}
