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
    does: 'validate a record or test log and list the findings only; writes nothing',
    load: async () => (await import('./check.js')).addCheck,
  },
  {
    name: 'template',
    does: 'write an empty test log to fill in, which is read without a question',
    load: async () => (await import('./template.js')).addTemplate,
  },
  {
    name: 'layout',
    does: 'propose where a test log keeps each thing, with reasons; save it to look through and use',
    load: async () => (await import('./layout.js')).addLayout,
  },
  {
    name: 'volume',
    does: 'work out volume and areas of a take-off, on both bases',
    load: async () => (await import('./volume.js')).addVolume,
  },
  {
    name: 'plan',
    does: 'plan a test: pressures to set, flows to expect, which device reaches, weather',
    load: async () => (await import('./plan.js')).addPlan,
  },
  {
    name: 'register',
    does: 'make the register of a folder of workbooks: one row per test',
    load: async () => (await import('./register.js')).addRegister,
  },
  {
    name: 'rerun',
    does: 're-run archived workbooks and tell what differs from what they record',
    load: async () => (await import('./rerun.js')).addRerun,
  },
  {
    name: 'keys',
    does: 'make the key pair a firm signs its workbooks with: KEY, to be kept secret, and KEY.pub',
    load: async () => (await import('./keys.js')).addKeys,
  },
  {
    name: 'serve',
    does: 'run the service: the pane, the API and their pages',
    load: async () => (await import('./serve.js')).addServe,
  },
  {
    name: 'worker',
    does: 'work on files that others hand over through a Redis, until stopped',
    load: async () => (await import('./worker.js')).addWorker,
  },
  {
    name: 'token',
    does: 'make, list and revoke access tokens of the service',
    load: async () => (await import('./token.js')).addToken,
  },
]
