import { NDJSON } from '../archive/answer-archive.js'
import { BuildingQuery } from '../routes/buildings.js'
import { EvaluationQuery } from '../routes/evaluations.js'
import { RegisterQuery } from '../routes/registers.js'
import { RerunQuery } from '../routes/reruns.js'
import { StagesQuery } from '../routes/stages.js'
import { WorkbookQuery, XLSX } from '../routes/workbooks.js'
import type { Operation } from './operation.js'

const json = (schema: string) => ({ schema })
const ok = (says: string, schema: string) => ({ status: 200, says, content: json(schema) })

const linesThen = (result: string): string =>
  `One line of JSON for each file, then ${result}. A workbook instead, if Accept asks for one`

const uploads = {
  file: 'multipart/form-data',
  parts: {
    files: 'the workbooks',
    layouts: 'layouts (.json), for logs in other workbooks',
  },
} as const

const calculation: readonly Operation[] = [
  {
    method: 'post',
    path: '/v1/evaluations',
    summary: 'Evaluate a test record',
    query: EvaluationQuery,
    body: json('TestRecord'),
    answer: ok('The evaluation', 'Evaluation'),
    problems: [400, 413, 415, 422],
  },
  {
    method: 'post',
    path: '/v1/workbooks',
    summary: 'Write the summary workbook of a test record',
    query: WorkbookQuery,
    body: json('TestRecord'),
    answer: {
      status: 200,
      says: 'The workbook',
      content: { file: XLSX },
    },
    problems: [400, 413, 415, 422],
  },
  {
    method: 'post',
    path: '/v1/registers',
    summary: 'Make a register of workbooks: one row per test',
    query: RegisterQuery,
    body: uploads,
    answer: {
      status: 200,
      says: linesThen('the register'),
      content: { file: NDJSON },
    },
    problems: [400, 406, 413, 415, 422],
  },
  {
    method: 'post',
    path: '/v1/buildings',
    summary: 'Combine the tests of several homes in one building',
    query: BuildingQuery,
    body: uploads,
    answer: {
      status: 200,
      says: linesThen('the building'),
      content: { file: NDJSON },
    },
    problems: [400, 406, 413, 415, 422],
  },
  {
    method: 'post',
    path: '/v1/stages',
    summary: 'Show how much each plot may leak at each stage, and whether the next trade may start',
    query: StagesQuery,
    body: uploads,
    answer: {
      status: 200,
      says: linesThen('the stages'),
      content: { file: NDJSON },
    },
    problems: [400, 406, 413, 415, 422],
  },
  {
    method: 'post',
    path: '/v1/reruns',
    summary: 'Re-run archived workbooks and list what differs from their records',
    query: RerunQuery,
    body: {
      file: 'multipart/form-data',
      parts: { ...uploads.parts, keys: 'public keys (.pub), to check signatures' },
    },
    answer: {
      status: 200,
      says: linesThen('what differs'),
      content: { file: NDJSON },
    },
    problems: [400, 406, 413, 415, 422],
  },
  {
    method: 'post',
    path: '/v1/readings',
    summary: 'Read ranges of cells as a test log, with a given, matching or proposed layout',
    body: json('ReadingsRequest'),
    answer: ok(
      'The tests with their findings and cells; a proposal only, if no layout matches',
      'ReadingsAnswer',
    ),
    problems: [400, 413, 415, 422],
  },
  {
    method: 'get',
    path: '/v1/methods',
    summary: 'Test methods, with their limits and terms',
    answer: ok('The methods', 'MethodList'),
    problems: [400],
  },
  {
    method: 'get',
    path: '/v1/targets',
    summary: 'Preset targets. Local codes decide',
    answer: ok('The targets', 'TargetList'),
    problems: [400],
  },
  {
    method: 'get',
    path: '/v1/formulas',
    summary: 'Every formula with its unit, expression and source',
    answer: ok('The formulas', 'FormulaList'),
    problems: [400],
  },
]

