import { textOf } from '../grid/cell-content.js'
import type { FieldScope } from '../tests/scope.js'
import type { Draft } from './draft.js'
import { put } from './put-field.js'

const SERIALS = [
  ['deviceSerial', 'flowDevice.serial'],
  ['gaugeSerial', 'pressureGauge.serial'],
] as const

/** The serial numbers of flow device and pressure gauge. Of several instruments none is that of the test. */
export function putInstruments(draft: Draft, scope: FieldScope): void {
  for (const [name, path] of SERIALS) {
    const fields = scope.all(name)
    const [field] = fields
    const serials = new Set(fields.map(({ content }) => textOf(content).trim().toLowerCase()))
    if (!field || serials.size !== 1) continue
    const serial = textOf(field.content).trim().slice(0, 200)
    if (serial !== '') put(draft, field, path, serial)
  }
}
