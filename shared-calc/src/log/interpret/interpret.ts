import { listed, quoted } from '../../catalogue/words.js'
import { decimalOf, tellMixedDecimals } from '../grid/decimal.js'
import type { Grid } from '../grid/grid.js'
import { withReferences } from '../grid/references.js'
import { openLog } from '../open-log.js'
import { notALog } from '../own-report.js'
import { problem } from '../problem.js'
import { readAnswers } from './answers.js'
import { takenWith, tellFormer } from './fields/former-columns.js'
import { fieldsOfRun } from './fields/of-run.js'
import { type FoundInLog, findInLog } from './found-in-log.js'
import { tellUnstored, unstoredFields } from './grid/unstored.js'
import type { Answers, Interpretation, Question } from './interpretation.js'
import { nothingFound } from './nothing-found.js'
import { listsIn, type TestWithUses, testOf } from './test-of-group.js'
import { chooseTest } from './tests/chosen.js'
import { tellCopies } from './tests/copies.js'
import { groupTests, valueText } from './tests/group.js'
import { leftOutTests } from './tests/left-out.js'
import { tellMeans } from './tests/mean-runs.js'
import { isOfSameTest, keyOfRow } from './tests/names-of-tests.js'
import { tellSamples } from './tests/samples-beside.js'
import { scopeOf } from './tests/scope.js'
import type { TestGroup } from './tests/test-group.js'
import { unreadValues } from './unread-values.js'
import { habitsOf } from './words/habits.js'
import { type ZeroFlowOfLog, zeroFlowOfLog } from './zero-flow/of-log.js'

export interface InterpretOptions {
  /** Answers to questions, by path, as typed. */
  readonly answers?: Answers
  /** Day the file was last changed, YYYY-MM-DD: taken, with a caution, where the log states no date. */
  readonly fileDate?: string
}

/**
 * Reads a log nobody has described: finds its tests, and for each either a whole record or the questions that are open.
 * @param log - the file's bytes with its name, or a grid that is open already
 * @throws LogError where the file cannot be opened
 */
export function interpretLog(
  log: Grid | { readonly bytes: Uint8Array; readonly fileName: string },
  options: InterpretOptions = {},
): Interpretation {
  const { answers, problems } = readAnswers(options.answers ?? {})
  const decimal = answers.decimal === ',' || answers.decimal === '.' ? answers.decimal : undefined
  const opened = 'bytes' in log ? openLog(log.bytes, log.fileName, decimal) : log
  const grid = opened.kind === 'workbook' ? withReferences(opened) : opened
  const nothing = { tests: [], questions: [], uses: [] }
  const why = notALog(grid)
  if (why !== undefined)
    return {
      ...nothing,
      findings: grid.findings,
      problems: [problem('no-test', why)],
    }
  const found = findInLog(grid, answers, decimal ?? decimalOf(grid))
  const { visible, tables, formOf, fields, runs, series, unsearched } = found
  if (runs.length + series.length === 0)
    return {
      ...nothing,
      findings: [...grid.findings, ...unsearched.findings()],
      problems: [...problems, nothingFound(visible, answers)],
    }
  const rowFields = new Map(runs.map((run) => [run, fieldsOfRun(run)]))
  const groups = groupTests(runs, series, fields, {
    keyOf: (run) => keyOfRow(rowFields.get(run) ?? [], run),
    isOfSame: (one, other) => isOfSameTest(rowFields.get(one) ?? [], rowFields.get(other) ?? []),
  })
  const chosen = chosenOf(groups, answers.test, found)
  if (!chosen)
    return { ...nothing, findings: grid.findings, problems: [noSuchTest(answers.test ?? '', groups)] }
  const zeroFlow = zeroFlowOfLog(
    {
      tables: tables
        .filter(({ view }) => !view.sheet.hidden || chosen.some(({ hidden }) => hidden))
        .map((table) => ({
          ...table,
          isTaken: takenWith(table.isTaken, formOf.get(table.view)?.former ?? []),
        })),
      visible,
      runs,
      chosen,
      fields,
      unsearched,
      mirroredOf: (view) => formOf.get(view)?.mirrored,
    },
    answers['zeroFlow.labels'] === 'zero flow',
  )
  const unstored = visible.flatMap(unstoredFields)
  const [lists, habits] = [listsIn(found, groups), habitsOf(visible)]
  const tests = chosen.map((group) =>
    testOf(group, {
      grid,
      answers,
      fileDate: options.fileDate,
      found,
      groups,
      rowFields,
      ...lists,
      zeroFlow,
      habits,
      unstored,
    }),
  )
  return {
    tests: tests.map(({ uses: _, ...test }) => test),
    questions: uniqueQuestions(tests.flatMap(({ questions }) => questions)),
    uses: tests.flatMap(({ uses }) => uses),
    findings: [
      ...grid.findings,
      ...(decimal ? [] : tellMixedDecimals(grid)),
      ...unsearched.findings(),
      ...tellCopies(found.copies),
      ...tellMeans(found.means),
      ...tellSamples(found.sampled),
      ...[...formOf.values()].flatMap(({ former }) => tellFormer(former)),
      ...leftOutTests(groups, chosen),
      ...tellUnstored(unstored),
      ...lostIn(found, groups, chosen, tests, zeroFlow),
    ],
    problems,
  }
}

