import { namedByPart, type ReadRecord } from '@draughtbook/shared-calc/register'
import type { ArchiveOptions } from './archive-options.js'
import { UsageError } from './errors.js'
import { runFiles } from './run-files.js'
import type { Terminal } from './terminal.js'

/**
 * Records of all tests of files and folders. What cannot be read is named on standard error.
 * @throws UsageError where nothing could be read
 */
export async function recordsOf(
  paths: readonly string[],
  options: ArchiveOptions,
  terminal: Terminal,
): Promise<{ readonly records: readonly Omit<ReadRecord, 'part'>[]; readonly unread: number }> {
  const { results, others } = await runFiles('records', paths, options, terminal)
  const unread = [...others, ...results.flatMap(({ leftOut }) => leftOut)].filter(({ expected }) => !expected)
  const records = results.flatMap((result) => result.records.map(namedByPart))
  const lines = unread.map(({ file, why }) => `${file}: ${why}`)
  if (records.length === 0) throw new UsageError(lines.join('\n') || 'no test was found')
  for (const line of lines) terminal.err(line)
  return { records, unread: unread.length }
}
