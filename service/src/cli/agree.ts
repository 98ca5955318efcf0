import { confirm } from '@inquirer/prompts'
import { oneLine } from './terminal.js'

/** Asks a yes-or-no question on the terminal; Ctrl-C is a no. */
export async function agree(question: string): Promise<boolean> {
  try {
    return await confirm({ message: oneLine(question), default: false }, { output: process.stderr })
  } catch (error) {
    if (error instanceof Error && error.name === 'ExitPromptError') return false
    throw error
  }
}
