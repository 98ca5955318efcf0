import { dirname, extname, isAbsolute, join, parse, relative, resolve, sep } from 'node:path'
import type { Register, RegisterOptions, TestLine } from '@draughtbook/shared-calc/register'
import { writeAtomically } from '../files/write-atomically.js'
import { refuseOther } from './checked-output.js'
import { cannotWrite } from './errors.js'

/** Writes the register, and one for each client where asked. Returns the paths written. */
export async function writeRegisters(
  out: string,
  register: Register,
  lines: readonly TestLine[],
  about: RegisterOptions,
  by: 'client' | undefined,
): Promise<string[]> {
  const { clientsOf, makeRegister } = await import('@draughtbook/shared-calc/register')
  const registers = new Map([[out, register]])
  if (by === 'client') {
    const { dir, name, ext } = parse(out)
    const used = new Set<string>()
    for (const client of clientsOf(lines)) {
      // What could not be read may be another client's, and an earlier register is of all clients: they are not passed on.
      const one = makeRegister(lines, [], { ...about, client, previous: [] })
      if (one.rows.length > 0 || one.toRetestElsewhere.length > 0)
        registers.set(join(dir, `${name}-${nameForFile(client, used)}${ext}`), one)
    }
  }
  for (const path of registers.keys()) await refuseOther(path, 'register')
  for (const [path, one] of registers) await write(path, one)
  return [...registers.keys()]
}

/** Letters, digits and hyphens of a name; no two names differ only in capitals. */
export function nameForFile(text: string, used: Set<string>): string {
  const plain =
    text
      .normalize('NFC')
      .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
      .replace(/^-|-$/g, '')
      .slice(0, 60) || 'client'
  let name = plain
  for (let n = 2; used.has(name.toLowerCase()); n += 1) name = `${plain}-${n}`
  used.add(name.toLowerCase())
  return name
}

async function write(path: string, register: Register): Promise<void> {
  const { registerCsv, writeRegisterWorkbook } = await import('@draughtbook/shared-calc/register')
  const bytes =
    extname(path).toLowerCase() === '.csv'
      ? await registerCsv(register)
      : await writeRegisterWorkbook(register, { seenFrom: seenFrom(dirname(resolve(path))) })
  try {
    await writeAtomically(path, bytes)
  } catch (error) {
    throw cannotWrite(path, error)
  }
}

/** The path of a file as seen from a folder; on another drive, its full path. */
const seenFrom =
  (folder: string) =>
  (file: string): string => {
    const path = relative(folder, resolve(file))
    return isAbsolute(path) ? path : path.split(sep).join('/')
  }
