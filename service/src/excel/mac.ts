import { access, copyFile, mkdir, rm } from 'node:fs/promises'
import { join } from 'node:path'
import type { Excel } from './excel.js'
import { done, type Machine } from './machine.js'

const here = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  )

/** Source of the folder: Microsoft, Office Add-ins, "Sideload Office Add-ins on Mac". */
export function excelOnMac({ home, run }: Machine): Excel {
  const container = join(home, 'Library', 'Containers', 'com.microsoft.Excel')
  const wef = join(container, 'Data', 'Documents', 'wef')
  const manifestThere = join(wef, 'draughtbook.xml')
  const keychain = join(home, 'Library', 'Keychains', 'login.keychain-db')
  const security = (...args: string[]) => run('security', args)
  return {
    folder: join(home, 'Library', 'Application Support', 'Draughtbook'),
    registry: wef,
    find: 'Home, Add-ins, Draughtbook (older Excel: Insert, the arrow beside My Add-ins)',
    // The system makes this folder, with rights of its own, when Excel is opened for the first time.
    obstacle: async () =>
      (await here(container))
        ? undefined
        : 'Excel has never been opened by this user. Open Excel once, close it, and run this again.',
    isTrusted: async (file) => (await security('verify-cert', '-c', file, '-p', 'ssl')).code === 0,
    // Without -d the trust is this user's own and needs no administrator; the system asks for this user's password.
    trust: async (file) =>
      done(await security('add-trusted-cert', '-r', 'trustRoot', '-p', 'ssl', '-k', keychain, file)),
    distrust: async (fingerprint) =>
      done(await security('delete-certificate', '-Z', fingerprint, '-t', keychain)),
    isRegistered: () => here(manifestThere),
    register: async (manifest) => {
      await mkdir(wef, { recursive: true })
      await copyFile(manifest, manifestThere)
    },
    unregister: () => rm(manifestThere),
    open: async () => (await run('open', ['-a', 'Microsoft Excel'])).code === 0,
  }
}
