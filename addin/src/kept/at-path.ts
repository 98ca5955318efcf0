/** What is in a draft of a record at a path such as `runs[0].direction`; undefined where nothing does. */
export const atPath = (draft: unknown, path: string): unknown =>
  path
    .split(/[.[\]]+/)
    .filter(Boolean)
    .reduce<unknown>(
      (at, key) => (typeof at === 'object' && at !== null ? (at as Record<string, unknown>)[key] : undefined),
      draft,
    )
