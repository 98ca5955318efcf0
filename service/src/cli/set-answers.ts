import { wholePath } from '@draughtbook/shared-calc/log'
import type { Command } from 'commander'
import { FileError, UsageError } from './errors.js'

export interface AnswerOptions {
  /** `path=value`, as typed, each once. */
  readonly set?: readonly string[]
  readonly target?: string
  readonly method?: string
  readonly stage?: string
}

/** Options that answer what a log leaves open. */
export function addAnswerOptions(command: Command): Command {
  return command
    .option(
      '--set <PATH=VALUE>',
      'answer a question, or give what the log lacks; may be repeated',
      gather,
      [],
    )
    .option('--target <PRESET>', 'the target, such as passive-house-new (draughtbook targets lists all)')
    .option('--method <METHOD>', 'the test method, such as iso-9972:2015')
    .option('--stage <STAGE>', 'stage of the test: fabric, after services, acceptance or retest')
}

const gather = (value: string, before: string[]): string[] => [...before, value]

/** Answers by their path. @throws UsageError for an answer without an equals sign */
export function answersOf({ set = [], target, method, stage }: AnswerOptions): Record<string, string> {
  const answers: Record<string, string> = {}
  if (target !== undefined) answers['target.preset'] = target
  if (method !== undefined) answers['test.method'] = method
  if (stage !== undefined) answers['test.stage'] = stage
  for (const one of set) {
    const at = one.indexOf('=')
    if (at <= 0 || at === one.length - 1)
      throw new UsageError(
        `--set needs a path and a value, as in --set building.volume_m3="412.6 m3", not ${one}`,
      )
    const path = one.slice(0, at).trim()
    if (Object.keys(answers).some((one) => wholePath(one) === wholePath(path)))
      throw new UsageError(`${path} is given twice; give it once`)
    answers[path] = one.slice(at + 1).trim()
  }
  return answers
}

/** Field path → the option that answers it, as it was typed. */
export function optionsOf({ set = [], target, method, stage }: AnswerOptions): Record<string, string> {
  const typed = set.map((one) => one.slice(0, Math.max(one.indexOf('='), 0)).trim())
  return {
    ...(target !== undefined && { 'target.preset': '--target' }),
    ...(method !== undefined && { 'test.method': '--method' }),
    ...(stage !== undefined && { 'test.stage': '--stage' }),
    ...Object.fromEntries(typed.map((path) => [wholePath(path), `--set ${path}`])),
  }
}

/** Runs work on a file; what is wrong with an answer is named by its option. */
export async function withAnswers<T>(given: AnswerOptions, work: () => Promise<T>): Promise<T> {
  try {
    return await work()
  } catch (error) {
    throw error instanceof FileError ? error.withOptions(optionsOf(given)) : error
  }
}
