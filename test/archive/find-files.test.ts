import { mkdir, symlink, writeFile } from 'node:fs/promises'
import { join, relative } from 'node:path'
import { describe, expect, it } from 'vitest'
import { findFiles } from '../../service/src/archive/find-files'
import { progressBar } from '../../service/src/cli/run-files.js'
import { folder } from '../service/support/command-line'

describe('the files of an archive', () => {
  it('are found in all folders, by their numbers, each once; all others are told with the reason', async () => {
    const root = await folder()
    await mkdir(join(root, 'b', 'deep'), { recursive: true })
    for (const name of [
      '10.xlsx',
      '9.XLSX',
      'b/deep/1.csv',
      'b/2.xlsm',
      'b/plan.pdf',
      '.hidden.xlsx',
      '~$9.xlsx',
    ])
      await writeFile(join(root, name), '')
    await symlink(root, join(root, 'b', 'round'))
    const { files, others } = await findFiles([root, join(root, '9.XLSX'), join(root, 'none.xlsx')])
    expect(files.map((path) => relative(root, path))).toEqual([
      '9.XLSX',
      '10.xlsx',
      'b/2.xlsm',
      'b/deep/1.csv',
    ])
    const told = others.map(({ file, why }) => [relative(root, file), why]).sort()
    expect(told).toEqual([
      ['.hidden.xlsx', 'hidden file'],
      ['b/plan.pdf', 'not a workbook or a CSV file'],
      ['b/round', 'links inside folders are not followed'],
      ['none.xlsx', 'there is no such file or folder'],
      ['~$9.xlsx', 'temporary file of an open workbook'],
    ])
    // Only what was named and is not there counts as a failure.
    expect(others.filter(({ expected }) => !expected)).toHaveLength(1)
  })
})

describe('the progress bar', () => {
  it('is redrawn in place, and only where a person watches', () => {
    const drawn: string[] = []
    const bar = progressBar(true, (text) => void drawn.push(text))
    bar.show({ done: 1, of: 4 })
    bar.show({ done: 4, of: 4 })
    bar.end()
    expect(drawn).toEqual([
      '\r██████░░░░░░░░░░░░░░░░░░ 1 of 4',
      '\r████████████████████████ 4 of 4',
      '\r\u001b[K',
    ])
    const silent = progressBar(false, () => expect.unreachable())
    silent.show({ done: 4, of: 4 })
    silent.end()
  })
})
