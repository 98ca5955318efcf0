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

const calculation: readonly Operation[] = [
  {
    method: 'post',
    path: '/v1/evaluations',
    summary: 'Evaluate a test record',
    query: EvaluationQuery,
    body: json('TestRecord'),
    answer: ok(
      'The evaluation; with trace=1 every step of its working, with uncertainty=1 its budget, further fits and the probability of meeting the target',
      'Evaluation',
    ),
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
      says: 'The workbook; with uncertainty=1 also its sheet Uncertainty',
      content: { file: XLSX },
    },
    problems: [400, 413, 415, 422],
  },
  {
    method: 'post',
    path: '/v1/registers',
    summary: 'Make the register of workbooks (parts `files`, and `layouts` for other workbooks)',
    query: RegisterQuery,
    body: { file: 'multipart/form-data' },
    answer: {
      status: 200,
      says: 'JSON lines: progress, then the register; or the register as a workbook, by Accept',
      content: { file: NDJSON },
    },
    problems: [400, 406, 413, 415, 422],
  },
  {
    method: 'post',
    path: '/v1/buildings',
    summary: 'Combine the tests of several homes in one building (parts `files`, and `layouts`)',
    query: BuildingQuery,
    body: { file: 'multipart/form-data' },
    answer: {
      status: 200,
      says: 'JSON lines: progress, then the building; or the building as a workbook, by Accept',
      content: { file: NDJSON },
    },
    problems: [400, 406, 413, 415, 422],
  },
  {
    method: 'post',
    path: '/v1/stages',
    summary: 'What each stage of the plots of a site uses of the target (parts `files`, and `layouts`)',
    query: StagesQuery,
    body: { file: 'multipart/form-data' },
    answer: {
      status: 200,
      says: 'JSON lines: progress, then the stages; or the stages as a workbook, by Accept',
      content: { file: NDJSON },
    },
    problems: [400, 406, 413, 415, 422],
  },
  {
    method: 'post',
    path: '/v1/reruns',
    summary: 'Re-run archived workbooks (parts `files`, `layouts`, and `keys` to check signatures)',
    query: RerunQuery,
    body: { file: 'multipart/form-data' },
    answer: {
      status: 200,
      says: 'JSON lines: progress, then what differs; or the same as a workbook, by Accept',
      content: { file: NDJSON },
    },
    problems: [400, 406, 413, 415, 422],
  },
  {
    method: 'post',
    path: '/v1/readings',
    summary: 'Read ranges of cells as a test log, with a given, matching or proposed layout',
    body: json('ReadingsRequest'),
    answer: ok('The tests with findings and cells; only a proposal if no layout matches', 'ReadingsAnswer'),
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
    summary: 'Preset targets; local codes decide',
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
    summary: 'Openings with what each preparation method requires, and cautions to acknowledge',
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
      says: 'Both volumes and the areas, or a workbook with live formulas',
      content: { schema: 'TakeOffResult', orFile: XLSX },
    },
    problems: [400, 406, 413, 415, 422],
  },
  {
    method: 'post',
    path: '/v1/plans',
    summary: 'Plan a test; the firm’s devices are used if the plan names none',
    body: json('PlanRequest'),
    answer: {
      status: 200,
      says: 'Pressures to set, expected flows, devices, weather; or the plan as a sheet for the site',
      content: { schema: 'PlanResult', orFile: XLSX },
    },
    problems: [400, 406, 413, 415, 422],
  },
  {
    method: 'post',
    path: '/v1/running-estimates',
    summary: 'Estimate of a run in progress; never a result',
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
    summary: 'Leakage still to seal, and the result of each repair round',
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
      'Name, and logo in base64; `library` where there is one, `changesLibrary` where this access may change it; empty without a library',
      'Firm',
    ),
    problems: [],
  },
]

const running: readonly Operation[] = [
  {
    method: 'get',
    path: '/healthz',
    summary: 'Check that the process is alive',
    open: true,
    answer: ok('Alive', 'Alive'),
  },
  {
    method: 'get',
    path: '/readyz',
    summary: 'Whether the service takes work; 503 while it starts, saying what for, and while it stops',
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
