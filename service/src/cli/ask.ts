import type { Question } from '@draughtbook/shared-calc/log'
import { confirm, input, select } from '@inquirer/prompts'
import { oneLine } from './terminal.js'

const OTHER = ' other'

/** Asks each question in turn on the terminal. Undefined when the person stops (Ctrl-C). */
export async function ask(
  file: string,
  questions: readonly Question[],
): Promise<Record<string, string> | undefined> {
  const answers: Record<string, string> = {}
  const context = { output: process.stderr }
  try {
    for (const { path, text, cells, choices, example } of questions) {
      const place = cells.length > 0 ? ` (${cells.slice(0, 3).join(', ')})` : ''
      const message = oneLine(`${file}: ${text}${place}`)
      const chosen =
        choices.length === 0
          ? OTHER
          : await select(
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
      answers[path] =
        chosen === OTHER
          ? await input(
              {
                message:
                  choices.length === 0
                    ? `${message}${example ? ` For example ${example}:` : ''}`
                    : 'Type it:',
                required: true,
              },
              context,
            )
          : chosen
    }
    return answers
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
