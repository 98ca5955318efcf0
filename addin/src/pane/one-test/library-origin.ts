import type { TestEntries } from './entries.js'

type FieldEntries = TestEntries['fields']

const INSTRUMENTS = ['flowDevice', 'pressureGauge'] as const
export type Instrument = (typeof INSTRUMENTS)[number]

/** Field that says which entry of the library an instrument was copied from. */
export const originPath = (instrument: Instrument): string => `${instrument}.libraryEntry`

/** Once a value of an instrument is changed by hand it is no longer the library's, and no longer says so. */
export function withoutStaleOrigin(fields: FieldEntries, changed: string): FieldEntries {
  const instrument = INSTRUMENTS.find((one) => changed.startsWith(`${one}.`))
  if (!instrument || changed === originPath(instrument)) return fields
  const { [originPath(instrument)]: _origin, ...others } = fields
  return others
}

/** All fields of an instrument replaced: what the one before had and this one lacks is gone. */
export function withInstrument(
  fields: FieldEntries,
  instrument: Instrument,
  texts: Readonly<Record<string, string>>,
): FieldEntries {
  const others = Object.entries(fields).filter(([path]) => !path.startsWith(`${instrument}.`))
  const copied = Object.entries(texts).map(([path, text]): [string, { text: string }] => [path, { text }])
  return Object.fromEntries([...others, ...copied])
}
