import { makeRegister, writeRegisterWorkbook } from '@draughtbook/shared-calc/register'
import { makeRerunReport, writeRerunWorkbook } from '@draughtbook/shared-calc/rerun'
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

const registerOf = ({ results, asOf, month }: RegisterOrder) =>
  makeRegister(
    results.flatMap(({ lines }) => lines),
    results.flatMap(({ leftOut }) => leftOut),
    { asOf, ...(month !== undefined && { month }) },
  )
const rerunOf = ({ results, asOf }: RerunOrder) => makeRerunReport(results.flat(), asOf)

/** What all files of an archive come to, as JSON or as a workbook. */
export const resultTasks = {
  registerResult: async (order: RegisterOrder) => ({ json: JSON.stringify(registerOf(order)) }),
  registerWorkbook: async (order: RegisterOrder) => ({
    bytes: await writeRegisterWorkbook(registerOf(order)),
  }),
  rerunResult: async (order: RerunOrder) => ({ json: JSON.stringify(rerunOf(order)) }),
  rerunWorkbook: async (order: RerunOrder) => ({ bytes: await writeRerunWorkbook(rerunOf(order)) }),
}
