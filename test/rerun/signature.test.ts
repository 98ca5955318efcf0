import { createHash, createPublicKey, verify } from 'node:crypto'
import { mkdtemp, readFile, rm, stat, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { digestOf, parseRecord } from '@draughtbook/shared-calc'
import { rerunFile, signatureVerifier } from '@draughtbook/shared-calc/rerun'
import { readSummaryWorkbook, signedMessage, writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { keyIdOf, makeKeyPair, publicKeyOf } from '../../service/src/signature/keys'
import { signerOf, verifierOf } from '../../service/src/signature/sign'
import { digestParts } from '../../shared-calc/src/reports/workbook/issued/issued-parts'
import { inventedRecord } from '../archive/invented-record'
import { commandLine } from '../service/support/command-line'
import { PackageText } from './support/package'

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

  it.each([
    ['a second key with a text of its own', 'signing key', 'Checked and approved'],
    ['a second signature', 'signature (Ed25519)', 'Checked and approved'],
    ['a line among the digests', 'issued part', 'Checked and approved'],
  ])('does not pass with a row put among those of the digests: %s', async (_, key, text) => {
    const book = new PackageText(signed)
    const cell = (column: string, value: string) =>
      `<c r="${column}900" t="inlineStr"><is><t>${value}</t></is></c>`
    book.edit(
      book.sheet('Record'),
      '</sheetData>',
      `<row r="900">${cell('A', key)}${cell('B', text)}</row></sheetData>`,
    )
    const test = await rerun(book.bytes, [firm.publicKey])
    expect(test?.outcome).not.toBe('exactly as issued')
    expect(test?.differences.length).toBeGreaterThan(0)
  })

  it('is found where everything was altered consistently: record, evaluation and digests', async () => {
    const altered = structuredClone(record)
    altered.building.volume_m3 = (altered.building.volume_m3 ?? 0) * 1.2
    const { signature } = await readSummaryWorkbook(signed)
    if (!signature) throw new Error('the workbook is not signed')
    const forged = await writeSummaryWorkbook(altered, { sign: () => signature })
    const test = await rerun(forged, [firm.publicKey])
    expect(test?.signature).toEqual({ state: 'invalid', keyId: firm.keyId })
    expect(test?.outcome).toBe('signature not accepted')
    // Without the key nothing shows: that is what the signature is for.
    expect((await rerun(forged, []))?.outcome).toBe('exactly as issued')
  })

  it('is found where the signature itself was altered', async () => {
    const book = new PackageText(signed)
    const other = Buffer.alloc(64, 7).toString('base64')
    book.edit(book.sheet('Record'), /<t>[A-Za-z0-9+/]{86}==<\/t>/, `<t>${other}</t>`)
    const test = await rerun(book.bytes, [firm.publicKey])
    expect(test?.signature).toMatchObject({ state: 'invalid' })
    expect(test?.outcome).toBe('signature not accepted')
  })

  it('is found where the name of its key was altered', async () => {
    const book = new PackageText(signed)
    book.edit(book.sheet('Record'), `<t>${firm.keyId}</t>`, `<t>${other.keyId}</t>`)
    const test = await rerun(book.bytes, [firm.publicKey, other.publicKey])
    expect(test?.signature).toEqual({ state: 'invalid', keyId: other.keyId })
    expect((await rerun(book.bytes, [firm.publicKey]))?.signature).toMatchObject({ state: 'key not given' })
  })

  it('does not fit a file whose look was changed with all its digests written anew', async () => {
    const book = new PackageText(signed)
    book.edit(book.sheet('Summary'), /<row r="1"/, '<row r="1" hidden="1"')
    const digests = digestParts(new Map(Object.entries(book.parts)))
    for (const [path, digest] of digests)
      book.set(
        book.sheet('Record'),
        book
          .text(book.sheet('Record'))
          .replace(
            new RegExp(`<t>[0-9a-f]{64} ${path.replace(/[[\].]/g, '\\$&')}<`),
            () => `<t>${digest} ${path}<`,
          ),
      )
    const test = await rerun(book.bytes, [firm.publicKey])
    expect(test?.signature?.state).toBe('invalid')
    expect(test?.outcome).toBe('differs')
  })

  it('is required where that is asked for: unsigned, or by another key, fails', async () => {
    const altered = structuredClone(record)
    altered.building.volume_m3 = (altered.building.volume_m3 ?? 0) * 1.3
    const reissued = await writeSummaryWorkbook(altered)
    const judge = async (bytes: Uint8Array, requireSignature: boolean) =>
      (await rerunFile(bytes, 'a.xlsx', { requireSignature, verify: verifierOf([firm.publicKey]) }))[0]
    expect((await judge(reissued, false))?.outcome).toBe('exactly as issued')
    expect(await judge(reissued, true)).toMatchObject({
      outcome: 'signature not accepted',
      why: 'the file is not signed, and a signature is required',
    })
    const byOther = await writeSummaryWorkbook(altered, { sign: signerOf(other.privateKey) })
    expect((await judge(byOther, true))?.why).toMatch(/signed with a key you did not give/)
    expect((await judge(signed, true))?.outcome).toBe('exactly as issued')
  })

  it('signs the digests of record, evaluation and parts by Ed25519 (RFC 8032), as node:crypto itself checks', async () => {
    const { evaluation, signature, issuedParts } = await readSummaryWorkbook(signed)
    const lines = [...(issuedParts ?? [])].map(([path, digest]) => `${digest} ${path}`).join('\n')
    const parts = createHash('sha256').update(lines).digest('hex')
    const message = `draughtbook/signature@2\ncalculation version ${evaluation.calculationVersion}\nrecord ${digestOf(record)}\nevaluation ${digestOf(evaluation)}\nparts ${parts}`
    expect(signedMessage(evaluation, parts)).toBe(message)
    const bytes = Buffer.from(signature?.signature ?? '', 'base64')
    expect(verify(null, Buffer.from(message), createPublicKey(firm.publicKey), bytes)).toBe(true)
    // Without Node too, as the pane has to: the same answers.
    const inScript = signatureVerifier([firm.publicKey])
    if (!signature) throw new Error('not signed')
    expect(inScript(message, signature)).toBe('valid')
    expect(inScript(`${message} `, signature)).toBe('invalid')
    expect(inScript(message, { ...signature, keyId: other.keyId })).toBe('key not given')
    expect(() => signatureVerifier([firm.privateKey])).toThrow(/private key/)
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
    expect([wrong.code, wrong.err.join()]).toEqual([2, expect.stringContaining('this is a private key')])

    const unsigned = join(folder, 'unsigned.xlsx')
    expect((await commandLine('evaluate', input, '--out', unsigned)).code).toBe(0)
    expect((await commandLine('rerun', unsigned, '--key', `${key}.pub`)).code).toBe(0)
    const required = await commandLine('rerun', unsigned, '--key', `${key}.pub`, '--require-signature')
    expect([required.code, required.out]).toEqual([
      1,
      expect.stringContaining('not signed, and a signature is required'),
    ])
    const noKey = await commandLine('rerun', unsigned, '--require-signature')
    expect([noKey.code, noKey.err.join()]).toEqual([2, expect.stringContaining('needs a public key')])
  })
})
