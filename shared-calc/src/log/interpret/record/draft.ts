import { cellText } from '../../../catalogue/findings/log/cells.js'
import { fieldText } from '../../../catalogue/findings/log/fields.js'
import type { Remark } from '../../../catalogue/findings/remark.js'
import { questions } from '../../../catalogue/questions.js'
import { placeWords } from '../../../contract/record/index.js'
import { plausibleRanges } from '../../../contract/record/plausible.js'
import { fieldKind } from '../../cells/fields.js'
import { interpret } from '../../cells/interpret.js'
import { inRecordUnit, remarkOnNote } from '../../cells/interpret-number.js'
import type { KnownUnit } from '../../cells/units.js'
import type { Written } from '../../cells/written.js'
import { Collector } from '../../collector.js'
import { setPath } from '../../layout/set-path.js'
import type { SeriesReading } from '../../series/read-series.js'
import type { UnstoredField } from '../grid/unstored.js'
import type { Answers, Question, Use } from '../interpretation.js'
import { type Before, valueBefore } from './before.js'

/** A record as it is put together: values with their cells, findings and questions. */
export class Draft {
  readonly record: Record<string, unknown> = {}
  readonly collector = new Collector()
  readonly questions: Question[] = []
  readonly uses: Use[] = []
  /** Raw series that readings were taken from. */
  readonly series: SeriesReading[] = []

  /**
   * @param unstored - values of the form that are formulas without results
   * @param before - what there is without the answers
   */
  constructor(
    readonly answers: Answers,
    readonly unstored: readonly UnstoredField[] = [],
    private readonly before: Before = { record: {}, cells: {} },
  ) {}

  /** The cell of a value that is a formula without a result; undefined where there is none. */
  unstoredCell(name: UnstoredField['name']): string | undefined {
    return this.unstored.find((field) => field.name === name)?.cell
  }

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

  /**
   * The answer given for a field of the record, as the value it stands for; faults are problems. What it takes the place of is named
   * with its cell.
   */
  answered(path: string, unit?: KnownUnit): number | string | undefined {
    const answer = this.answers[path]
    if (answer === undefined) return undefined
    const result = interpret({ kind: 'text', value: answer }, fieldKind(path), unit ? { unit } : {})
    if ('refused' in result) {
      this.collector.refuse(result.refused, result.fault ?? result.message, undefined, path)
      return undefined
    }
    const field = placeWords(path, {})
    const before = valueBefore(this.before.record, path)
    this.tell(
      before === undefined || before.value === result.value
        ? fieldText('log-answer', { field, answer })
        : fieldText('log-answer/instead', { field, answer, before: before.words }),
      this.before.cells[path] ?? '',
      path,
    )
    return result.value
  }

  /** A number of the log in the unit of records, by the reader that layouts use; what it took to read it is said. */
  quantity(written: Written, expected: KnownUnit, cell: string, path: string): number {
    const { other, ...grouped } = written
    const isWhole = other !== undefined && isTooSmall(path, { ...grouped, value: other }, expected)
    if (isWhole) this.tell(cellText('log-text-number', { comma: false, grouped: true }), cell, path)
    else this.askDecimal(written, cell)
    const read = inRecordUnit(isWhole ? grouped : written, expected)
    if ('refused' in read) {
      this.collector.refuse(read.refused, read.message, cell, path)
      return written.value
    }
    for (const remark of read.remarks)
      if (!isWhole || remark.rule !== 'log-text-number') this.tell(remark, cell, path)
    return Number(read.value)
  }

  /** The same of a number that has no unit. */
  plain({ value, note, remarks = [], ...written }: Written, cell: string, path: string): number {
    this.askDecimal({ value, ...written }, cell)
    for (const remark of [...remarks, ...remarkOnNote(note)]) this.tell(remark, cell, path)
    return value
  }

  /** "1,234" may be two numbers. */
  private askDecimal({ value, other }: Written, cell: string): void {
    if (other !== undefined)
      this.ask({ path: 'decimal', cells: [cell], ...questions.decimal({ cell, value, other }) })
  }
}

/** "14,250 ft³" is the volume of no house with a decimal comma, so its digits are grouped. */
const isTooSmall = (path: string, written: Written, expected: KnownUnit): boolean => {
  if (!Object.hasOwn(plausibleRanges, path)) return false
  const { lowest } = plausibleRanges[path as keyof typeof plausibleRanges]
  const read = inRecordUnit(written, expected)
  return path.startsWith('building.') && !('refused' in read) && Number(read.value) < lowest
}
