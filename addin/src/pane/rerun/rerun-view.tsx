import '../month/archive.css'
import { capital, dayInWords, dayOf, outcomeWords } from '@draughtbook/shared-calc'
import {
  badOutcomes,
  type Difference,
  type RerunOutcome,
  type RerunReport,
  type RerunTest,
  type SignatureState,
  shortNames,
  unreadable,
} from '@draughtbook/shared-calc/rerun'
import { useMemo } from 'preact/hooks'
import { ArchiveRun } from '../month/archive-run.js'
import { ChooseFiles } from '../month/choose-files.js'
import { DownloadButton } from '../month/download-button.js'
import { SortableTable, type TableColumn } from '../month/sortable-table.js'
import { useRun } from '../use-changes.js'
import { differenceColumns, differenceRows, fileColumn } from './difference-rows.js'

/** The re-run's run: lives as long as the page, so that a look at another view loses nothing. */
const rerunRun = new ArchiveRun<RerunTest[], RerunReport>({
  each: (helper, file) => helper.ask<'rerun'>({ kind: 'rerun', ...file }),
  setAside: (file, why) => [unreadable(file, why)],
  report: (helper, results) =>
    helper.ask<'make-rerun'>({ kind: 'make-rerun', tests: results.flat(), asOf: dayOf() }),
})

const outcome: TableColumn<RerunTest> = { head: 'Outcome', value: (test) => test.outcome }
const real = ({ rounding }: Difference): boolean => !rounding

const columnsWith = (names: ReadonlyMap<string, string>): readonly TableColumn<RerunTest>[] => [
  outcome,
  {
    head: 'File',
    value: ({ file, part }) => `${names.get(file) ?? file}${part === undefined ? '' : ` (${part})`}`,
  },
  { head: 'Site', value: ({ site }) => site },
  { head: 'Plot', value: ({ building }) => building },
  { head: 'Date', value: ({ date }) => date, text: ({ date }) => (date ? dayInWords(date) : '') },
  { head: 'Verdict', value: ({ verdict }) => verdict && verdictText(verdict) },
  { head: 'Version', value: ({ calculationVersion }) => calculationVersion },
  { head: 'Signature', value: ({ signature }) => signature && signatureNames[signature.state] },
  { head: 'Differences', value: ({ differences }) => differences.filter(real).length },
  {
    head: 'Why',
    sentences: true,
    value: ({ why, remarks = [], notes }) => [why, ...remarks, ...notes].join('; '),
  },
]

/** A workbook of another program may hold a word of its own. */
const spoken = (outcome: string): string =>
  (outcomeWords as Readonly<Record<string, string>>)[outcome] ?? outcome

const verdictText = ({ recorded, recomputed }: NonNullable<RerunTest['verdict']>): string =>
  recorded === recomputed ? spoken(recorded) : `${spoken(recorded)}, now ${spoken(recomputed)}`

/** As in the report; the words of a report are made in the worker, so they are not loaded here. */
const signatureNames: Readonly<Record<SignatureState['state'], string>> = {
  valid: 'signed and valid',
  'key not given': 'signed with a key you did not give',
  'not signed': 'not signed',
  invalid: 'invalid signature',
}

const looks: Readonly<Record<RerunOutcome, string>> = {
  'exactly as issued': 'good',
  'saved again': 'good',
  agrees: 'good',
  'older calculation version': 'warn',
  differs: 'bad',
  'inputs changed after issue': 'bad',
  'signature not accepted': 'bad',
  'cannot be read': 'warn',
}

/** The re-run of archived workbooks: files in, what differs out. */
export function RerunView() {
  const state = useRun(rerunRun)
  return (
    <section class="archive" aria-labelledby="rerun-title">
      <h2 id="rerun-title">Re-run</h2>
      <p class="hint">
        Choose archived workbooks, or their folder. Each is recalculated from its inputs and compared with
        what it shows. They stay on this machine. To check signatures, choose the public keys (.pub) too.
      </p>
      <ChooseFiles run={rerunRun} state={state} what="re-run" />
      {state.report ? <Result report={state.report} /> : null}
    </section>
  )
}

function Result({ report }: { report: RerunReport }) {
  const counted = Object.entries(report.counts).filter(([, count]) => count > 0)
  const bad = report.tests.filter(({ outcome }) => badOutcomes.includes(outcome)).length
  const names = useMemo(() => shortNames(report.tests.map(({ file }) => file)), [report])
  const columns = useMemo(() => columnsWith(names), [names])
  const differences = useMemo(() => differenceRows(report.tests, names), [report, names])
  return (
    <>
      <p class={bad > 0 ? 'headline bad' : 'headline'}>
        {bad} of {report.tests.length} to check
      </p>
      <p class="totals">
        <b>{report.tests.length}</b> {report.tests.length === 1 ? 'test' : 'tests'} re-run.{' '}
        {capital(counted.map(([word, count]) => `${word}: ${count}`).join('; '))}
      </p>
      <DownloadButton
        label="Download the re-run"
        fileName={`rerun-${report.asOf}.xlsx`}
        write={() => rerunRun.after((helper) => helper.ask<'write-rerun'>({ kind: 'write-rerun', report }))}
      />
      <SortableTable
        caption="Tests re-run"
        rows={report.tests}
        columns={columns}
        choose={outcome}
        rowClass={(test) => looks[test.outcome]}
      />
      {differences.rows.length > 0 ? (
        <SortableTable
          caption="Differences"
          rows={differences.rows}
          columns={differenceColumns}
          choose={fileColumn}
        />
      ) : null}
      {differences.left > 0 ? (
        <p class="hint">{differences.left} more differences are in the download.</p>
      ) : null}
    </>
  )
}
