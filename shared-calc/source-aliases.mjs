// Vite aliases that lead the packages' public doors to their TypeScript source, read off package.json's exports.
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const { exports: doors } = JSON.parse(readFileSync(new URL('./package.json', import.meta.url), 'utf8'))

/** @type {{ find: RegExp, replacement: string }[]} */
export const sourceAliases = Object.entries(doors).map(([door, file]) => ({
  find: new RegExp(`^@draughtbook/shared-calc${door.slice(1)}$`),
  replacement: fileURLToPath(
    new URL(file.replace('./dist/', './src/').replace(/\.js$/, '.ts'), import.meta.url),
  ),
}))
