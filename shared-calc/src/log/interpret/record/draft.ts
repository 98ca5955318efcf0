import { cellText } from '../../../catalogue/findings/log/cells.js'
import { fieldText } from '../../../catalogue/findings/log/fields.js'
import type { Remark } from '../../../catalogue/findings/remark.js'
import { placeWords } from '../../../contract/record/index.js'
import { fieldKind } from '../../cells/fields.js'
import { interpret } from '../../cells/interpret.js'
import type { KnownUnit } from '../../cells/units.js'
import { conversionText, shown, toRecordUnit } from '../../cells/units.js'
import { Collector } from '../../collector.js'
import { setPath } from '../../layout/set-path.js'
import type { SeriesReading } from '../../series/read-series.js'
import type { Answers, Question, Use } from '../interpretation.js'

/** A record as it is put together: values with their cells, findings and questions. */
export class Draft {
  readonly record: Record<string, unknown> = {}
  readonly collector = new Collector()
  readonly questions: Question[] = []
  readonly uses: Use[] = []
  /** Raw series that readings were taken from. */
  readonly series: SeriesReading[] = []

  constructor(readonly answers: Answers) {}

  put(path: string, value: unknown, cell?: string): void {
    setPath(this.record, path, value)
    if (cell) this.collector.cells[path] = cell
  }

  /** Says something of one cell, of several, or of the log as a whole. */
  tell(remark: Remark, cells: string | readonly string[], path: string): void {
    for (const cell of cells.length === 0 ? [''] : typeof cells === 'string' ? [cells] : cells)
      this.collector.tell(remark, cell, path)
  }

  ask(question: Question): void {
    if (!this.questions.some(({ path }) => path === question.path)) this.questions.push(question)
  }

  use(cells: string, heading: string, usedAs: string, path: string, reason?: string): void {
    this.uses.push({ cells, heading, usedAs, path, ...(reason ? { reason } : {}) })
  }

  /** The answer given for a field of the record, as the value it stands for; faults are problems. */
  answered(path: string, unit?: KnownUnit): number | string | undefined {
    const typed = this.answers[path]
    if (typed === undefined) return undefined
    const result = interpret({ kind: 'text', value: typed }, fieldKind(path), unit ? { unit } : {})
    if ('refused' in result) {
      this.collector.refuse(result.refused, `${result.message} (given with --set ${path}=…)`, undefined, path)
      return undefined
    }
    this.tell(fieldText('log-answer', { field: placeWords(path, {}), answer: typed }), '', path)
    return result.value
  }

  /** A number in the unit of records; a conversion is noted. */
  converted(value: number, unit: KnownUnit, cell: string, path: string): number {
    const inRecord = toRecordUnit(value, unit)
    if (inRecord !== value)
      this.tell(
        cellText('log-unit', { unit: shown(unit.unit), conversion: conversionText(unit) }),
        cell,
        path,
      )
    return inRecord
  }
}