const site: readonly Operation[] = [
  {
    method: 'get',
    path: '/v1/preparation',
    summary: 'Openings, what each preparation method requires of them, and cautions to acknowledge',
    answer: ok('The lists', 'PreparationLists'),
    problems: [400],
  },
  {
    method: 'post',
    path: '/v1/take-offs',
    summary: 'Calculate volume and areas from a take-off',
    body: json('TakeOffRequest'),
    answer: {
      status: 200,
      says: 'Both volumes and the areas, or a workbook with live formulas if Accept asks for one',
      content: { schema: 'TakeOffResult', orFile: XLSX },
    },
    problems: [400, 406, 413, 415, 422],
  },
  {
    method: 'post',
    path: '/v1/plans',
    summary: 'Plan a test. The firm’s devices are used if the plan names none',
    body: json('PlanRequest'),
    answer: {
      status: 200,
      says: 'Pressures to set, expected flows, devices and weather, or a sheet for the site if Accept asks for a workbook',
      content: { schema: 'PlanResult', orFile: XLSX },
    },
    problems: [400, 406, 413, 415, 422],
  },
  {
    method: 'post',
    path: '/v1/running-estimates',
    summary: 'Estimate a run in progress. The answer is never a result',
    body: json('UnfinishedRequest'),
    answer: ok(
      'The estimate, the next pressure, what to repeat, and whether there are enough readings',
      'WhileReading',
    ),
    problems: [400, 413, 415, 422],
  },
  {
    method: 'post',
    path: '/v1/leak-reports',
    summary: 'Show the leakage still to seal and the gain of each repair round',
    body: json('TestRecord'),
    answer: ok('The leak report', 'LeakReport'),
    problems: [400, 413, 415, 422],
  },
]

const library: readonly Operation[] = [
  {
    method: 'get',
    path: '/v1/library',
    summary: 'Contents of the firm’s library, and errors in its files',
    answer: ok('Number of entries by kind, and errors', 'LibrarySummary'),
    problems: [404],
  },
  {
    method: 'get',
    path: '/v1/library/{kind}',
    summary: 'All entries of a kind: devices, gauges, layouts or targets',
    answer: ok('The entries', 'LibraryListing'),
    problems: [404],
  },
  {
    method: 'get',
    path: '/v1/library/{kind}/{id}',
    summary: 'One entry, with the ETag of its version',
    answer: ok('The entry', 'LibraryEntry'),
    problems: [304, 404],
    headers: ['If-None-Match'],
  },
  {
    method: 'put',
    path: '/v1/library/{kind}/{id}',
    summary: 'Save an entry: If-None-Match: * for a new one, If-Match for a change',
    body: json('LibraryEntry'),
    answer: ok('Saved; 201 for a new entry', 'LibrarySaved'),
    creates: true,
    problems: [400, 403, 404, 412, 413, 415, 422, 428, 507],
    headers: ['If-Match', 'If-None-Match'],
  },
  {
    method: 'delete',
    path: '/v1/library/{kind}/{id}',
    summary: 'Remove an entry; its history stays',
    answer: { status: 204, says: 'Removed' },
    problems: [403, 404, 412, 428, 507],
    headers: ['If-Match'],
  },
  {
    method: 'get',
    path: '/v1/library/{kind}/{id}/history',
    summary: 'Versions of an entry, newest first',
    answer: ok('The versions', 'LibraryHistory'),
    problems: [404],
  },
  {
    method: 'delete',
    path: '/v1/library/{kind}/{id}/history',
    summary: 'Delete the earlier versions of an entry; the present one stays',
    answer: { status: 204, says: 'Deleted' },
    problems: [403, 404, 507],
  },
  {
    method: 'get',
    path: '/v1/library/{kind}/{id}/history/{version}',
    summary: 'An earlier version of an entry',
    answer: ok('The entry in that version', 'LibraryEntry'),
    problems: [404],
  },
]

const firm: readonly Operation[] = [
  {
    method: 'get',
    path: '/v1/firm',
    summary: 'The firm’s name and logo for the head of the summary',
    answer: ok(
      'Name, and logo in base64. `library` is there if the service has one, `changesLibrary` if this token may change it. Empty without a library',
      'Firm',
    ),
    problems: [],
  },
]

const running: readonly Operation[] = [
  {
    method: 'get',
    path: '/healthz',
    summary: 'Show that the process is alive',
    open: true,
    answer: ok('Alive', 'Alive'),
  },
  {
    method: 'get',
    path: '/readyz',
    summary:
      'Show whether the service takes work. It answers 503 while it starts, saying what it waits for, and while it stops',
    open: true,
    answer: ok('Ready', 'Readiness'),
  },
  {
    method: 'get',
    path: '/metrics',
    summary: 'Metrics in the Prometheus text format',
    answer: { status: 200, says: 'The metrics', content: { file: 'text/plain' } },
  },
]

/** Every operation, in the order the API page shows them. A new route has one entry here. */
export const operations: readonly Operation[] = [...calculation, ...site, ...library, ...firm, ...running]
