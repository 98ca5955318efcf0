import { z } from 'zod'

/** What an access is for. Everybody known may read methods, targets and the library. */
export const ROLES = ['evaluate', 'archive', 'library'] as const
export const Role = z.enum(ROLES)
export type Role = z.infer<typeof Role>
