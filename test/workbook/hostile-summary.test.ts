import { InputError } from '@draughtbook/shared-calc'
import { LogError } from '@draughtbook/shared-calc/log'
import { readSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { describe, expect, it } from 'vitest'
import { hostileFiles } from '../log/hostile/hostile-files'

const workbooks = hostileFiles.filter(({ fileName }) => /\.xls[xm]$/.test(fileName))

/** How reading it as a summary ends. */
async function ending(bytes: Uint8Array): Promise<unknown> {
  return readSummaryWorkbook(bytes).then(
    () => 'was read',
    (error: unknown) => error,
  )
}

describe('a hostile file given as a summary workbook', () => {
  it.each(workbooks)('$name is refused', async ({ make }) => {
    expect(await ending(make())).toBeInstanceOf(InputError)
  })

  it.each(workbooks.filter(({ name }) => /immoderate|together|overlap/.test(name)))(
    '$name is refused for that, before it is unpacked',
    async ({ make, says }) => {
      const error = await ending(make())
      expect(error).toBeInstanceOf(LogError)
      expect((error as LogError).message).toMatch(says)
    },
  )
})
