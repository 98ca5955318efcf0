import { rm } from 'node:fs/promises'
import { readCertificate } from './certificate.js'
import type { Excel } from './excel.js'

export interface Removed {
  /** Three lines: the add-in, the certificate, the files. */
  readonly lines: readonly string[]
  /** Whether nothing is left. */
  readonly whole: boolean
}

const says = (error: unknown): string => (error instanceof Error ? error.message : String(error))

/** Undoes everything that setting up the add-in did for this user. What cannot be undone is said, and the files needed for it stay. */
export async function removeFromExcel(excel: Excel): Promise<Removed> {
  const addIn = await unregister(excel)
  const certificate = await distrust(excel)
  const whole = addIn.undone && certificate.undone
  if (whole) await rm(excel.folder, { recursive: true, force: true })
  const files = whole
    ? `Certificate, key and manifest are deleted (${excel.folder}).`
    : `${excel.folder} stays until the rest is removed.`
  return { lines: [addIn.line, certificate.line, files], whole }
}

async function unregister(excel: Excel) {
  if (!(await excel.isRegistered()))
    return { undone: true, line: `The add-in was not registered in Excel (${excel.registry}).` }
  try {
    await excel.unregister()
    return { undone: true, line: `The add-in is no longer registered in Excel (${excel.registry}).` }
  } catch (error) {
    return {
      undone: false,
      line: `The add-in is still registered in Excel (${excel.registry}): ${says(error)}`,
    }
  }
}

async function distrust(excel: Excel) {
  const kept = await readCertificate(excel.folder)
  if (!kept || !(await excel.isTrusted(kept.certificate, kept.fingerprint)))
    return { undone: true, line: 'No certificate for localhost was trusted.' }
  try {
    await excel.distrust(kept.fingerprint)
    return { undone: true, line: 'The certificate for localhost is no longer trusted.' }
  } catch (error) {
    return { undone: false, line: `The certificate for localhost is still trusted: ${says(error)}` }
  }
}
