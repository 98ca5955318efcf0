import { join } from 'node:path'
import { ADD_IN_ID, type Excel } from './excel.js'
import { done, type Machine } from './machine.js'

/**
 * Excel reads add-ins under development from here: value name = id of the add-in, text = path of its manifest.
 * Source: Microsoft, Office Add-ins, "Sideload Office Add-ins on Windows" (read from its package office-addin-dev-settings).
 */
const KEY = 'HKCU\\Software\\Microsoft\\Office\\16.0\\WEF\\Developer'

export function excelOnWindows({ home, env, run }: Machine): Excel {
  const system = (program: string): string => join(env.SystemRoot ?? 'C:\\Windows', 'System32', program)
  const reg = (...args: string[]) => run(system('reg.exe'), args)
  // With -user only the store of this user is read and written; Windows asks before it changes.
  const certutil = (...args: string[]) => run(system('certutil.exe'), ['-user', ...args])
  return {
    folder: join(env.LOCALAPPDATA ?? join(home, 'AppData', 'Local'), 'Draughtbook'),
    registry: KEY,
    find: 'Home, Add-ins, Developer Add-ins, Draughtbook',
    obstacle: async () => undefined,
    isTrusted: async (_file, fingerprint) => (await certutil('-store', 'Root', fingerprint)).code === 0,
    trust: async (file) => done(await certutil('-addstore', 'Root', file)),
    distrust: async (fingerprint) => done(await certutil('-delstore', 'Root', fingerprint)),
    isRegistered: async () => (await reg('query', KEY, '/v', ADD_IN_ID)).code === 0,
    register: async (manifest) =>
      done(await reg('add', KEY, '/v', ADD_IN_ID, '/t', 'REG_SZ', '/d', manifest, '/f')),
    unregister: async () => done(await reg('delete', KEY, '/v', ADD_IN_ID, '/f')),
    open: async () => (await run(system('cmd.exe'), ['/d', '/c', 'start', '', 'excel'])).code === 0,
  }
}
