import {
  assessBuilding,
  type BuildingRequest,
  type BuildingResult,
  type StagesRequest,
  type StagesResult,
  stagesResult,
  workStages,
} from '@draughtbook/shared-calc'
import { writeBuildingWorkbook } from '@draughtbook/shared-calc/building'
import { namedByPart, type ReadRecords } from '@draughtbook/shared-calc/register'
import { writeStagesWorkbook } from '@draughtbook/shared-calc/stages'
import type { BuildingOrder, StagesOrder } from '../month/archive-messages.js'

const testsIn = (read: readonly ReadRecords[]) => read.flatMap(({ records }) => records.map(namedByPart))

function buildingRequest({ read, wish: { name, ...wish } }: BuildingOrder): BuildingRequest {
  const homes = testsIn(read)
  return { ...wish, name: name || (homes[0]?.record.building.site ?? 'Building'), homes }
}

const stagesRequest = ({ read, wish }: StagesOrder): StagesRequest => ({ ...wish, tests: testsIn(read) })

/** Throws InputError, as the functions of the command do. */
export const makeBuilding = (order: BuildingOrder): BuildingResult => assessBuilding(buildingRequest(order))

export const makeStages = (order: StagesOrder): StagesResult => stagesResult(workStages(stagesRequest(order)))

export const writeBuilding = (order: BuildingOrder): Promise<Uint8Array> =>
  writeBuildingWorkbook(buildingRequest(order))

export const writeStages = (order: StagesOrder): Promise<Uint8Array> =>
  writeStagesWorkbook(stagesRequest(order))
