import { rowReasons } from '../../../catalogue/findings/log/runs.js'
import type { Direction } from '../../../contract/record/index.js'
import { bareUnit } from '../../cells/stated-unit.js'
import { LIMITS } from '../../limits.js'
import type { Content } from '../grid/cell-content.js'
import { isUnstored } from '../grid/unstored.js'
import { beginsExample } from '../words/example.js'
import { isPlaceholder, readLabel, says } from '../words/label.js'
import { isOfOneSign } from '../zero-flow/headings.js'
import type { Segment } from './columns.js'
import { directionWord, type KnownColumn, writtenAt } from './columns.js'
import { goesOnFarBelow } from './far-below.js'
import { judged } from './judged-rows.js'
import type { LabelledMean } from './labelled-means.js'
import type { NoteBetween } from './notes-between.js'
import { replacedFlows } from './replaced.js'
import {
  carriedOf,
  directionOf,
  inPa,
  isHidden,
  isOfMoment,
  isSmall,
  textAt,
  ZERO_FLOW_MOST,
} from './row-cells.js'
import { doubtOf, isSentence, marksOf, remarkDoubt } from './row-doubts.js'
import {
  isBelowNumbering,
  isIntended,
  isListOfZero,
  isOfListBefore,
  isSummary,
  isWorkedOut,
  labelledAsField,
  labelsOf,
  leadOf,
  namesOtherQuantity,
  namesResult,
  remarkBeyond,
  saysBoth,
} from './row-labels.js'
import type { Figure, LeftOut, TableRow, WalkedRows } from './table-row.js'
import {
  goesOn,
  isHeadingAgain,
  isNoteBeforeGap,
  isRemarkBeside,
  isWordForPressure,
  labelsAreNotes,
  noteIn,
  saysCovered,
  saysNothing,
  saysStopped,
} from './words-in-rows.js'

