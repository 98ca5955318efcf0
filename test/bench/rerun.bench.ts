import { createHash, generateKeyPairSync, sign } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { parseRecord } from '@draughtbook/shared-calc'
import { rerunFile, signatureVerifier } from '@draughtbook/shared-calc/rerun'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { strFromU8, unzipSync } from 'fflate'
import { SaxesParser } from 'saxes'
import { recalculate } from '../support/libreoffice.js'
import { compare } from './report.js'

/** One re-run: against a bare read of all parts, which is what it must see. */
export async function run(): Promise<void> {
  const record = parseRecord(JSON.parse(readFileSync('test/demo/demo-record.json', 'utf8')))
  const { publicKey, privateKey } = generateKeyPairSync('ed25519')
  const keyId = createHash('sha256')
    .update(publicKey.export({ type: 'spki', format: 'der' }))
    .digest('hex')
    .slice(0, 32)
  const untouched = await writeSummaryWorkbook(record)
  const signed = await writeSummaryWorkbook(record, {
    sign: (message) => ({
      keyId,
      signature: sign(null, Buffer.from(message), privateKey).toString('base64'),
    }),
  })
  const saved = await recalculate(untouched)
  const verify = signatureVerifier([publicKey.export({ type: 'spki', format: 'pem' }) as string])
  await compare(
    'One re-run: against a bare unzip (fflate) and SAX (saxes) of every part of the file',
    { name: 'bare unzip and SAX of every part', run: () => bareRead(untouched) },
    [
      {
        name: 'rerunFile, untouched, not signed: made again, digests compared',
        run: () => rerunFile(untouched, 'a.xlsx'),
      },
      {
        name: 'rerunFile, untouched, signed: digests proven by the signature',
        run: () => rerunFile(signed, 'a.xlsx', { verify }),
      },
      {
        name: 'rerunFile, saved again by LibreOffice: everything visible compared',
        run: () => rerunFile(saved, 'a.xlsx'),
      },
    ],
    2.5,
  )
}

function bareRead(bytes: Uint8Array): number {
  let texts = 0
  for (const [path, part] of Object.entries(unzipSync(bytes))) {
    if (!/\.(xml|rels|vml)$/.test(path)) continue
    const parser = new SaxesParser()
    parser.on('opentag', () => undefined)
    parser.on('text', (text) => {
      texts += text.length
    })
    parser.write(strFromU8(part)).close()
  }
  return texts
}
