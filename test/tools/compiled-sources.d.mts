import type { Plugin } from 'vitest/config'

/** Paths of compiled modules. */
export declare const COMPILED: RegExp
/** Leads imports of sources to what `tsc` made of them. */
export declare const compiledSources: Plugin
