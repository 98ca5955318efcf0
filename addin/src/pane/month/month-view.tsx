import './archive.css'
import {
  counted,
  dayInWords,
  dayOf,
  judgedTexts,
  outcomeWords,
  results,
  unitText,
  visible,
} from '@draughtbook/shared-calc'
import type { ReadLines, Register, RegisterRow } from '@draughtbook/shared-calc/register'
import { useState } from 'preact/hooks'
import { useRun } from '../use-changes.js'
import { ArchiveRun } from './archive-run.js'
import { ChooseFiles, LeftOutList } from './choose-files.js'
import { DownloadButton } from './download-button.js'
import { SortableTable, type TableColumn } from './sortable-table.js'

/** Month asked for, as 2026-10; '' for every test. */
const asked = { month: '' }

/** The register's run: lives as long as the page, so that a look at another view loses nothing. */
const monthRun = new ArchiveRun<ReadLines, Register>({
  each: (helper, file) => helper.ask<'read'>({ kind: 'read', ...file }),
  setAside: (file, why) => ({ lines: [], leftOut: [{ file, why }] }),
  report: (helper, read, others) =>
    helper.ask<'make-register'>({
      kind: 'make-register',
      read,
      others,
      asOf: dayOf(),
      ...(asked.month === '' ? {} : { month: asked.month }),
    }),
})

const issued = (row: RegisterRow): RegisterRow | undefined => (row.role === 'altered' ? undefined : row)

const figure = (key: 'n50' | 'qE50' | 'q50'): TableColumn<RegisterRow> => ({
  head: results[key].short,
  unit: unitText(results[key].unit),
  value: (row) => issued(row)?.results[key],
  text: (row) => issued(row)?.results[key]?.toFixed(results[key].decimals) ?? '',
})

/** Nothing of an altered summary is quoted. */
const verdict: TableColumn<RegisterRow> = {
  head: 'Verdict',
  value: ({ role, outcome }) => (role === 'altered' ? 'altered' : outcomeWords[outcome]),
}

/** Targets limit different quantities: each margin has its own unit. */
const marginText = (judged: RegisterRow['judged']): string =>
  judged ? [judgedTexts(judged).margin, unitText(judged.unit)].filter(Boolean).join(' ') : ''

const columns: readonly TableColumn<RegisterRow>[] = [
  { head: 'No.', value: ({ row }) => row },
  { head: 'Site', value: ({ site }) => site },
  { head: 'Plot', value: ({ building }) => building },
  verdict,
  { head: 'Stage', value: ({ stage }) => stage },
  { head: 'Date', value: ({ date }) => date, text: ({ date }) => dayInWords(date) },
  { head: 'Tester', value: ({ tester }) => tester },
  figure('n50'),
  figure('qE50'),
  figure('q50'),
  {
    head: 'Margin',
    value: (row) => issued(row)?.judged?.margin,
    text: (row) => marginText(issued(row)?.judged),
  },
  { head: 'Findings', value: ({ findings }) => findings.length },
  {
    head: 'Which test',
    value: ({ role, of }) => (of === undefined ? role : `${role} of ${of}`),
  },
  {
    head: 'To check',
    sentences: true,
    value: ({ altered, remark }) => [altered, remark].filter(Boolean).join('; '),
  },
  { head: 'File', value: ({ file }) => file },
]

/** The month's register: files in, a table and a workbook out. */
export function MonthView() {
  const state = useRun(monthRun)
  const [month, setMonth] = useState(asked.month)
  return (
    <section class="archive" aria-labelledby="month-title">
      <h2 id="month-title">Month</h2>
      <p class="hint">
        Choose the month’s workbooks, or their folder. They stay on this machine. For workbooks of other
        programs, choose their layouts (.json) too.
      </p>
      <label class="month-choice">
        Month
        <input
          type="month"
          value={month}
          onInput={({ currentTarget: { value } }) => {
            asked.month = value
            setMonth(value)
            void monthRun.remake()
          }}
        />
        <span class="hint">leave empty for every test</span>
      </label>
      <ChooseFiles run={monthRun} state={state} what="register" />
      {state.report ? <Result register={state.report} /> : null}
    </section>
  )
}

function Result({ register }: { register: Register }) {
  const { overall, rows, toRetest, toRetestElsewhere, calibrations, leftOut, changes, month } = register
  const altered = overall.classes.altered
  const rate = overall.firstPassRate
  const crossing = changes.filter(({ warning }) => warning !== undefined)
  return (
    <>
      <p class="totals">
        {counted(overall.tests, 'row')}, <b>{counted(overall.counting, 'test')}</b> included in totals:{' '}
        <b>{overall.meets}</b> met the target, <b>{overall.misses}</b> failed, <b>{overall.notValid}</b> not
        valid
        {overall.noTarget > 0 ? (
          <>
            , <b>{overall.noTarget}</b> without a target
          </>
        ) : null}
        {rate === undefined ? '' : `; ${Math.round(rate * 100)} % passed first time`}
        {overall.medianN50 === undefined ? '' : `; median n50 ${overall.medianN50.toFixed(2)} 1/h`}.{' '}
        {counted(toRetest.length + toRetestElsewhere.length, 'plot')} to retest;{' '}
        {counted(calibrations.length, 'calibration')} expired or expiring within 60 days.
      </p>
      {altered > 0 ? (
        <p class="altered">
          {counted(altered, 'summary was', 'summaries were')} altered after issue.{' '}
          {altered === 1 ? 'Its' : 'Their'} figures are not shown.
        </p>
      ) : null}
      <DownloadButton
        label="Download the register"
        fileName={`register${month === undefined ? '' : `-${month}`}.xlsx`}
        write={() =>
          monthRun.after((helper) => helper.ask<'write-register'>({ kind: 'write-register', register }))
        }
      />
      {crossing.map(({ building, laterRow, warning }) => (
        <p class="hint" key={laterRow}>
          {building}: {warning}
        </p>
      ))}
      {toRetestElsewhere.length > 0 ? (
        <details>
          <summary>{counted(toRetestElsewhere.length, 'plot')} to retest after tests of other months</summary>
          <ul>
            {toRetestElsewhere.map(({ file, site, building, date, outcome }) => (
              <li key={`${file} ${building}`}>
                {[site, building].filter(Boolean).join(', ')}: {outcomeWords[outcome]} on {dayInWords(date)} (
                {visible(file)})
              </li>
            ))}
          </ul>
        </details>
      ) : null}
      <LeftOutList leftOut={leftOut} />
      <SortableTable
        caption="Tests in the register"
        rows={rows}
        columns={columns}
        choose={verdict}
        rowClass={({ counts, outcome, role }) =>
          `${counts ? '' : 'not-counting '}${role === 'altered' ? 'misses' : outcome.replace(' ', '-')}`
        }
      />
    </>
  )
}
