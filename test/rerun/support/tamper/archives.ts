import { strToU8, zipSync } from 'fflate'
import { PackageText } from '../package'
import { landmarks } from './landmarks'

/** What is changed in the archive itself; from whole parts to bytes. */
export function hiddenInArchives(): { name: string; unseen?: true; bytes: (b: PackageText) => Uint8Array }[] {
  const evil = (b: PackageText) => {
    const c = new PackageText(b.bytes)
    c.edit(landmarks(c).summary, /<v>MEETS/g, '<v>MISSES')
    return c
  }
  return [
    {
      name: 'a comment of the archive',
      bytes: (b) => {
        const z = b.bytes
        const text = strToU8('APPROVED')
        const out = new Uint8Array(z.length + text.length)
        out.set(z)
        out.set(text, z.length)
        out[z.length - 2] = text.length
        return out
      },
    },
    {
      name: 'data after the end',
      bytes: (b) => {
        const z = b.bytes
        const out = new Uint8Array(z.length + 100)
        out.set(z)
        out.fill(65, z.length)
        return out
      },
    },
    {
      name: 'another archive after the end',
      bytes: (b) => {
        const z = evil(b).bytes
        const y = b.bytes
        const out = new Uint8Array(y.length + z.length)
        out.set(y)
        out.set(z, y.length)
        return shifted(out, y.length)
      },
    },
    {
      name: 'another archive before the beginning',
      bytes: (b) => {
        const z = b.bytes
        const y = evil(b).bytes
        const out = new Uint8Array(y.length + z.length)
        out.set(y)
        out.set(z, y.length)
        return shifted(out, y.length)
      },
    },
    {
      name: 'a part named otherwise in its own header',
      bytes: (b) => {
        const z = b.bytes.slice()
        const name = strToU8('xl/worksheets/sheet1.xml')
        const at = find(z, name)
        z[at + name.length - 5] = 57
        return z
      },
    },
    { name: 'a part twice in the list', bytes: (b) => twice(b) },
    { name: 'a part between the others that no list names', bytes: (b) => unlisted(b) },
  ]
}

function find(z: Uint8Array, what: Uint8Array, from = 0): number {
  for (let at = from; at < z.length; at += 1) if (what.every((x, i) => z[at + i] === x)) return at
  throw new Error('not found')
}
/** Offsets of the last archive moved by what stands before it. */
function shifted(out: Uint8Array, by: number): Uint8Array {
  const view = new DataView(out.buffer)
  const end = out.length - 22
  const start = view.getUint32(end + 16, true)
  view.setUint32(end + 16, start + by, true)
  let at = start + by
  while (view.getUint32(at, true) === 0x02014b50) {
    view.setUint32(at + 42, view.getUint32(at + 42, true) + by, true)
    at += 46 + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true)
  }
  return out
}
function twice(b: PackageText): Uint8Array {
  // A second entry of one name of the same length, renamed in both places after packing.
  const c = new PackageText(b.bytes)
  c.parts['xl/worksheets/sheetX.xml'] = strToU8(
    c.text('xl/worksheets/sheet1.xml').replaceAll('<v>MEETS', '<v>MISSES'),
  )
  const z = zipSync(c.parts, { level: 1 })
  const name = strToU8('xl/worksheets/sheetX.xml')
  for (let at = 0; ; ) {
    try {
      at = find(z, name, at)
      z[at + name.length - 5] = 49
    } catch {
      break
    }
  }
  return z
}
function unlisted(b: PackageText): Uint8Array {
  const c = new PackageText(b.bytes)
  const z = c.bytes
  const view = new DataView(z.buffer, z.byteOffset)
  const end = z.length - 22
  const start = view.getUint32(end + 16, true)
  const extra = zipSync({
    'xl/worksheets/sheet1.xml': strToU8(
      c.text('xl/worksheets/sheet1.xml').replaceAll('<v>MEETS', '<v>MISSES'),
    ),
  })
  const ev = new DataView(extra.buffer, extra.byteOffset)
  const local = extra.subarray(0, ev.getUint32(extra.length - 6, true))
  const out = new Uint8Array(z.length + local.length)
  out.set(z.subarray(0, start))
  out.set(local, start)
  out.set(z.subarray(start), start + local.length)
  new DataView(out.buffer).setUint32(out.length - 6, start + local.length, true)
  return out
}
