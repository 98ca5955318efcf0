import type { z } from 'zod'

/** What is sent or answered: JSON by a schema's name (or a file, where the client accepts that first), or a file by its media type. */
export type Content = { readonly schema: string; readonly orFile?: string } | { readonly file: string }

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
