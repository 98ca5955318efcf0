import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import Ajv from 'ajv-draft-04'
import addFormats from 'ajv-formats'
import { UNIFIED_VERSION } from './unified.js'

const PACKAGE = dirname(fileURLToPath(import.meta.resolve('@microsoft/app-manifest')))

/**
 * Checks the unified manifest against Microsoft's own JSON schema, as shipped in `@microsoft/app-manifest`.
 * @returns one line per fault; an empty list when the manifest fits
 */
export function checkUnified(manifest: object): string[] {
  const path = join(PACKAGE, 'json-schemas', 'teams', `v${UNIFIED_VERSION}`, 'MicrosoftTeams.schema.json')
  const ajv = new Ajv({ strict: false, allErrors: true })
  addFormats(ajv)
  const validate = ajv.compile(JSON.parse(readFileSync(path, 'utf8')) as object)
  if (validate(manifest)) return []
  return (validate.errors ?? []).map(
    ({ instancePath, message }) => `${instancePath || '/'} ${message ?? 'does not fit'}`,
  )
}
