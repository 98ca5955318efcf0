/** Vite aliases from the public doors of this package to their TypeScript source. */
export declare const sourceAliases: { find: RegExp; replacement: string }[]
