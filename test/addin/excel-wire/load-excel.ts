import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import vm from 'node:vm'
import type { ExcelApi, SetSupported } from '../../../addin/src/host/excel/excel-api.js'
import type { NativeBridge } from './bridge.js'

const dist = join(dirname(fileURLToPath(import.meta.resolve('@microsoft/office-js/package.json'))), 'dist')
let script: vm.Script | undefined

/** The Excel host file of the pinned npm package: the object model itself. */
export const HOST_FILE = join(dist, 'excel-web-16.00.debug.js')

/**
 * Loads the real Excel object model into a room of its own, answering through the bridge.
 * @param version the highest ExcelApi set this Excel claims to have
 */
export function loadExcel(
  bridge: NativeBridge,
  version = '1.17',
): { Excel: ExcelApi; supported: SetSupported } {
  script ??= new vm.Script(readFileSync(HOST_FILE, 'utf8'), { filename: HOST_FILE })
  const room: Record<string, unknown> = {
    _richApiNativeBridge: bridge,
    console,
    setTimeout,
    clearTimeout,
    Promise,
    performance,
    addEventListener: () => undefined,
    removeEventListener: () => undefined,
    navigator: { userAgent: 'test' },
    location: { href: 'https://localhost/', search: '', hash: '' },
    document: {
      addEventListener: () => undefined,
      getElementsByTagName: () => [],
      readyState: 'complete',
      URL: 'https://localhost/',
      cookie: '',
    },
  }
  room.window = room
  room.self = room
  script.runInContext(vm.createContext(room))
  const supported: SetSupported = (set, wanted) => set !== 'ExcelApi' || atLeast(version, wanted)
  // Only Office.js' loader knows a host's requirement sets; here the test says which this Excel has.
  room.Office = Object.create(room.Office as object, {
    context: {
      value: {
        requirements: { isSetSupported: (set: string, wanted: string) => supported(set, String(wanted)) },
      },
    },
  })
  return { Excel: room.Excel as ExcelApi, supported }
}

function atLeast(have: string, wanted: string): boolean {
  const [a = 0, b = 0] = have.split('.').map(Number)
  const [c = 0, d = 0] = wanted.split('.').map(Number)
  return a > c || (a === c && b >= d)
}
