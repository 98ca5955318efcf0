import { pathText } from '../../contract/record/index.js'
import { LogError, problem } from '../problem.js'
import { Layout } from './schema.js'

/** A layout from JSON, with its defaults filled in. @throws LogError `layout-invalid`, one problem per fault with its path */
export function parseLayout(input: unknown): Layout {
  const result = Layout.safeParse(input)
  if (result.success) return result.data
  throw new LogError(
    result.error.issues.map((issue) =>
      problem('layout-invalid', `layout: ${issue.message}`, { path: pathText(issue.path) }),
    ),
  )
}
