import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import { writeAtomically } from '../files/write-atomically.js'
import { manifestFor } from '../running/pane-folder.js'
import type { Excel } from './excel.js'
import { excelOnMac } from './mac.js'
import type { Machine } from './machine.js'
import { excelOnWindows } from './windows.js'

/** Undefined where there is no Excel. */
export function excelOn(machine: Machine): Excel | undefined {
  if (machine.platform === 'win32') return excelOnWindows(machine)
  return machine.platform === 'darwin' ? excelOnMac(machine) : undefined
}

/**
 * Registers the add-in for this user and opens Excel, once the service answers.
 * @param pane - folder of the built pane
 * @param address - where Excel reaches the service
 * @param say - takes one sentence
 */
export async function setUpInExcel(
  excel: Excel,
  pane: string,
  address: string,
  say: (sentence: string) => void,
): Promise<void> {
  const manifest = join(excel.folder, 'manifest.xml')
  await mkdir(excel.folder, { recursive: true, mode: 0o700 })
  await writeAtomically(manifest, await manifestFor(pane, address))
  await excel.register(manifest)
  say(`the add-in is registered in Excel for you (${excel.registry})`)
  say((await excel.open()) ? 'Excel is opening' : 'Excel could not be opened: open it yourself')
  say(`the button is under ${excel.find}`)
}
