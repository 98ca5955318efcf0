import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { runTool } from '../../support/run-tool'
import { folder } from './command-line'

/** A certificate for localhost and its key, good for two days. */
export async function selfSigned(): Promise<{
  cert: Buffer
  key: Buffer
  certificate: string
  keyFile: string
}> {
  const here = await folder()
  const [certificate, keyFile] = [join(here, 'c.pem'), join(here, 'k.pem')]
  const subject = ['-subj', '/CN=localhost', '-addext', 'subjectAltName=DNS:localhost']
  await runTool(
    'openssl',
    ['req', '-x509', '-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:P-256', '-nodes', '-days', '2']
      .concat(['-keyout', keyFile, '-out', certificate])
      .concat(subject),
    'openssl',
  )
  return { cert: await readFile(certificate), key: await readFile(keyFile), certificate, keyFile }
}
