import { readFile } from 'node:fs/promises'
import { digestOf, type TestRecord } from '@draughtbook/shared-calc'
import { openLog } from '@draughtbook/shared-calc/log'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { fileFault } from '../files/file-fault.js'
import { writeAtomically } from '../files/write-atomically.js'
import { isSummary, readSheet } from '../input/read-sheet.js'
import { signerOf } from '../signature/sign.js'
import { cannotWrite, UsageError } from './errors.js'
import { guardOld, type OutputWish, outputPath } from './output-path.js'
import type { PicturedTest } from './read-pictures.js'

/** Writes the summary workbook of each test of a file. Resolves to their paths. Throws UsageError when one cannot be written. */
export async function writeSummaries(
  input: string,
  tests: readonly PicturedTest[],
  wish: OutputWish & { readonly uncertainty?: boolean },
): Promise<string[]> {
  if (tests.length > 1 && wish.out !== undefined)
    throw new UsageError(
      `${input} has ${tests.length} tests, so --out cannot name their workbooks; without it each is written next to the log`,
    )
  const sign = wish.sign === undefined ? undefined : await readSigner(wish.sign)
  const paths: string[] = []
  for (const [i] of tests.entries()) {
    const path = await outputPath(input, wish, tests.length === 1 ? '' : `-${i + 1}`)
    await guardOld(path, wish, {
      kind: 'Draughtbook summary',
      ofKind: (old) => recordIn(old) !== undefined,
      ofSameTest: (old) => {
        const record = recordIn(old)
        return record !== undefined && digestOf(record) === digestOf(tests[i]?.record)
      },
    })
    paths.push(path)
  }
  for (const [i, test] of tests.entries()) await write(paths[i] ?? '', test, sign, wish.uncertainty === true)
  return paths
}

async function write(
  path: string,
  { record, cells, findings, pictures }: PicturedTest,
  sign: Signer | undefined,
  uncertainty: boolean,
): Promise<void> {
  const bytes = await writeSummaryWorkbook(record, {
    cells,
    findings,
    ...(pictures && { pictures }),
    ...(sign && { sign }),
    ...(uncertainty && { uncertainty }),
  })
  try {
    await writeAtomically(path, bytes)
  } catch (error) {
    throw cannotWrite(path, error)
  }
}

/** The record of a summary; undefined for any other file. Read with the guards for files from anywhere. */
function recordIn(bytes: Uint8Array): TestRecord | undefined {
  try {
    return isSummary(openLog(bytes, 'workbook.xlsx'))
      ? readSheet(bytes, 'workbook.xlsx')[0]?.record
      : undefined
  } catch {
    return undefined
  }
}

type Signer = ReturnType<typeof signerOf>

/** The signer of a private key's file. Throws UsageError when it holds none. */
async function readSigner(path: string): Promise<Signer> {
  try {
    return signerOf(await readFile(path, 'utf8'))
  } catch (error) {
    const why = error instanceof RangeError ? error.message : fileFault(error)
    if (why === undefined) throw error
    throw new UsageError(`${path}: ${why}`)
  }
}
