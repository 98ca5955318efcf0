import { z } from 'zod'
import { refuseOtherKind } from '../../contract/file-kind.js'
import { InputError } from '../../contract/problem.js'
import {
  CountsIn,
  ElementKind,
  Finding,
  parseRecord,
  TakeOff,
  VolumeBasis,
} from '../../contract/record/index.js'
import { parseWith, saysRecord } from '../../contract/record/parse-record.js'
import { nameField } from '../../contract/record/text-field.js'
import { type BlockOf, Calculation } from '../../engine/index.js'
import type { areaTotal, volumeTotal } from '../../formulas/take-off-totals.js'
import { basesInWords } from './bases-in-words.js'
import { takeOffFindings } from './findings.js'
import type { PlacedRow } from './rows.js'
import { type WorkedTakeOff, workTakeOff } from './work-take-off.js'

export const TAKE_OFF_FORMAT = 'draughtbook/take-off@1'

/** A take-off by itself, before there is a test. */
export const TakeOffRequest = z.strictObject({
  format: z.literal(TAKE_OFF_FORMAT, { error: `it must be "${TAKE_OFF_FORMAT}"` }),
  name: nameField('building name'),
  takeOff: TakeOff,
})
export type TakeOffRequest = z.infer<typeof TakeOffRequest>

/** A take-off from unchecked input: a request itself, or a record or plan that holds one. Throws InputError. */
export function parseTakeOff(input: unknown): TakeOffRequest {
  if (!saysRecord(input)) {
    refuseOtherKind(input, 'take-off')
    return parseWith(TakeOffRequest, input)
  }
  const { building, takeOff } = parseRecord(input)
  if (takeOff) return { format: TAKE_OFF_FORMAT, name: building.name, takeOff }
  throw new InputError([{ path: 'takeOff', message: 'the record has no take-off' }])
}

export const TAKE_OFF_RESULT_FORMAT = 'draughtbook/take-off-result@1'

const finite = z.number()

/** A total with its standard uncertainty. */
const Total = z.strictObject({ value: finite, standardUncertainty: finite, unit: z.string() })
export type Total = z.infer<typeof Total>

const use = z.enum(['add', 'exclude'])

/** Volumes and areas of a take-off, with what differs between the bases said in words. */
export const TakeOffResult = z.strictObject({
  format: z.literal(TAKE_OFF_RESULT_FORMAT),
  netVolume: Total.optional(),
  overallInternalVolume: Total.optional(),
  floorArea: Total.optional(),
  envelopeArea: Total.optional(),
  elements: z.array(z.strictObject({ kind: ElementKind, area: Total })),
  spaces: z.array(
    z.strictObject({
      name: z.string(),
      storey: z.string().optional(),
      countsIn: CountsIn,
      use,
      reason: z.string().optional(),
      volume: Total,
      planArea: Total,
    }),
  ),
  bases: z.array(z.string()),
  stated: z.array(
    z.strictObject({
      field: z.string(),
      from: z.string(),
      basis: VolumeBasis.optional(),
      stated: finite,
      workedOut: finite,
      difference: finite,
      relativeDifference: finite,
      expandedUncertainty: finite,
    }),
  ),
  findings: z.array(Finding),
})
export type TakeOffResult = z.infer<typeof TakeOffResult>

/** Works out a take-off by itself. */
export function measureTakeOff(takeOff: TakeOff, at = 'takeOff'): TakeOffResult {
  return takeOffResult(takeOff, workTakeOff(new Calculation(), takeOff, at), at)
}

/** The result read off the blocks of a worked take-off; nothing is computed here. */
export function takeOffResult(takeOff: TakeOff, worked: WorkedTakeOff, at = 'takeOff'): TakeOffResult {
  const { net, overall, floor, envelope } = worked
  return {
    format: TAKE_OFF_RESULT_FORMAT,
    ...(net && { netVolume: volumeOf(net) }),
    ...(overall && { overallInternalVolume: volumeOf(overall) }),
    ...(floor && { floorArea: areaOf(floor) }),
    ...(envelope && { envelopeArea: areaOf(envelope) }),
    elements: [...worked.byKind].map(([kind, block]) => ({ kind, area: areaOf(block) })),
    spaces: takeOff.spaces.map((space) => {
      const { name, storey, countsIn, use, reason } = space
      const row = worked.spaces.get(space) as PlacedRow
      return {
        name,
        ...(storey !== undefined && { storey }),
        countsIn,
        use,
        ...(reason !== undefined && { reason }),
        volume: { value: inRow(row, 'V_i'), standardUncertainty: inRow(row, 'u_V'), unit: 'm3' },
        planArea: { value: inRow(row, 'A_i'), standardUncertainty: inRow(row, 'u_A'), unit: 'm2' },
      }
    }),
    bases: basesInWords(takeOff, worked),
    stated: [...worked.stated].map(([field, block]) => ({
      field,
      from: takeOff.stated?.from ?? '',
      ...(field === 'volume_m3' && { basis: takeOff.stated?.volumeBasis ?? 'net' }),
      stated: block.value('v_s'),
      workedOut: block.value('v_w'),
      difference: block.value('d_s'),
      relativeDifference: block.value('d_r'),
      expandedUncertainty: block.value('U_w'),
    })),
    findings: takeOffFindings(takeOff, worked, at),
  }
}

const inRow = ({ block, row }: PlacedRow, symbol: string): number => block.column(symbol)[row] as number
const volumeOf = (block: BlockOf<typeof volumeTotal>): Total => ({
  value: block.value('V'),
  standardUncertainty: block.value('u_t'),
  unit: 'm3',
})
const areaOf = (block: BlockOf<typeof areaTotal>): Total => ({
  value: block.value('A_t'),
  standardUncertainty: block.value('u_t'),
  unit: 'm2',
})
