/** How full the browser's storage is, and whether the browser may empty it by itself. */
export interface StorageRoom {
  used_bytes?: number
  whole_bytes?: number
  /** The browser keeps what is stored until the user removes it; undefined where it does not say. */
  lasting?: boolean
}

/** What the browser says about its storage; nothing where it says nothing, as on pages without https. */
export async function storageRoom(): Promise<StorageRoom> {
  const { storage } = navigator as Partial<Navigator>
  if (!storage?.estimate) return {}
  const [{ usage, quota }, lasting] = await Promise.all([storage.estimate(), storage.persisted?.()])
  return {
    ...(usage !== undefined && { used_bytes: usage }),
    ...(quota !== undefined && { whole_bytes: quota }),
    ...(lasting !== undefined && { lasting }),
  }
}

/** Asks the browser to keep what is stored until the user removes it. */
export async function askToKeep(): Promise<boolean> {
  const { storage } = navigator as Partial<Navigator>
  return (await storage?.persist?.()) ?? false
}

/** A size for people: kB and MB of 1000. */
export function sizeText(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`
  const [value, unit] =
    bytes < 1e6 ? [bytes / 1e3, 'kB'] : bytes < 1e9 ? [bytes / 1e6, 'MB'] : [bytes / 1e9, 'GB']
  return `${value.toFixed(value < 10 ? 1 : 0)} ${unit}`
}
