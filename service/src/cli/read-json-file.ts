import { extname } from 'node:path'
import { InputError } from '@draughtbook/shared-calc'
import { readJson } from '../json/read-json.js'
import { withFile } from './file-error.js'
import { readBytes } from './read-input.js'

/** Reads a JSON file and checks it. Throws FileError with every fault, each naming its field. */
export function readJsonFile<T>(path: string, parse: (input: unknown) => T): Promise<T> {
  return withFile(path, async () => {
    if (extname(path).toLowerCase() !== '.json')
      throw new InputError([{ path: '', message: 'only a .json file can be read here' }])
    return parse(readJson(new TextDecoder('utf-8', { fatal: true }).decode(await readBytes(path))))
  })
}
