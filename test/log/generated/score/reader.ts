import type { Finding, TestRecord } from '@draughtbook/shared-calc'

/** A question a reader asks, as far as scoring looks at it. */
export interface AskedQuestion {
  readonly path: string
  readonly text: string
  readonly choices: readonly { readonly value: string; readonly label: string }[]
}

/** What a reader makes of a log, as far as scoring looks at it. */
export interface ReadOutcome {
  readonly tests: readonly {
    readonly key: string
    readonly name: string
    readonly record?: TestRecord
    readonly findings: readonly Finding[]
    readonly questions: readonly AskedQuestion[]
    readonly problems: readonly { readonly message: string }[]
  }[]
  readonly questions: readonly AskedQuestion[]
  readonly uses: readonly { readonly heading: string; readonly ignoredBecause?: string }[]
  readonly findings: readonly Finding[]
  readonly problems: readonly { readonly message: string }[]
}

/** Reads a log, with answers to earlier questions by their path. */
export type Reader = (
  bytes: Uint8Array,
  fileName: string,
  answers: Readonly<Record<string, string>>,
) => ReadOutcome
