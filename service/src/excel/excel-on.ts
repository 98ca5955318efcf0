import type { Excel } from './excel.js'
import { excelOnMac } from './mac.js'
import type { Machine } from './machine.js'
import { excelOnWindows } from './windows.js'

/** Undefined where there is no Excel. */
export function excelOn(machine: Machine): Excel | undefined {
  if (machine.platform === 'win32') return excelOnWindows(machine)
  return machine.platform === 'darwin' ? excelOnMac(machine) : undefined
}