/** The tests to read: the one that was asked for, else those that count, else those that are shown, else all. */
function chosenOf(
  groups: readonly TestGroup[],
  wanted: string | undefined,
  { fields }: FoundInLog,
): readonly TestGroup[] | undefined {
  const buildingOf = (group: TestGroup) => {
    const [field] = scopeOf(group, groups, fields, []).all('name')
    return field && valueText(field)
  }
  if (wanted !== undefined) return chooseTest(groups, wanted, buildingOf)
  const shown = groups.filter(({ hidden }) => !hidden)
  const counting = shown.filter(({ refusedBy }) => !refusedBy)
  return [counting, shown, groups].find((list) => list.length > 0) ?? []
}

const noSuchTest = (wanted: string, groups: readonly TestGroup[]) =>
  problem(
    'not-found',
    `this log has no test ${quoted(wanted)}: ${
      groups.length === 1
        ? `its only test is ${quoted(groups[0]?.key ?? '')}`
        : `choose ${listed(
            groups.map(({ key }) => quoted(key)),
            'or',
          )}`
    }`,
    { path: 'test' },
  )

/** What was read into nothing and named nowhere. */
function lostIn(
  { tables, fields, formOf }: FoundInLog,
  groups: readonly TestGroup[],
  chosen: readonly TestGroup[],
  tests: readonly TestWithUses[],
  zeroFlow: ZeroFlowOfLog,
) {
  const ofChosen = new Set(chosen.flatMap((group) => group.runs))
  return unreadValues(
    tables.filter((table) => groups.length === chosen.length || table.runs.every((run) => ofChosen.has(run))),
    tests.flatMap(({ uses }) => uses),
    [
      ...fields.flatMap(({ cell, also = [] }) => [cell, ...also]),
      ...zeroFlow.found.flatMap(({ figures }) => figures.map(({ cell }) => cell)),
      ...[...formOf.values()].flatMap(({ former }) => former.flatMap(({ cells }) => cells)),
      ...tests.flatMap(({ cells, findings }) => [
        ...Object.values(cells),
        ...findings.flatMap((finding) => finding.cells ?? []),
      ]),
    ],
  )
}

const uniqueQuestions = (questions: readonly Question[]): Question[] => {
  const found = new Map<string, Question>()
  for (const question of questions) {
    const known = found.get(`${question.path}|${question.text}`)
    found.set(
      `${question.path}|${question.text}`,
      known ? { ...known, cells: [...new Set([...known.cells, ...question.cells])] } : question,
    )
  }
  return [...found.values()]
}
