import { findUnit } from '../../cells/units.js'
import { addressOf, withSheet } from '../address.js'
import { mayGroup } from './dialect.js'

type Sign = '.' | ','

/** A number that can be read only with one of the two decimal signs: "12,5", "1.234,5". */
interface Proof {
  readonly cell: string
  readonly text: string
  /** It is a number with or without a unit, and no "10.30 Uhr". */
  readonly plain: boolean
  /** Its digits are grouped with the other sign. */
  readonly grouped: boolean
}

export type DecimalProofs = Readonly<Record<Sign, Proof[]>>

/** So many of each are kept. */
const MOST = 4

const SINGLE = /^\s*[+\-−–]?(\d*)([.,])(\d+)(|[^\d.,].*)$/
const GROUPED = /^\s*[+\-−–]?\d{1,3}(?:([.,])\d{3})+([.,])\d+(|[^\d.,].*)$/

/** Adds what the texts of a sheet prove. */
export function addProofs(
  proofs: DecimalProofs,
  row: number,
  fields: readonly string[],
  sheet: string,
): void {
  for (const [column, text] of fields.entries()) {
    const proof = text === '' ? undefined : proofIn(text)
    if (!proof || proofs[proof.sign].length >= MOST) continue
    const { sign, ...rest } = proof
    proofs[sign].push({ ...rest, text: text.trim(), cell: withSheet(sheet, addressOf(row, column)) })
  }
}

function proofIn(text: string): { sign: Sign; plain: boolean; grouped: boolean } | undefined {
  const [, whole = '', sign, decimals = '', rest = ''] = SINGLE.exec(text) ?? []
  if (sign !== undefined)
    return mayGroup(whole, decimals)
      ? undefined
      : { sign: sign as Sign, plain: isPlain(rest), grouped: false }
  const [, group, behind, more = ''] = GROUPED.exec(text) ?? []
  return behind === undefined || behind === group
    ? undefined
    : { sign: behind as Sign, plain: isPlain(more), grouped: true }
}

const isPlain = (rest: string): boolean => rest.trim() === '' || findUnit(rest) !== undefined

/**
 * The decimal sign that all texts together prove: some number can be read only with it, and none only with the other.
 * @returns the sign with the cell that proves it; undefined when nothing or both are proven
 */
export function provenDecimal(proofs: DecimalProofs): { sign: Sign; cell: string } | undefined {
  const [[point], [comma]] = [proofs['.'], proofs[',']]
  if (point && !comma) return { sign: '.', cell: point.cell }
  if (comma && !point) return { sign: ',', cell: comma.cell }
  return undefined
}

/** A number of each kind, where both are written often enough to be meant. */
export function mixedDecimals(proofs: DecimalProofs): { point: Proof; comma: Proof } | undefined {
  const [point, comma] = (['.', ','] as const).map((sign) => {
    const own = proofs[sign].filter(({ plain }) => plain)
    return own.length > 1 || own.some(({ grouped }) => grouped) ? own[0] : undefined
  })
  return point && comma ? { point, comma } : undefined
}

export const noProofs = (): DecimalProofs => ({ '.': [], ',': [] })
