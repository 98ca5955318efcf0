import { existsSync } from 'node:fs'
import { CALCULATION_VERSION, didYouMean, InputError, nearest, problemWords } from '@draughtbook/shared-calc'
import { Command, CommanderError, Help, type Option } from 'commander'
import { fileFault } from '../files/file-fault.js'
import { quoted } from '../input/quoted.js'
import { DONE, UNREADABLE } from './command.js'
import { commands } from './commands.js'
import { FileError, UsageError } from './errors.js'
import type { Terminal } from './terminal.js'

/** Commands that go on until they are stopped. */
const runs: ReadonlySet<string> = new Set(['serve', 'excel', 'worker'])

/** Carries out one command line (without node and script). Resolves to the exit code; never throws. */
export async function run(args: readonly string[], terminal: Terminal): Promise<number> {
  let code = DONE
  const end = (wanted: number): void => {
    code = Math.max(code, wanted)
  }
  const program = new Command('draughtbook')
    .description('Evaluates airtightness tests: reads a test log, writes an evaluation and a workbook.')
    .version(CALCULATION_VERSION, '--version', 'print the calculation version')
    .showSuggestionAfterError()
    .configureHelp({ optionDescription })
  // Subcommands copy these settings when they are added, so they are set first.
  program.exitOverride().configureOutput({
    writeOut: (text) => terminal.out(text.trimEnd()),
    writeErr: () => undefined,
  })
  const asked = args.find((arg) => !arg.startsWith('-') && arg !== 'help')
  try {
    for (const { name, does, load } of commands) {
      const command = program.command(name).description(does)
      if (name !== asked) continue
      if (!runs.has(name)) await import('./short-run.js')
      const add = await load()
      add(command, { terminal, end })
    }
    const [first, named] = args
    if (first === 'help' && named !== undefined && !commands.some(({ name }) => name === named))
      throw new UsageError(
        `there is no command "${named}"${didYouMean(
          nearest(
            named,
            commands.map(({ name }) => name),
          ),
        )}`,
      )
    if (args.length === 0) throw new UsageError('name a command; `draughtbook --help` lists them')
    await program.parseAsync([...args], { from: 'user' })
    return code
  } catch (error) {
    return failed(error, terminal, namedIn(args, program))
  }
}

/** An empty list as default says nothing. */
const optionDescription = (option: Option): string =>
  new Help().optionDescription(option).replace(/ \(default: \[\]\)|default: \[\], /, '')

/** The command that a command line names, in words: "token add". */
function namedIn(args: readonly string[], program: Command): Named {
  const words = args.filter((arg) => !arg.startsWith('-') && arg !== 'help')
  const command = program.commands.find((one) => one.name() === words[0])
  const within = command?.commands.find((one) => one.name() === words[1])
  return {
    name: [command, within]
      .map((one) => one?.name())
      .filter(Boolean)
      .join(' '),
    takes: (within ?? command)?.registeredArguments[0]?.name(),
  }
}

interface Named {
  readonly name: string
  /** Name of its only argument. */
  readonly takes: string | undefined
}

function failed(error: unknown, terminal: Terminal, asked: Named): number {
  if (error instanceof CommanderError) {
    if (error.exitCode === 0) return DONE
    terminal.err(`draughtbook: ${usageText(error, asked)}`)
    return UNREADABLE
  }
  if (error instanceof FileError) for (const line of error.lines) terminal.err(line)
  else if (error instanceof InputError)
    for (const problem of error.problems) terminal.err(`draughtbook: ${problemWords(problem)}`)
  else if (error instanceof UsageError)
    for (const line of error.message.split('\n')) terminal.err(`draughtbook: ${line}`)
  else terminal.err(`draughtbook: ${fileFault(error) ?? unexpected(error)}`)
  return UNREADABLE
}

/** What the parser of options says, as the other messages say it: what is wrong, then what to do. */
function usageText({ code, message }: CommanderError, { name, takes }: Named): string {
  const said = withMeant(message.replace(/^error: /, ''))
  const help = `\`${['draughtbook', name, '--help'].filter(Boolean).join(' ')}\``
  if (code === 'commander.help') return `name one of the commands of ${name}; ${help} lists them`
  const unknown = /^unknown (command|option) '([^']*)'(.*)/s.exec(said)
  if (unknown) {
    const [, kind, word = '', meant = ''] = unknown
    const instead =
      kind === 'command' && name === '' && existsSync(word)
        ? `; to evaluate this file: draughtbook evaluate ${quoted(word)}`
        : meant || `; ${help} lists them`
    return `there is no ${kind} ${JSON.stringify(word)}${instead}`
  }
  if (code === 'commander.excessArguments')
    return `${name} takes ${takes === undefined ? 'options only' : `one ${takes} only`}; ${help} explains the command`
  const bare = /^option '(--[\w-]+) ([^']*)' argument missing$/.exec(said)
  if (bare) return `${bare[1]} needs a value: ${bare[1]} ${bare[2]}`
  const missing = /^(?:missing required argument|required option) '([^']+)'/.exec(said)?.[1]
  if (missing !== undefined) return `no ${missing} was given; ${help} explains the command`
  return said.replace(/^option '(--[\w-]+)(?: [^']*)?' argument '(.*)' is invalid\. /s, '$1 cannot be "$2": ')
}

const MEANT = '(Did you mean '

/** What the parser thinks was meant, as the other messages say it. */
function withMeant(said: string): string {
  const at = said.lastIndexOf(MEANT)
  if (at < 0 || !said.endsWith('?)')) return said
  const meant = said.slice(at + MEANT.length, -2).replace(/^one of /, '')
  return `${said.slice(0, at).trimEnd()}; did you mean ${meant}?`
}

/** A bug: the stack goes with it, so that it can be reported. */
function unexpected(error: unknown): string {
  return error instanceof Error ? `unexpected error, please report it: ${error.stack}` : String(error)
}
