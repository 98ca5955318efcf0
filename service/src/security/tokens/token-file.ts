import { realpath } from 'node:fs/promises'
import { check, InputError, problemsFromZod, refuseOtherKind } from '@draughtbook/shared-calc'
import { z } from 'zod'
import { errorCode } from '../../files/file-fault.js'
import { NotReadable, readRegular } from '../../files/read-regular.js'
import { writeAtomically } from '../../files/write-atomically.js'
import { jsonOf } from '../../json/read-json.js'
import { withLock } from '../../library/with-lock.js'
import { ROLES, Role } from '../caller.js'

const hex = (bytes: number) => z.string().regex(new RegExp(`^[0-9a-f]{${2 * bytes}}$`))

/** Role of a token that says nothing of roles, as they were all made before there were any. */
export const rolesOf = ({ roles, library }: Pick<StoredToken, 'roles' | 'library'>): readonly Role[] =>
  roles ?? (library ? ROLES : ['evaluate', 'archive'])

/** A token as kept: never the token itself, only a salted hash of its secret. */
export const StoredToken = z.strictObject({
  id: hex(8),
  name: z.string().min(1).max(100),
  salt: hex(16),
  hash: hex(32),
  created: z.iso.datetime(),
  expires: z.iso.datetime(),
  revoked: z.iso.datetime().optional(),
  /** What it is for; tokens made before there were roles say only whether they may change the library. */
  roles: z.array(Role).optional(),
  /** May change the firm's library. */
  library: z.boolean(),
})
export type StoredToken = z.infer<typeof StoredToken>

/** A file of 10,000 tokens has some 6 MB. */
const MOST_BYTES = 16 * 1024 * 1024

const TokenFile = z.strictObject({
  format: z.literal('draughtbook/tokens@1'),
  tokens: z.array(StoredToken).max(10_000),
})

/** The tokens of a file; none when there is no file yet. Throws InputError when it is damaged. */
export async function readTokens(path: string): Promise<StoredToken[]> {
  const bytes = await readRegular(path, MOST_BYTES).catch((error: unknown) => {
    if (errorCode(error) === 'ENOENT') return undefined
    if (error instanceof NotReadable) throw new InputError([{ path: '', message: error.message }])
    throw error
  })
  if (bytes === undefined) return []
  const input = jsonOf(bytes)
  refuseOtherKind(input, 'tokens')
  const result = check(TokenFile, input)
  if (!result.success) throw new InputError(problemsFromZod(result.error.issues))
  return result.data.tokens
}

export function writeTokens(path: string, tokens: readonly StoredToken[]): Promise<void> {
  const text = JSON.stringify({ format: 'draughtbook/tokens@1', tokens }, null, 2)
  return writeAtomically(path, `${text}\n`, 0o600)
}

/**
 * Changes the tokens of a file while nobody else does: two changes at a time would lose one of them, which may be a revocation.
 * @throws what `change` throws, InputError for a damaged file, Locked when another process holds it
 */
export async function changeTokens(
  path: string,
  change: (tokens: readonly StoredToken[]) => readonly StoredToken[],
): Promise<void> {
  // Where the path is a link, the file is changed that it leads to: renaming over the link would leave that as it was.
  const file = await realpath(path).catch(() => path)
  await withLock(`${file}.lock`, async () => writeTokens(file, change(await readTokens(file))))
}
