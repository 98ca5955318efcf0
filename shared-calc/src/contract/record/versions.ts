import type { z } from 'zod'

export const RECORD_FORMAT = 'draughtbook/record@1'
/** The format that may also hold a take-off, a plan, the preparation, the leaks and the uncertainty of the inputs. */
export const RECORD_FORMAT_2 = 'draughtbook/record@2'
export const RECORD_FORMATS = [RECORD_FORMAT, RECORD_FORMAT_2] as const

/** Parts that came with record@2; a record@1 must not hold them, or it would be read differently by an older tool. */
export const partsOfVersion2 = ['takeOff', 'plan', 'preparation', 'leaks', 'uncertainty'] as const

/** Fields of a reading that came with record@2. */
export const readingFieldsOfVersion2 = [
  'devices',
  'pressureUncertainty_Pa',
  'flowUncertainty_m3_h',
  'devicePressureUncertainty_Pa',
] as const

interface AnyVersion {
  readonly format: (typeof RECORD_FORMATS)[number]
  readonly runs: readonly { readonly readings: readonly ReadingOfVersion2[] }[]
  readonly test: { readonly openings?: readonly { readonly kind?: unknown }[] | undefined }
}

type ReadingOfVersion2 = { readonly [field in (typeof readingFieldsOfVersion2)[number]]?: unknown }

/** Whether a reading holds a field that only record@2 has. */
export const needsVersion2 = (reading: ReadingOfVersion2): boolean =>
  readingFieldsOfVersion2.some((field) => reading[field] !== undefined)

/** Refuses fields of record@2 in a record@1, naming each. */
export function refuseNewerParts(
  record: AnyVersion & { readonly [part in (typeof partsOfVersion2)[number]]?: unknown },
  context: z.RefinementCtx,
): void {
  if (record.format !== RECORD_FORMAT) return
  const refuse = (path: PropertyKey[], name: string) =>
    context.addIssue({
      code: 'custom',
      path,
      message: `${name} needs the format ${RECORD_FORMAT_2}; this record has the format ${RECORD_FORMAT}`,
    })
  for (const part of partsOfVersion2) if (record[part] !== undefined) refuse([part], part)
  for (const [i, opening] of (record.test.openings ?? []).entries())
    if (opening.kind !== undefined) refuse(['test', 'openings', i, 'kind'], 'kind')
  for (const [i, { readings }] of record.runs.entries()) {
    if (readings.length > 0 && readings.length < 3)
      context.addIssue({
        code: 'custom',
        path: ['runs', i, 'readings'],
        message: 'a run needs at least 3 readings to fit a curve',
      })
    for (const [j, reading] of readings.entries())
      for (const field of readingFieldsOfVersion2)
        if (reading[field] !== undefined) refuse(['runs', i, 'readings', j, field], field)
  }
}
