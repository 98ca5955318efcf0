import { createPublicKey, verify } from 'node:crypto'
import { mkdtemp, readFile, rm, stat, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { digestOf, parseRecord } from '@draughtbook/shared-calc'
import { rerunFile } from '@draughtbook/shared-calc/rerun'
import { readSummaryWorkbook, signedMessage, writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { keyIdOf, makeKeyPair, publicKeyOf } from '../../service/src/signature/keys'
import { signerOf, verifierOf } from '../../service/src/signature/sign'
import { inventedRecord } from '../archive/invented-record'
import { Tamperer, withText } from '../archive/tamper'
import { commandLine } from '../service/support/command-line'

const record = parseRecord(inventedRecord(9))
const firm = makeKeyPair()
const other = makeKeyPair()
let signed: Uint8Array
let folder: string

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'draughtbook-signature-'))
  signed = await writeSummaryWorkbook(record, { sign: signerOf(firm.privateKey) })
})
afterAll(() => rm(folder, { recursive: true, force: true }))

async function rerun(bytes: Uint8Array, keys: string[]) {
  const [test] = await rerunFile(bytes, 'a.xlsx', keys.length > 0 ? { verify: verifierOf(keys) } : {})
  return test
}

describe('a signed summary workbook', () => {
  it('is valid under the firm’s key, unknown under others, and agrees cell by cell', async () => {
    expect(await rerun(signed, [firm.publicKey])).toMatchObject({
      outcome: 'exactly as issued',
      signature: { state: 'valid', keyId: firm.keyId },
    })
    expect((await rerun(signed, [other.publicKey]))?.signature).toEqual({
      state: 'key not given',
      keyId: firm.keyId,
    })
    expect((await rerun(signed, []))?.signature).toEqual({ state: 'key not given', keyId: firm.keyId })
    expect((await rerun(await writeSummaryWorkbook(record), [firm.publicKey]))?.signature).toEqual({
      state: 'not signed',
    })
  })

  it('is found where everything was altered consistently: record, evaluation and digests', async () => {
    const altered = structuredClone(record)
    altered.building.volume_m3 = (altered.building.volume_m3 ?? 0) * 1.2
    const { signature } = await readSummaryWorkbook(signed)
    if (!signature) throw new Error('the workbook is not signed')
    const forged = await writeSummaryWorkbook(altered, { sign: () => signature })
    const test = await rerun(forged, [firm.publicKey])
    expect(test?.signature).toEqual({ state: 'invalid', keyId: firm.keyId })
    expect(test?.outcome).toBe('differs')
    expect(test?.differences.map(({ kind }) => kind)).toEqual(['signature'])
    // Without the key nothing shows: that is what the signature is for.
    expect((await rerun(forged, []))?.outcome).toBe('exactly as issued')
  })

  it('is found where the signature itself was altered', async () => {
    const book = new Tamperer(signed)
    const cell = book
      .cells()
      .find(
        ({ sheet, xml }) => sheet === 'Record' && /^[A-Za-z0-9+/]{86}==$/.test(book.sharedText(xml) ?? ''),
      )
    if (!cell) throw new Error('the signature is not where it was')
    const test = await rerun(book.with(cell, withText(cell, Buffer.alloc(64, 7).toString('base64'))), [
      firm.publicKey,
    ])
    expect(test?.signature).toMatchObject({ state: 'invalid' })
  })

  it('signs the digests of record and evaluation by Ed25519 (RFC 8032), as node:crypto itself checks', async () => {
    const { evaluation, signature } = await readSummaryWorkbook(signed)
    const message = `draughtbook/signature@1\ncalculation version ${evaluation.calculationVersion}\nrecord ${digestOf(record)}\nevaluation ${digestOf(evaluation)}`
    expect(signedMessage(evaluation)).toBe(message)
    const bytes = Buffer.from(signature?.signature ?? '', 'base64')
    expect(verify(null, Buffer.from(message), createPublicKey(firm.publicKey), bytes)).toBe(true)
  })
})

describe('the command line', () => {
  it('makes a key pair, signs with it and checks it; a key is never overwritten or readable by others', async () => {
    const key = join(folder, 'firm.pem')
    const made = await commandLine('keys', key)
    expect(made.code).toBe(0)
    expect((await stat(key)).mode & 0o777).toBe(0o600)
    expect(made.out).toContain(keyIdOf(publicKeyOf(await readFile(`${key}.pub`, 'utf8'))))
    expect(made.out).toMatch(/does not\nshow that the readings are true/)
    expect((await commandLine('keys', key)).code).toBe(2)

    const input = join(folder, 'record.json')
    await writeFile(input, JSON.stringify(record))
    const out = join(folder, 'signed.xlsx')
    expect((await commandLine('evaluate', input, '--sign', key, '--out', out)).code).toBe(0)
    const checked = await commandLine('rerun', out, '--key', `${key}.pub`, '--json')
    expect(checked.code).toBe(0)
    expect(JSON.parse(checked.out).tests[0].signature.state).toBe('valid')
    const wrong = await commandLine('rerun', out, '--key', key)
    expect([wrong.code, wrong.err.join()]).toEqual([2, expect.stringContaining('it is a private key')])
  })
})