const BLANKS = 3
const PAGE = /^(?:page|seite|pagina|página|sida|side|strona|blad|blatt|sheet)\s?\d{1,3}$/i
/** What people write for "as above". */
const DITTO = /^(?:["'″„“”`´,.|~↓-]+|ditto|dto\.?|do\.?|idem|id\.?|as above|same|s\.?\s?o\.?)$/i
/** Not even strong wind brings more with the fan covered, Pa; common practice, no source. */
const ZERO_FLOW_EVER = 30

/** Walks down a table and says of each row what it is. */
export function walkRows(
  segment: Segment,
  pressure: KnownColumn,
  carriers: readonly KnownColumn[],
  ranges: readonly (KnownColumn | undefined)[] = [],
): WalkedRows {
  const { view, head, columns } = segment
  const rows: TableRow[] = []
  const leftOut: LeftOut[] = []
  const direction = columns.find(({ role }) => role === 'direction')
  const test = columns.find(({ role }) => role === 'test')
  const fans = columns.filter(({ label, texts }) => texts > 0 && says(label, 'fan'))
  let blanks = 0
  let last = head.first
  const carried: { direction?: Direction | undefined; test?: string | undefined } = {}
  const carriedRange = new Map<number, string>()
  const marks = marksOf(segment)
  const named: string[] = []
  const notes: NoteBetween[] = []
  const means: LabelledMean[] = []
  const lead = leadOf(segment)
  for (let row = head.first; row < view.rows && rows.length <= LIMITS.readings; row++) {
    const at = view.at(row, pressure.at)
    const flows = carriers.map((carrier) => view.at(row, carrier.at))
    const isOff = fans.some((one) => saysStopped(view.text(row, one.at)))
    if (rows.length > 0 && isOfListBefore(segment, row, carriers)) break
    const all = labelsOf(segment, row, [pressure, ...carriers], lead)
    const labels = isOff
      ? all.filter(({ cell: one }) => !fans.some(({ at: of }) => view.address(row, of) === one))
      : all
    const said = readLabel(labels.map(({ text }) => text).join(' '))
    const cell = view.address(row, pressure.at)
    // The headings again, as at the top of a printed page.
    if (rows.length > 0 && [pressure, ...carriers].every((column) => isHeadingAgain(segment, row, column)))
      continue
    if (!at && flows.every((one) => !one) && !labels.some(({ text }) => says(readLabel(text), 'zero'))) {
      if (rows.length > 0 && labels.some(({ text }) => directionWord(text))) break
      if (++blanks > BLANKS && !goesOnFarBelow(segment, row, [pressure, ...carriers], rows)) break
      notes.push(...labels.filter(({ lead: isLead }) => !isLead).map((label) => ({ row, ...label })))
      continue
    }
    // Zero flow named below a gap belongs to what follows, or is found by its label.
    if (blanks > 0 && rows.length > 0 && says(said, 'zero') && !labels[0]?.lead) break
    if (blanks > 0 && rows.length > 0 && isOfMoment(said) && isSmall(at, pressure)) break
    // "zero" in the column of directions names none: whose it is, its place tells.
    let strange: string | undefined
    if (direction) {
      const own = directionOf(view, row, direction)
      const text = view.text(row, direction.at)
      const other = own === undefined && says(readLabel(text ?? ''), 'zero')
      if (own === undefined && !other && text !== undefined && !DITTO.test(text.trim())) strange = text
      carried.direction = own ?? (other ? undefined : carried.direction)
    }
    if (test) carried.test = textAt(view, row, test.at) ?? carried.test
    const isStruck = at?.kind === 'struck' || flows.some((one) => one?.kind === 'struck')
    const instead =
      isStruck && at?.kind === 'number' && ranges.every((one) => !one)
        ? replacedFlows(segment, row, carriers)
        : undefined
    if (instead && at?.kind === 'number') {
      const pressure = { ...at.written, cell }
      const hidden = isHidden(view, row, carriers)
      rows.push({
        row,
        kind: 'reading',
        pressure,
        carriers: instead,
        ranges: [],
        ...carriedOf(carried),
        hidden,
      })
      last = row
      blanks = 0
      continue
    }
    if (isStruck) {
      leftOut.push({ cell, why: rowReasons.struck, row })
      last = row
      blanks = 0
      continue
    }
    // A form beside the table may state the target of the test.
    const isFull = at?.kind === 'number' && flows.some((one) => one?.kind === 'number')
    const summary = labels.find(
      ({ text, lead: isLead }) =>
        isSummary(text) ||
        (!isLead && isIntended(text)) ||
        (isFull && (isWorkedOut(text) || namesResult(text, named))),
    )
    if (!summary) named.push(...labels.map(({ text }) => text))
    // "Zero | −1.2 | −1.4 | mean | −1.3" is a list with a label, and no row of this table.
    const isOfOtherBlock = head.columns.some((one) => one.at === segment.right + 1)
    const isList =
      summary !== undefined || (!isOfOtherBlock && view.number(row, segment.right + 1) !== undefined)
    if (rows.length > 0 && says(said, 'zero') && (isList || isListOfZero(view, row, carriers))) break
    // "Results | Depress. | Press. | Mean" heads another table.
    const isHeading = at?.kind === 'text' && flows.every((one) => one?.kind === 'text')
    // "Mean of both" alone over the same headings is the title of another table.
    const isOfNext =
      at?.kind !== 'number' &&
      flows.every((one) => one?.kind !== 'number') &&
      [pressure, ...carriers].every((column) => isHeadingAgain(segment, row + 1, column))
    if (summary && (isHeading || isOfNext) && rows.length > 0) break
    if (summary) {
      const carriersOfMean = flows.flatMap((one, index): Figure[] =>
        one?.kind === 'number'
          ? [{ ...one.written, cell: view.address(row, (carriers[index] as KnownColumn).at) }]
          : [],
      )
      if (at?.kind === 'number' && carriersOfMean.length === carriers.length && isSummary(summary.text))
        means.push({
          row: {
            row,
            kind: 'reading',
            pressure: { ...at.written, cell },
            carriers: carriersOfMean,
            ranges: [],
            ...carriedOf(carried),
            hidden: isHidden(view, row, [pressure, ...carriers]),
          },
          labelCell: summary.cell,
        })
      leftOut.push({ cell: summary.cell, why: rowReasons.summary(summary.text), hidden: true })
      last = row
      blanks = 0
      continue
    }
    if (at?.kind === 'error' || flows.some((one) => one?.kind === 'error')) {
      const unstored = [at, ...flows].some(isUnstored)
      leftOut.push({ cell, why: unstored ? rowReasons.unstored : rowReasons.error, row })
      last = row
      continue
    }
    // Under the direction of the rows above it would be read for the other one.
    if (
      strange !== undefined &&
      at?.kind === 'number' &&
      !labels.some(({ text }) => says(readLabel(text), 'zero'))
    ) {
      // "n50 | 0.86" below the readings is a result.
      const isField = labelledAsField([{ text: strange, cell }])
      if ((isField || blanks > 0) && flows.every((one) => one?.kind !== 'number')) break
      leftOut.push({ cell, why: rowReasons.noDirection(strange) })
      last = row
      continue
    }
    // "Fan at its limit, no flow" beside 70 Pa says that the flow is missing.
    const isLarge = at?.kind === 'number' && Math.abs(inPa(at.written, pressure)) > ZERO_FLOW_EVER
    const zero = !isLarge && (isOff || says(said, 'zero'))
    // "Zero flow | 0.6 | 0.3" below the readings keeps to no column of theirs.
    // With a value in the column of pressures only its label in that column could mean so, and there is none.
    const places = at?.kind === 'number' ? [] : [pressure, ...carriers]
    if (zero && rows.length > 0 && saysBoth(labels, said, places, view, row)) break
    const signed = labels.some(({ text }) => isOfOneSign(text)) ? ({ ofOneSign: true } as const) : {}
    const which = says(said, 'before') ? 'before' : says(said, 'after') ? 'after' : undefined
    if (zero && at?.kind !== 'number') {
      // "Zero after; −1.14; Pa" with the value in another column of the row.
      const value = columns
        .map((column) => ({ column, written: writtenAt(view, row, column.at) }))
        .find(({ written }) => written)
      if (!value?.written) break
      rows.push({
        row,
        kind: 'zero',
        ...(which ? { which } : {}),
        ...signed,
        pressure: { ...value.written, cell: view.address(row, value.column.at) },
        carriers: [],
        ranges: [],
        ...carriedOf(carried),
        hidden: isHidden(view, row, [pressure, ...carriers]),
      })
      last = row
      blanks = 0
      continue
    }
    if (at?.kind === 'text') {
      // Below a gap a direction is the title of the other run.
      const isTitle = blanks > 0 && directionWord(at.text) !== undefined
      const hasFlow = flows.some((one) => one?.kind === 'number')
      // Below a gap other numbers may follow under headings of their own.
      const isInside = blanks === 0 && goesOn(view, row, [pressure, ...carriers])
      const isWord =
        isPlaceholder(at.text) ||
        (hasFlow && (isInside || isWordForPressure(at.text, row, rows, view, pressure)))
      // "n.d. | n.d." in a line of the table, and no headings of another.
      const isBlank = !hasFlow && isInside && [at, ...flows].every(saysNothing)
      // "Page 2" over the headings again.
      if (!hasFlow && rows.length > 0 && PAGE.test(at.text.trim())) {
        leftOut.push({ cell, why: at.text, isNote: true })
        continue
      }
      const isNote =
        labelsAreNotes(view, row, carriers) || isNoteBeforeGap(view, row, { pressure, carriers, rows })
      if (isTitle || !(isWord || isBlank || isNote)) break
      if (hasFlow || isBlank) {
        leftOut.push({ cell, why: rowReasons.cellSays('pressure', at.text), row })
        last = row
      } else notes.push({ row, cell, text: at.text })
      continue
    }
    const note = at || rows.length === 0 || blanks > 0 ? undefined : noteIn(view, row, pressure, carriers)
    if (note) {
      notes.push(note)
      continue
    }
    if (at?.kind !== 'number') {
      if (!at && flows.some((one) => one?.kind === 'number')) {
        if (zero) break
        // A flow without a pressure below the readings belongs to something else.
        if (blanks > 0) break
        leftOut.push({ cell, why: rowReasons.noPressure, row })
        last = row
        continue
      }
      break
    }
    if (blanks > 0 && !zero && labelledAsField(labels)) break
    if (rows.length > 0 && !zero && isBelowNumbering(segment, row)) break
    const gap = blanks > 0 && rows.length > 0
    blanks = 0
    const written = { ...at.written, cell }
    const hidden = isHidden(view, row, [pressure, ...carriers])
    const figures = flows.map((one, index): Figure | undefined =>
      one?.kind === 'number' && one.written.value !== 0
        ? { ...one.written, cell: view.address(row, (carriers[index] as KnownColumn).at) }
        : undefined,
    )
    const without = figures.every((one) => one === undefined)
    const onlyUnits = flows.every(
      (one) =>
        !one ||
        one.kind === 'number' ||
        (one.kind === 'text' &&
          (bareUnit(one.text) !== undefined || isPlaceholder(one.text) || saysCovered(one.text))),
    )
    if (without && !zero && rows.length > 0 && (labelledAsField(labels) || namesOtherQuantity(labels))) break
    // Below a gap a small pressure alone or with its unit, as in the lines over another table, may be anything.
    if (without && !zero && gap && flows.every((one) => !one || isUnitOfPressure(one))) break
    if (without && !zero && rows.length > 0 && isRemarkBeside(segment, row)) break
    const quiet = without && onlyUnits && Math.abs(inPa(written, pressure)) <= ZERO_FLOW_MOST
    const isEmpty = quiet && !zero && written.value === 0 && flows.some((one) => one?.kind === 'number')
    // A gauge shows a little flow with the fan covered too.
    const covered = zero && Math.abs(inPa(written, pressure)) <= ZERO_FLOW_MOST
    if ((zero && without) || covered || quiet) {
      rows.push({
        row,
        kind: 'zero',
        ...(which ? { which } : {}),
        ...signed,
        pressure: written,
        carriers: [],
        ranges: [],
        ...carriedOf(carried),
        hidden,
        ...(isEmpty ? { empty: true } : {}),
      })
      last = row
      continue
    }
    if (without) {
      if (labelledAsField(labels)) break
      const at = flows.findIndex((one) => one?.kind === 'text')
      const text = flows[at]
      const carrier = carriers[at]
      leftOut.push(
        text?.kind === 'text' && carrier
          ? { cell: view.address(row, carrier.at), why: rowReasons.cellSays('flow', text.text), row }
          : { cell, why: rowReasons.noFlow, row },
      )
      last = row
      continue
    }
    const example = labels.find(({ text }) => beginsExample(text))
    if (example) {
      leftOut.push({ cell, why: rowReasons.rowSays(example.text) })
      last = row
      continue
    }
    const remark = labels.find(({ text: one, lead }) => !lead && says(readLabel(one), 'leftOut'))
    const isLong = remark !== undefined && isSentence(remark.text)
    const refused = isLong ? undefined : remark
    const marked = refused ? undefined : isLong ? remarkDoubt(remark.text) : marks.of(row)
    const shown = doubtOf(view, row, [pressure, ...carriers])
    const out = refused ? rowReasons.rowSays(refused.text) : [marked, shown].find((one) => one?.out)?.why
    if (out !== undefined) {
      leftOut.push({ cell, why: out })
      last = row
      continue
    }
    const repeated = labels.find(({ text: one, lead }) => !lead && says(readLabel(one), 'repeated'))
    const aside = repeated?.text ?? remarkBeyond(segment, row)
    const again = aside === undefined ? undefined : remarkDoubt(aside)
    const doubt = marked ?? again ?? shown
    const ringed = ranges.map((range) => {
      if (!range) return undefined
      const text = textAt(view, row, range.at) ?? carriedRange.get(range.at)
      if (text === undefined) return undefined
      carriedRange.set(range.at, text)
      return { text, cell: view.address(row, range.at) }
    })
    rows.push({
      row,
      kind: 'reading',
      pressure: written,
      carriers: figures,
      ranges: ringed,
      ...carriedOf(carried),
      hidden,
      ...(doubt ? { doubt } : {}),
    })
    last = row
  }
  return {
    rows: judged(segment, { rows, notes, means, leftOut }),
    leftOut,
    last,
  }
}

const isUnitOfPressure = (one: Content): boolean =>
  one.kind === 'text' && bareUnit(one.text)?.kind === 'pressure'
