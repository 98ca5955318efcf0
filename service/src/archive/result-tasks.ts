import {
  assessBuilding,
  type BuildingRule,
  InputError,
  type StagesRequest,
  stagesResult,
  workStages,
} from '@draughtbook/shared-calc'
import { writeBuildingWorkbook } from '@draughtbook/shared-calc/building'
import { makeRegister, namedByPart, writeRegisterWorkbook } from '@draughtbook/shared-calc/register'
import { makeRerunReport, writeRerunWorkbook } from '@draughtbook/shared-calc/rerun'
import { writeStagesWorkbook } from '@draughtbook/shared-calc/stages'
import type { ArchiveResult } from './archive-tasks.js'

export interface RegisterOrder {
  readonly results: readonly ArchiveResult<'register'>[]
  readonly asOf: string
  readonly month?: string | undefined
}

export interface RerunOrder {
  readonly results: readonly ArchiveResult<'rerun'>[]
  readonly asOf: string
}

export interface BuildingOrder {
  readonly results: readonly ArchiveResult<'records'>[]
  readonly name?: string | undefined
  readonly rule?: BuildingRule | undefined
  readonly homes?: number | undefined
  readonly sampleSize?: number | undefined
  readonly morePerMiss?: number | undefined
}

export interface StagesOrder {
  readonly results: readonly ArchiveResult<'records'>[]
  readonly shares?: StagesRequest['shares']
  readonly confidence?: number | undefined
}

function stagesRequest({ results, shares, confidence }: StagesOrder): StagesRequest {
  return {
    tests: recordsIn(results),
    ...(shares !== undefined && { shares }),
    ...(confidence !== undefined && { confidence }),
  }
}

/** Files that should have held a test, and could not be read. */
const unreadIn = (results: readonly ArchiveResult<'records'>[]) =>
  results.flatMap(({ leftOut }) => leftOut).filter(({ expected }) => !expected)

const recordsIn = (results: readonly ArchiveResult<'records'>[]) =>
  results.flatMap(({ records }) => records.map(namedByPart))

/** Files that cannot be read are listed with the tests that are not used: work on the other plots goes on. */
function stagesOf(order: StagesOrder) {
  const unread = unreadIn(order.results)
  const result = stagesResult(workStages(stagesRequest(order)))
  return { ...result, leftOut: [...unread.map(({ file, why }) => ({ file, why })), ...result.leftOut] }
}

/** Throws InputError naming the files that cannot be read: a building without one of its homes would be another building. */
function buildingOf({ results, name, rule, homes, sampleSize, morePerMiss }: BuildingOrder) {
  const unread = unreadIn(results)
  if (unread.length > 0) throw new InputError(unread.map(({ file, why }) => ({ path: file, message: why })))
  const records = recordsIn(results)
  return {
    name: name ?? records[0]?.record.building.site ?? 'Building',
    homes: records,
    ...(rule !== undefined && { rule }),
    ...(homes !== undefined && { homesInBuilding: homes }),
    ...(sampleSize !== undefined && { sampleSize }),
    ...(morePerMiss !== undefined && { morePerMiss }),
  }
}

const registerOf = ({ results, asOf, month }: RegisterOrder) =>
  makeRegister(
    results.flatMap(({ lines }) => lines),
    results.flatMap(({ leftOut }) => leftOut),
    { asOf, ...(month !== undefined && { month }) },
  )
const rerunOf = ({ results, asOf }: RerunOrder) => makeRerunReport(results.flat(), asOf)

/** The result of all files of an archive, as JSON or as a workbook. */
export const resultTasks = {
  registerResult: async (order: RegisterOrder) => ({ json: JSON.stringify(registerOf(order)) }),
  registerWorkbook: async (order: RegisterOrder) => ({
    bytes: await writeRegisterWorkbook(registerOf(order)),
  }),
  buildingResult: async (order: BuildingOrder) => ({
    json: JSON.stringify(assessBuilding(buildingOf(order))),
  }),
  buildingWorkbook: async (order: BuildingOrder) => ({
    bytes: await writeBuildingWorkbook(buildingOf(order)),
  }),
  stagesResult: async (order: StagesOrder) => ({ json: JSON.stringify(stagesOf(order)) }),
  stagesWorkbook: async (order: StagesOrder) => ({ bytes: await writeStagesWorkbook(stagesRequest(order)) }),
  rerunResult: async (order: RerunOrder) => ({ json: JSON.stringify(await rerunOf(order)) }),
  rerunWorkbook: async (order: RerunOrder) => ({ bytes: await writeRerunWorkbook(await rerunOf(order)) }),
}
