/** What the operating system's error codes mean to the person who named the file. */
const MEANING: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  EACCES: 'access is not allowed',
  EPERM: 'access is not allowed',
  EISDIR: 'it is a folder, not a file',
  ENOTDIR: 'a part of the path is not a folder',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk quota is used up',
  EROFS: 'the disk is read-only',
  EMFILE: 'too many files are open',
  ENAMETOOLONG: 'the name is too long',
  EBUSY: 'another program is using it',
  EIO: 'the disk reports an error',
}

/** Plain words for a failed file operation; undefined when the error is not a file error. */
export function fileFault(error: unknown): string | undefined {
  if (!(error instanceof Error) || !('code' in error) || typeof error.code !== 'string') return undefined
  if (!('syscall' in error)) return undefined
  return MEANING[error.code] ?? `system error ${error.code}`
}

export const errorCode = (error: unknown): string | undefined =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : undefined

export const isDiskFull = (error: unknown): boolean =>
  errorCode(error) === 'ENOSPC' || errorCode(error) === 'EDQUOT'
