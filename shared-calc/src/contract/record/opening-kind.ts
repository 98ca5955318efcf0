import { z } from 'zod'

/** Openings that every preparation list goes through. */
export const OpeningKind = z.enum(
  [
    'external windows',
    'external doors and hatches',
    'internal doors',
    'natural ventilation openings',
    'whole-building ventilation',
    'intermittent extract',
    'cooker hood',
    'drain traps',
    'flues and fireplaces',
    'letter boxes and keyholes',
    'service entries',
    'loft hatch',
    'other',
  ],
  { error: 'not a known kind of opening' },
)
export type OpeningKind = z.infer<typeof OpeningKind>
