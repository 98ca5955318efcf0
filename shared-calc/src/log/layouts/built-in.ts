import { parseLayout } from '../layout/parse-layout.js'
import type { Layout } from '../layout/schema.js'
import { demoLayout } from './demo.js'

/** Layouts that come with the tool. A firm's own stand beside them. */
export const builtInLayouts: readonly Layout[] = [parseLayout(demoLayout)]
