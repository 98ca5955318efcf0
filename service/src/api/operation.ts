import type { z } from 'zod'

/**
 * What is sent or answered: JSON by a schema's name (or a file, where the client accepts that first), or a file by its media type;
 * of a form, the parts that hold files.
 */
export type Content =
  | { readonly schema: string; readonly orFile?: string }
  | { readonly file: string; readonly parts?: Readonly<Record<string, string>> }

export interface Operation {
  readonly method: 'get' | 'post' | 'put' | 'delete'
  /** With parameters in braces, as in /v1/library/{kind}. */
  readonly path: string
  readonly summary: string
  /** Open to everybody who reaches the service, even where access is set up. */
  readonly open?: boolean
  readonly query?: z.ZodObject
  readonly body?: Content
  readonly answer: { readonly status: number; readonly says: string; readonly content?: Content }
  /** Whether it may also answer 201, with the same content. */
  readonly creates?: boolean
  /** Problems it can answer with, besides those every operation has. */
  readonly problems?: readonly number[]
  readonly headers?: readonly string[]
}

/** What a problem's `type` means: the anchors of the API page. */
export const problemKinds: Readonly<Record<string, string>> = {
  'malformed-json': '400. The body is not JSON; each error names line, column and field.',
  'unusable-input':
    '422. The body is JSON, but does not fit the schema or cannot be computed; each error names its field, and its cell where the input came from a sheet.',
  'wrong-type': '415. The body has the wrong media type.',
  'too-large': '413. The body is too large for this operation.',
  'too-much-work':
    '422. Working on the input would need more memory, or more time, than one request may use.',
  'unknown-caller': '401. No access token, or one that is unknown, expired or revoked.',
  precondition:
    '412 or 428. A change must name the version it is based on (If-Match, or If-None-Match: * for a new entry), and that version must still be current.',
  'library-storage':
    '503 or 507. The library’s folder cannot be written, or the disk is full. Nothing was changed.',
  'upload-storage':
    '503 or 507. The folder in which uploaded files are kept while they are worked on cannot be written, or its disk is full.',
  'too-many': '429. Too many requests in a minute from one caller; Retry-After says how long to wait.',
  busy: '503. Too many requests at once, or a request that took too long; Retry-After says how long to wait.',
  fault: '500. A bug in the service. Quote the instance when you report it.',
}
