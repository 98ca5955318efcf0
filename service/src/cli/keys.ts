import { open } from 'node:fs/promises'
import { visible } from '@draughtbook/shared-calc'
import { errorCode } from '../files/file-fault.js'
import { makeKeyPair } from '../signature/keys.js'
import type { AddCommand } from './command.js'
import { cannotWrite, UsageError } from './errors.js'

export const addKeys: AddCommand = (command, { terminal }) => {
  command.argument('<KEY>', 'file for the private key').action(async (path: string) => {
    const { privateKey, publicKey, keyId } = makeKeyPair()
    await writeNew(path, privateKey, 0o600)
    await writeNew(`${path}.pub`, publicKey, 0o644)
    terminal.out(
      visible(
        [
          `Key ${keyId}`,
          `${path}: private, to sign with (evaluate --sign ${path}). Keep it secret and keep a copy safe.`,
          `${path}.pub: public, for anyone who re-runs your workbooks (rerun --key ${path}.pub).`,
          'A signature shows that a record is unchanged since the holder of the private key signed it. It does not',
          'show that the readings are true, who signed, or when.',
        ].join('\n'),
      ),
    )
  })
}

/** Never over an existing file: a key that is lost cannot be made again. */
async function writeNew(path: string, text: string, mode: number): Promise<void> {
  try {
    const file = await open(path, 'wx', mode)
    try {
      await file.writeFile(text)
    } finally {
      await file.close()
    }
  } catch (error) {
    if (errorCode(error) === 'EEXIST')
      throw new UsageError(`${path} already exists, and keys are never overwritten; choose another name`)
    throw cannotWrite(path, error)
  }
}
