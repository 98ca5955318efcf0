import type { Workbook } from 'exceljs'
import { dayInWords } from '../../catalogue/words.js'
import type { TestRecord } from '../../contract/record/index.js'
import { allCautions, CAUTIONS_DEFER, cautionName, cautionTexts } from '../../site/preparation/cautions.js'
import { checkPreparation } from '../../site/preparation/check.js'
import { writeLine, writeTable } from './live-cell.js'
import { setUpPage } from './page.js'
import { dress, fonts, headingRow } from './styles.js'

export const PREPARATION = 'Preparation'
const COLUMNS = 5

/** What the method asks of each opening beside what was logged, and the cautions with the tester's answers. */
export function writePreparationSheet(workbook: Workbook, record: TestRecord): void {
  const sheet = workbook.addWorksheet(PREPARATION, { views: [{ showGridLines: false }] })
  sheet.columns = [26, 29, 22, 19, 18].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Preparation'
  const { preparation } = record.test
  dress(sheet.getCell('A2'), {
    font: fonts.muted,
  }).value = `Prepared by ${preparation ?? 'no stated method'}${record.test.purpose ? `, for ${record.test.purpose}` : ''}`
  headingRow(sheet, 4, 'Openings', COLUMNS)
  let row = writeTable(
    sheet,
    5,
    [
      { head: 'opening', align: 'left' },
      { head: 'method requires', align: 'left' },
      { head: 'logged', align: 'left' },
      { head: 'state', align: 'left' },
      { head: 'agrees', align: 'left' },
    ],
    checkPreparation(record).flatMap(({ kind, asked, found }) =>
      found.length === 0
        ? [[kind, asked, '', '', 'not logged']]
        : found.map(({ opening, agrees }) => [
            kind,
            asked,
            [opening.opening === kind ? '' : opening.opening, opening.note].filter(Boolean).join('; '),
            opening.state,
            agrees ? 'agrees' : 'departs',
          ]),
    ),
  )
  headingRow(sheet, row + 1, 'Cautions', COLUMNS)
  const answers = new Map((record.preparation?.cautions ?? []).map((one) => [one.caution, one]))
  row = writeTable(
    sheet,
    row + 2,
    [
      { head: 'caution', align: 'left' },
      { head: 'answer', align: 'left' },
      { head: 'by', align: 'left' },
      { head: 'on', align: 'left' },
      { head: 'note', align: 'left' },
    ],
    allCautions.map((caution) => {
      const answer = answers.get(caution)
      return answer
        ? [cautionName(caution), answer.answer, answer.by, dayInWords(answer.on ?? ''), answer.note ?? '']
        : [cautionName(caution), 'not acknowledged', '', '', '']
    }),
  )
  row += 1
  for (const text of [
    ...allCautions.map((caution) => `${cautionName(caution)}: ${cautionTexts[caution]}`),
    CAUTIONS_DEFER,
  ])
    row = writeLine(sheet, row, text, { columns: COLUMNS, perRow: 136, font: fonts.muted })
  setUpPage(sheet, { landscape: false, title: 'Preparation', lastRow: row, lastColumn: COLUMNS })
}
