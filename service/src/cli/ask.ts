import type { Question } from '@draughtbook/shared-calc/log'
import { confirm, input, select } from '@inquirer/prompts'
import { oneLine } from './terminal.js'

const OTHER = ' other'

/** Asks one question on the terminal. Undefined when the person stops (Ctrl-C). */
export async function ask({ text, cells, choices, example }: Question): Promise<string | undefined> {
  const context = { output: process.stderr }
  const places = cells.slice(0, 3).filter((cell) => !text.includes(cell))
  const message = oneLine(places.length > 0 ? `${text} (${places.join(', ')})` : text)
  try {
    if (choices.length === 0)
      return await input(
        { message: example ? `${message} For example ${example}:` : message, required: true },
        context,
      )
    const chosen = await select(
      {
        message,
        choices: [
          ...choices.map(({ value, label, reason }) => ({
            value,
            name: oneLine(label),
            ...(reason ? { description: oneLine(reason) } : {}),
          })),
          { value: OTHER, name: 'something else …' },
        ],
      },
      context,
    )
    return chosen === OTHER ? await input({ message: 'Type it:', required: true }, context) : chosen
  } catch (error) {
    if (error instanceof Error && error.name === 'ExitPromptError') return undefined
    throw error
  }
}

/** Asks a yes-or-no question on the terminal; Ctrl-C is a no. */
export async function agree(question: string): Promise<boolean> {
  try {
    return await confirm({ message: oneLine(question), default: false }, { output: process.stderr })
  } catch (error) {
    if (error instanceof Error && error.name === 'ExitPromptError') return false
    throw error
  }
}
