import type { AddCommand } from './command.js'

/**
 * Every command, in the order the help lists them. Its module is loaded only when it is run, so that no command waits
 * for what another needs.
 */
export const commands: readonly {
  readonly name: string
  readonly does: string
  readonly load: () => Promise<AddCommand>
}[] = [
  {
    name: 'evaluate',
    does: 'evaluate a record (.json) or test log (.xlsx, .xlsm, .ods, .csv) and write its summary workbook',
    load: async () => (await import('./evaluate.js')).addEvaluate,
  },
  {
    name: 'check',
    does: 'check a record or test log and list its findings; writes nothing',
    load: async () => (await import('./check.js')).addCheck,
  },
  {
    name: 'targets',
    does: 'list the targets that --target takes',
    load: async () => (await import('./targets.js')).addTargets,
  },
  {
    name: 'template',
    does: 'write an empty test log to fill in',
    load: async () => (await import('./template.js')).addTemplate,
  },
  {
    name: 'layout',
    does: 'propose where each item is in a test log, with reasons; save it to review and use',
    load: async () => (await import('./layout.js')).addLayout,
  },
  {
    name: 'volume',
    does: 'calculate net and overall internal volume and areas from a take-off',
    load: async () => (await import('./volume.js')).addVolume,
  },
  {
    name: 'plan',
    does: 'plan a test: pressures to set, expected flows, suitable device, weather',
    load: async () => (await import('./plan.js')).addPlan,
  },
  {
    name: 'register',
    does: 'make a register of a folder of workbooks: one row per test',
    load: async () => (await import('./register.js')).addRegister,
  },
  {
    name: 'building',
    does: 'combine the tests of several homes in one building',
    load: async () => (await import('./building.js')).addBuilding,
  },
  {
    name: 'stages',
    does: 'show how much each plot may leak at each stage, and whether the next trade may start',
    load: async () => (await import('./stages.js')).addStages,
  },
  {
    name: 'rerun',
    does: 're-run archived workbooks and list what differs from their records',
    load: async () => (await import('./rerun.js')).addRerun,
  },
  {
    name: 'keys',
    does: 'make a key pair for signing workbooks: KEY, to keep secret, and KEY.pub',
    load: async () => (await import('./keys.js')).addKeys,
  },
  {
    name: 'serve',
    does: 'run the service: the page, the Excel add-in and the API',
    load: async () => (await import('./serve.js')).addServe,
  },
  {
    name: 'excel',
    does: 'set up the add-in in Excel for your account on this computer, and open Excel; --remove undoes it',
    load: async () => (await import('./excel.js')).addExcel,
  },
  {
    name: 'worker',
    does: 'process files shared by other machines through a Redis server, until stopped',
    load: async () => (await import('./worker.js')).addWorker,
  },
  {
    name: 'token',
    does: 'make, list and revoke access tokens',
    load: async () => (await import('./token.js')).addToken,
  },
]
