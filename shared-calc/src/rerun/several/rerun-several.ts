import { bytesToHex } from '@noble/hashes/utils.js'
import type { RerunTest } from '../report.js'

/** Reads a building or stages for a re-run: they are compared once the tests that they are made of are known. */
export const rerunSeveral = (file: string, bytes: Uint8Array, kind: 'building' | 'stages'): RerunTest => ({
  file,
  kind,
  outcome: 'agrees',
  why: '',
  compared: { figures: 0, cells: 0 },
  differences: [],
  sinceIssue: [],
  notes: [],
  bytes: bytesToHex(bytes),
})
